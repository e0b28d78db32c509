import {
  chmodSync,
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { main } from '../../bin/main.js';
import { readPlan } from '../../lib/plan/index.js';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
let root = '';
let out = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'rimwright-coupon-'));
  out = join(root, 'out');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const said = { out: '', err: '' };
  const code = await main(['coupon', ...argv], {
    out: text => {
      said.out += text;
    },
    err: text => {
      said.err += text;
    },
  });
  return { code, ...said };
}

function planFile(sample: string): string {
  const file = join(root, 'plan.yaml');
  copyFileSync(join(SAMPLES, `${sample}.yaml`), file);
  return file;
}

const LASER = ['--cutter', '0.2mm', '--thickness', '6mm', '--out'];

describe('a coupon made', () => {
  test('a fraction is inches: a router bit, and one sheet with everything on it', async () => {
    const made = await run('--cutter', '1/4', '--thickness', '3/4', '--out', out, '--json');
    expect(made.code).toBe(0);
    expect(JSON.parse(made.out)).toMatchObject({
      coupon: 'cut',
      options: { method: 'router', cutter: { kind: 'router', diameter: 6.35 }, thickness: 19.05 },
      ladder: { pieces: 10, spacing: 21.35, arm: 213.5 },
    });
    expect(readdirSync(join(out, 'sheets'))).toEqual(['01-offcut.dxf', '01-offcut.svg']);
    expect(readFileSync(join(out, 'coupon.txt'), 'utf8')).toContain('Kerf = gap / 10');
    // the folder is known as our own
    expect((await run(...LASER, out, '--quiet')).code).toBe(0);
    expect(readFileSync(join(out, 'coupon.txt'), 'utf8')).toContain("a laser's kerf of 0.2 mm");
  }, 60_000);

  test('by hand: six strips', async () => {
    expect((await run('--hand', '--thickness', '3/4', '--out', out)).code).toBe(0);
    expect(readdirSync(join(out, 'parts')).filter(f => f.endsWith('.dxf'))).toEqual([
      'lap.dxf',
      'seam.dxf',
      'wedge.dxf',
    ]);
  }, 60_000);

  test.each([
    [['--cutter', '1/4'], '--thickness is missing'],
    [['--cutter', 'bit', '--thickness', '3/4'], '--cutter is bit'],
    [
      ['--cutter', '1/4', '--method', 'saw', '--thickness', '3/4'],
      '--method is saw; allowed: router, laser; or --hand',
    ],
    [['--thickness', '3/4', '--fit', 'lap'], '--fit is lap; allowed: lap=LENGTH, bore=LENGTH, plug=LENGTH'],
    [['--thickness', '3/4', '--steps', '4'], 'steps is 4; allowed: an odd number, 3 to 15'],
    [['--thickness', '3/4', '--gap', '2'], '--gap is given; allowed: with --read only'],
    [['--thickness', '3/4', '--units', 'yd'], '--units is yd; allowed: mm, in'],
  ])('%j is refused', async (argv, said) => {
    const made = await run(...argv, '--out', out);
    expect(made.code).toBe(2);
    expect(made.err).toContain(said);
    expect(readdirSync(root)).toEqual([]);
  });
});

describe('a coupon read', () => {
  test('the one in a folder: kerf, fits and lines to paste', async () => {
    await run(...LASER, out, '--quiet', '--bearing', '608');
    const read = await run('--read', out, '--gap', '2.12mm,2.14mm', '--slot', '4', '--bore', '3');
    expect(read).toEqual({
      code: 0,
      out: [
        'kerf: 0.213 mm (mean of 2 gaps / 10; drawn for 0.2 mm)',
        'lap: 0.18 mm (S4, drawn with +0.15 mm)',
        'bore: -0.14 mm (B3, drawn with -0.15 mm)',
        '',
        'cutter: { kind: laser, kerf: 0.213mm }',
        'fit: { lap: 0.18mm, bore: -0.14mm }',
        '',
      ].join('\n'),
      err: '',
    });
  }, 60_000);

  test('into a plan: what it was drawn for is the plan’s cutter; mode and remarks stay', async () => {
    const file = planFile('ferry-helm');
    chmodSync(file, 0o640);
    const before = readFileSync(file, 'utf8');
    const read = await run('--read', '--gap', '63.9mm', '--slot', 'S4', '--into', file);
    expect(read.code).toBe(0);
    expect(read.err).toContain('cutter.diameter: 6.39mm, fit.lap: 0.23mm');
    const after = readFileSync(file, 'utf8');
    expect(after).toBe(
      before.replace('diameter: 1/4, reach', 'diameter: 6.39mm, reach').replace('lap: 0.15mm', 'lap: 0.23mm'),
    );
    expect(readPlan(after).cutter).toMatchObject({ kind: 'router', diameter: 6.39 });
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(readdirSync(root)).toEqual(['plan.yaml']);
  });

  test('with nothing else said, a narrow kerf is a laser’s', async () => {
    expect((await run('--read', '--gap', '2.1', '--json')).out).toContain('"kind": "laser"');
    expect((await run('--read', '--cutter', '1/4', '--gap', '63.9', '--json')).out).toContain('"diameter": 6.39');
  });

  test('of hand tools', async () => {
    await run('--hand', '--thickness', '19mm', '--out', out, '--quiet');
    const read = await run('--read', out, '--lap', 'loose', '--wedge', '0.2mm', '--seam', '-0.3mm');
    expect(read.out).toBe(
      [
        'lap: 0.05 mm (loose, drawn with +0.15 mm)',
        'wedge: -0.2 mm (0.2 mm of play, drawn with 0 mm)',
        'seam: lean each end 0.27 deg less from square',
        '',
        'fit: { lap: 0.05mm, wedge: -0.2mm }',
        '',
      ].join('\n'),
    );
  }, 60_000);

  test.each([
    [['--gap', '-2mm'], 'gap is -2 mm; allowed: 0.1 to 20 mm'],
    [['--gap', 'wide'], '--gap is wide'],
    [['--cutter', '1/4', '--gap', '2.1'], 'gap is 2.1 mm; allowed: 47.625 to 79.375 mm'],
    [['--gap', '2.1', '--slot', '12'], 'step is S12; allowed: the name of a step: S1 to S7, P1 to P7'],
    [[], 'gap is missing'],
    [['nowhere', '--gap', '2.1'], 'coupon.json'],
    [['--hand', '--lap', 'lose'], '--lap is lose; allowed: tight, snug, loose or a length such as 0.2mm'],
  ])('%j is refused', async (argv, said) => {
    const read = await run('--read', ...argv);
    expect(read.code).toBe(2);
    expect(read.err).toContain(said);
  });

  test('a file that is no coupon, and a plan cut by another cutter, stay as they are', async () => {
    const file = planFile('ferry-helm');
    const before = readFileSync(file, 'utf8');
    const read = await run('--read', '--cutter', '0.2mm', '--gap', '2.1', '--into', file);
    expect(read.code).toBe(2);
    expect(read.err).toContain('cutter.kind is router; allowed: laser');
    expect(readFileSync(file, 'utf8')).toBe(before);
    writeFileSync(join(root, 'coupon.json'), '[]');
    expect((await run('--read', root, '--gap', '2.1')).err).toContain(
      'allowed: coupon.json as the command coupon wrote it',
    );
  });
});
