import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { main } from '../../bin/main.js';
import { bounds } from '../../lib/geometry/measure.js';
import type { NestReport } from '../../lib/papers/nest-report.js';
import { readDxf } from '../../lib/readers/dxf.js';

const PLATE = fileURLToPath(new URL('../data/readers/plate.dxf', import.meta.url));
let root = '';
let out = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'rimwright-nest-'));
  out = join(root, 'out');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const said = { out: '', err: '' };
  const io = {
    out: (text: string) => {
      said.out += text;
    },
    err: (text: string) => {
      said.err += text;
    },
  };
  return { code: await main(['nest', ...argv], io), ...said };
}

function file(name: string, text: string): string {
  writeFileSync(join(root, name), text);
  return join(root, name);
}

const bars = (length: number, width: number, quantity: number): string =>
  JSON.stringify({
    parts: [
      {
        id: 'bar',
        quantity,
        outline: [
          [0, 0],
          [length, 0],
          [length, width],
          [0, width],
        ],
      },
    ],
  });
const report = (): NestReport => JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as NestReport;

test('DXF, SVG and JSON parts, some of them several times, become sheets, pictures and a report', async () => {
  const svg = file(
    'ring.svg',
    '<svg width="100mm" viewBox="0 0 50 50"><circle cx="25" cy="25" r="20"/><circle cx="25" cy="25" r="10"/></svg>',
  );
  const json = file('bars.json', bars(200, 30, 3));
  const said = await run(`${PLATE}*2`, svg, `${json}*2`, '--stock', 'ply=610x1220@26', '--out', out, '--effort', '3');
  expect(said.code).toBe(0);
  // what of a drawing is no outline is told, nothing else
  expect(said.err.split('\n').filter(l => !/^note: .*plate\.dxf: (TEXT|POINT|LINE)/.test(l))).toEqual(['']);
  expect(readdirSync(join(out, 'sheets'))).toEqual(['01-ply.dxf', '01-ply.svg']);
  expect(readdirSync(join(out, 'layouts'))).toEqual(['01-ply.png', '01-ply.svg']);
  expect(readFileSync(join(out, 'layouts/01-ply.png')).subarray(1, 4).toString()).toBe('PNG');
  expect(said.out).toMatch(
    /^sheets\/01-ply: \d+ parts, [\d.]+ % used, left whole \d+ x 610 mm\n\d+ parts on 1 x ply: [\d.]+ % used, 26\.00\n/,
  );
  const { sheets, parts, cost, unplaced } = report();
  expect([cost, unplaced]).toEqual([26, []]);
  expect(parts.find(p => p.id === 'bar')).toMatchObject({ quantity: 6, area: 6000 });
  // 40 and 20 mm radii: two user units to the millimetre
  expect(parts.find(p => p.id === 'ring')!.area).toBeCloseTo(Math.PI * (1600 - 400), 6);
  expect(sheets[0]!.parts.filter(id => id === 'bar')).toHaveLength(6);
  const drawn = await readDxf(readFileSync(join(out, 'sheets/01-ply.dxf'), 'utf8'), { layers: ['STOCK'] });
  expect(bounds(drawn.regions[0]!.outer)).toMatchObject({ minX: 0, minY: 0, maxX: 1220, maxY: 610 });
});

test('the same command writes the same bytes, over its own folder too', async () => {
  const json = file('bars.json', bars(170, 64, 9));
  const words = [json, '--stock', '400x500', '--out', out, '--effort', '4', '--json'];
  const first = await run(...words);
  expect(await run(...words)).toEqual(first);
  expect(first.out).toBe(readFileSync(join(out, 'report.json'), 'utf8'));
});

test('straight: the board count by hand, 12 bars of 1-5/8 x 20 in to a 5-1/2 in board', async () => {
  const json = file('bars.json', bars(508, 41.275, 25));
  const board = ['--stock', 'oak=5.5inx96in*2', '--true', '1/8in', '--gap', '1/8in', '--margin', '0', '--straight'];
  const { code, err } = await run(json, ...board, '--out', out);
  expect(report().sheets.map(s => s.parts.length)).toEqual([12, 12, 1]);
  expect(code).toBe(1);
  expect(err).toContain('stock.oak.count is 2; 3 are needed: 1 more');
});

test('an offcut by its outline; what finds no place stops with exit code 1', async () => {
  const json = file('bars.json', bars(60, 20, 40));
  const { code, err } = await run(
    json,
    '--stock',
    `left=${PLATE}`,
    '--margin',
    '0',
    '--gap',
    '1',
    '--out',
    out,
    '--effort',
    '2',
  );
  expect(code).toBe(1);
  expect(err).toMatch(/bar: \d+ found no place/);
  expect(report().sheets).toHaveLength(1);
});

test.each([
  [['parts.json', '--stock', 'nope'], /--stock is nope/],
  [['parts.json'], /--stock is missing/],
  [['--stock', '100x100'], /FILE is missing/],
  [['parts.txt', '--stock', '100x100'], /parts\.txt/],
  [['parts.json', '--stock', '100x100', '--turns', 'sideways'], /--turns/],
  [['parts.json', '--stock', '100x100', '--seconds', '0'], /--seconds is 0/],
  [['parts.json', '--stock', '100x100', '--stock', 'stock-1=90x90'], /--stock is stock-1; allowed: each name once/],
])('%j is refused by name, nothing is written', async (words, message) => {
  file('parts.txt', '');
  file('parts.json', bars(10, 10, 1));
  const at = words.map(w => (w.startsWith('parts.') ? join(root, w) : w));
  const { code, err } = await run(...at, '--out', out);
  expect([code, err]).toEqual([2, expect.stringMatching(message)]);
  expect(readdirSync(root)).not.toContain('out');
});

test('a file of parts that is not as it should be names the field', async () => {
  const json = file('bad.json', '{ "parts": [{ "id": "a b", "outline": [[0, 0]] }] }');
  const { code, err } = await run(json, '--stock', '100x100', '--out', out);
  expect(code).toBe(2);
  expect(err).toMatch(
    /bad\.json: parts\[0\]\.id is "a b"; allowed: a name of letters[\s\S]*parts\[0\]\.outline is \[\[0,0\]\]; allowed: 2 or more corners/,
  );
});
