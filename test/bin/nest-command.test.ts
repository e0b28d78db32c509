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

test('stock as a plan writes it: an offcut at hand with a knot is used first', async () => {
  const json = file('bars.json', bars(200, 30, 6));
  const shop = file(
    'shop.yaml',
    `units: mm
stock:
  ply: { kind: sheet, width: 610, length: 1220, thickness: 12, price: 30 }
  left: { like: ply, outline: [[0, 0], [500, 0], [500, 260], [0, 300]], defects: [{ x: 250, y: 140, diameter: 40 }] }
`,
  );
  const { code, out: said } = await run(json, '--stock', shop, '--out', out);
  expect([code, report().sheets.map(s => s.stock), report().cost]).toEqual([0, ['left'], 0]);
  expect(said).toContain('6 parts on 1 x left');
  const drawn = await readDxf(readFileSync(join(out, 'sheets/01-left.dxf'), 'utf8'), { layers: ['STOCK'] });
  // the knot is an opening of what may be cut
  expect(drawn.regions[0]!.openings).toHaveLength(1);
  expect(readFileSync(join(out, 'layouts/01-left.svg'), 'utf8')).toContain('id="defects"');
});

test('a drawing’s transforms count, and what is left out of it is told', async () => {
  const svg = file(
    'badge.svg',
    '<svg width="10cm" viewBox="0 0 100 100"><g transform="rotate(30) scale(2)"><rect width="20" height="10" transform="skewX(20)"/><text>F</text></g></svg>',
  );
  const { code, err } = await run(svg, '--stock', '200x300', '--out', out);
  expect([code, err]).toEqual([0, `note: ${svg}: text: no outline\n`]);
  expect(report().parts[0]!.area).toBeCloseTo(800, 6);
  const bare = file('bare.svg', '<svg><rect width="96" height="48"/><path d="M0 60H9M0 0H9"/></svg>');
  const told = await run(bare, '--stock', '200x300', '--out', out);
  expect(told.err).toContain(`warn: ${bare}: width and height without mm, cm or in: 96 units are taken for an inch`);
  expect(told.err).toContain(`note: ${bare}: 1 line on another, left out`);
  expect(told.err).toContain('1 run of lines that closes nowhere is left out');
});

test('turns, grain and face of a part: its own words before the options', async () => {
  const parts = [
    {
      id: 'free',
      outline: [
        [0, 0],
        [90, 0],
        [90, 20],
      ],
    },
    {
      id: 'across',
      outline: [
        [0, 0],
        [90, 0],
        [90, 20],
      ],
      grain: { rule: 'across' },
      quantity: 3,
    },
    {
      id: 'still',
      outline: [
        [0, 0],
        [90, 0],
        [90, 20],
      ],
      turns: 'none',
      mirrored: false,
      quantity: 3,
    },
  ];
  const json = file('parts.json', JSON.stringify({ parts }));
  const { code } = await run(json, '--stock', '300x300', '--grain', 'along', '--mirror', '--out', out);
  expect(code).toBe(0);
  for (const { part, turn, flipped } of report().sheets.flatMap(s => s.placements)) {
    if (part === 'across') expect(Math.abs(Math.cos((turn * Math.PI) / 180))).toBeCloseTo(0, 9);
    else expect(Math.abs(Math.sin((turn * Math.PI) / 180))).toBeCloseTo(0, 9);
    if (part === 'still') expect([turn, flipped]).toEqual([0, false]);
  }
});

test.each([
  [['parts.json', '--stock', 'shop.yaml'], /shop\.yaml: stock\.ply\.thickness is missing; allowed: a length/],
  [['parts.json', '--stock', 'gone.yaml'], /gone\.yaml/],
  [['tilt.svg', '--stock', '100x100'], /tilt\.svg: transform is turn\(3\); allowed: a list of matrix/],
  [['cross.svg', '--stock', '100x100'], /cross\.svg is .*; allowed: outlines that do not cross/],
  [['parts.json', '--stock', '100x100', '--effort', '1.5'], /--effort is 1\.5; allowed: a whole number, 1 to/],
  [['parts.json', '--stock', '100x100', '--seconds', 'ten'], /--seconds is ten; allowed: a number, 1 to 86400/],
  [['parts.json', '--stock', '100x100', '--grain', 'up'], /--grain is up; allowed: none, along, across/],
  [['parts.json', '--stock', '100x100', '--seed', 'x'], /--seed is x/],
  [['parts.json*0', '--stock', '100x100'], /FILE\*N is 0; allowed: a whole number, 1 to/],
  [['cut.json', '--stock', '100x100'], /cut\.json: the file is not JSON/],
  [
    ['turn.json', '--stock', '100x100'],
    /turn\.json: parts\[0\]\.turns is "twice"; allowed: free, half, none or a step/,
  ],
  [
    ['turn.json', '--stock', '100x100'],
    /parts\[0\] is with the key spin; allowed: id, quantity, outline, openings, turns, grain/,
  ],
])('%j: what is wrong in a file is told with the file, field and value', async (words, message) => {
  file('shop.yaml', 'stock: { ply: { kind: sheet, width: 400, length: 400 } }');
  file('tilt.svg', '<svg width="9mm"><g transform="turn(3)"><rect width="3" height="3"/></g></svg>');
  file('cross.svg', '<svg width="9mm"><path d="M0 0L9 9L9 0L0 8Z"/></svg>');
  file('cut.json', '{ "parts": [');
  file('turn.json', '{ "parts": [{ "id": "a", "outline": [[0, 0], [9, 0], [0, 9]], "turns": "twice", "spin": 1 }] }');
  file('parts.json', bars(10, 10, 1));
  const at = words.map(w => (/\.(json|svg|yaml)/.test(w) ? join(root, w) : w));
  const { code, err } = await run(...at, '--out', out);
  expect([code, err]).toEqual([2, expect.stringMatching(message)]);
  expect(readdirSync(root)).not.toContain('out');
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
