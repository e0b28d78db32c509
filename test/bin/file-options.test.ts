import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { main } from '../../bin/main.js';

const PLATE = fileURLToPath(new URL('../data/readers/plate.dxf', import.meta.url));
const PLAN = fileURLToPath(new URL('../../samples/ferry-helm.yaml', import.meta.url));
let root = '';
let out = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'rimwright-files-'));
  out = join(root, 'out');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

async function run(...argv: string[]): Promise<{ code: number; err: string }> {
  let err = '';
  const io = {
    out: () => {},
    err: (text: string) => {
      err += text;
    },
  };
  return { code: await main(argv, io), err };
}

/** Every DXF below a folder of the output. */
const drawings = (folder: string): string[] =>
  readdirSync(join(out, folder))
    .filter(f => f.endsWith('.dxf'))
    .map(f => readFileSync(join(out, folder, f), 'utf8'));

const isOlderInInches = (dxf: string): boolean => dxf.includes('\nAC1009\n') && dxf.includes('\n$INSUNITS\n70\n1\n');

test('make writes older files in inches, labels as text', async () => {
  expect(
    await run('make', PLAN, '--out', out, '--only', 'cut', '-q', '--dxf', 'r12', '--units', 'in', '--labels', 'text'),
  ).toEqual({
    code: 0,
    err: '',
  });
  const all = [...drawings('parts'), ...drawings('sheets')];
  expect(all.length).toBeGreaterThan(8);
  expect(all.every(isOlderInInches)).toBe(true);
  expect(all.some(dxf => dxf.includes('\nTEXT\n'))).toBe(true);
}, 30_000);

test('nest and coupon do too, by --file-units', async () => {
  const how = ['--dxf', 'r12', '--file-units', 'in', '--out', out, '-q'];
  expect((await run('nest', PLATE, '--stock', '600x400', '--effort', '1', ...how)).code).toBe(0);
  expect(drawings('sheets').every(isOlderInInches)).toBe(true);
  rmSync(out, { recursive: true });
  expect((await run('coupon', '--cutter', '0.2mm', '--thickness', '6mm', ...how)).code).toBe(0);
  expect(drawings('sheets').every(isOlderInInches)).toBe(true);
}, 30_000);

test.each([
  ['--dxf', 'r13', '2007, r12'],
  ['--units', 'cm', 'mm, in'],
  ['--labels', 'none', 'lines, text'],
])('make %s %s is refused by name; nothing is written', async (option, value, allowed) => {
  const { code, err } = await run('make', PLAN, '--out', out, option, value);
  expect(code).toBe(2);
  expect(err).toContain(`${option} is ${value}; allowed: ${allowed}`);
  expect(existsSync(out)).toBe(false);
});
