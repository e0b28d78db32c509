import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { circle, polygon, type Region, rectangle, solid } from '../../lib/geometry/outline.js';
import { check, make } from '../../lib/make.js';
import { inline } from '../../lib/nesting/engine/rounds.js';
import type { NestLayout, NestPart } from '../../lib/nesting/job.js';
import { nestCuts, safeGap, type Wanted } from '../../lib/nesting/nest-cuts.js';
import { nestCutsLong } from '../../lib/nesting/nest-cuts-long.js';
import type { Sheet } from '../../lib/nesting/sheet.js';
import { nestStockOf } from '../../lib/nesting/stock-family.js';
import type { Part } from '../../lib/parts/part.js';
import { readPlan } from '../../lib/plan/read-plan.js';
import { readStock } from '../../lib/plan/read-stock.js';
import type { Stock } from '../../lib/stock/stock.js';
import { lap, plate, QUARTER_INCH, SAW } from '../cutting/pieces.js';
import { layoutFaults } from './faults.js';

const ply: Stock = {
  name: 'ply',
  kind: 'sheet',
  length: 1220,
  width: 610,
  thickness: 12,
  true: 0,
  margin: 5,
  price: 30,
};
const like = (name: string, over: Partial<Stock>): Stock => {
  const { price: _, ...rest } = ply;
  return { ...rest, like: 'ply', name, ...over };
};
const hexagon: Region = solid(
  polygon(
    [0, 1, 2, 3, 4, 5].map(k => ({
      x: 300 + 300 * Math.cos((k * Math.PI) / 3),
      y: 260 + 259 * Math.sin((k * Math.PI) / 3),
    })),
  ),
);
const left = like('left', { outline: hexagon, length: 600, width: 520, count: 1 });

const rect = (x: number, y: number, over: Partial<Part> = {}): Part => plate(solid(rectangle(0, 0, x, y)), over);
const wanted = (part: Part, quantity: number): Wanted => ({ cut: cut(part, QUARTER_INCH, 'router').value, quantity });
const router = { method: 'router' } as const;
const taken = (sheets: readonly Sheet[]): string[] => sheets.map(s => s.stock.name);

/** What is wrong with sheets, by the independent judge: overlaps, gaps, edges, defects, grain, quantities. */
function faultsOf(sheets: readonly Sheet[], all: readonly Wanted[], stocks: readonly Stock[], gap: number): string[] {
  const id = (w: Wanted): string => w.cut.part.id;
  const parts = all.map((w): NestPart => {
    const { grain } = w.cut.part;
    const common = { id: id(w), region: w.cut.finished, quantity: w.quantity };
    return grain === undefined ? common : { ...common, grain: { direction: grain, rule: 'along' } };
  });
  const layout: NestLayout = {
    pieces: sheets.map(s => ({
      stock: s.stock.name,
      number: s.number,
      utilisation: s.utilisation,
      placements: s.placements.map(p => ({ part: p.cut.part.id, motion: p.motion })),
      ...(s.offcut && { offcut: s.offcut }),
    })),
    unplaced: [],
    cost: 0,
    utilisation: 0,
    findings: [],
  };
  return layoutFaults(parts, stocks.map(nestStockOf), layout, gap);
}

describe('several kinds of the same stock', () => {
  test('what is at hand is used before anything is bought, and only where it does', () => {
    const few = nestCuts([wanted(rect(180, 120), 4)], [ply, left], router);
    expect([taken(few.value), few.findings]).toEqual([['left'], []]);
    // longer than the offcut
    expect(taken(nestCuts([wanted(rect(700, 120), 2)], [ply, left], router).value)).toEqual(['ply']);
    const both = nestCuts(
      [wanted(rect(700, 120), 3), wanted(rect(120, 100, { id: 'small' }), 32)],
      [ply, left],
      router,
    );
    expect(both.findings).toEqual([]);
    expect(taken(both.value).sort()).toEqual(['left', 'ply']);
  });

  test('the cheapest of two sizes: a half sheet where half is enough, a whole one where two halves cost more', () => {
    const half = like('half', { length: 610, price: 18 });
    const needs = (n: number) => taken(nestCuts([wanted(rect(280, 280), n)], [ply, half], router).value);
    expect(needs(4)).toEqual(['half']);
    expect(needs(8)).toEqual(['ply']);
    expect(needs(12).sort()).toEqual(['half', 'ply']);
  });

  test('a part that names the like stock is cut from that alone; too few of what is named is told with how many more', () => {
    const only = wanted(rect(280, 280, { stock: 'left' }), 2);
    expect(taken(nestCuts([only], [ply, left], router).value)).toEqual(['left', 'left']);
    expect(nestCuts([only], [ply, left], router).findings).toMatchObject([
      { level: 'stop', rule: 'too-few', where: 'stock.left.count', value: 1, limit: 2 },
    ]);
    const { value, findings } = nestCuts(
      [wanted(rect(280, 280), 17)],
      [{ ...ply, count: 1 }, like('other', { count: 1, length: 610 })],
      router,
    );
    expect(value.reduce((sum, s) => sum + s.placements.length, 0)).toBe(17);
    expect(findings).toMatchObject([{ rule: 'too-few', where: 'stock.ply.count', value: 1, limit: 2 }]);
  });

  test('what fits an offcut’s box and not its outline is told by its part', () => {
    const { value, findings } = nestCuts([wanted(rect(580, 480, { stock: 'left' }), 1)], [ply, left], router);
    expect([value, findings]).toMatchObject([[], [{ level: 'stop', rule: 'no-place', where: 'plate' }]]);
  });

  test('register pins keep off knots and stay on an offcut', () => {
    const two = rect(120, 90, { features: [lap('front', 20, 60), lap('back', 20, 60)] });
    const { value } = nestCuts([wanted(two, 1)], [ply, left], router);
    const [sheet] = value;
    expect(sheet!.stock.name).toBe('left');
    for (const pin of sheet!.pins ?? []) {
      const hole = bounds(circle(pin.diameter / 2, pin.at));
      expect(hole.minX).toBeGreaterThan(0);
      // the hexagon is half as wide at its ends
      expect(Math.abs(pin.at.x - 300) + Math.abs(pin.at.y - 260) / Math.sqrt(3)).toBeLessThan(300);
    }
  });
});

test('grain across the stock, or none of it', () => {
  const bar = (id: string) => wanted(rect(560, 40, { id, grain: 0 }), 1);
  const turn = (grain: Stock['grain'], width: number) =>
    nestCuts([bar('bar')], [{ ...ply, width, ...(grain && { grain }) }], router).value[0]?.placements[0]?.motion.turn;
  expect(Math.abs(Math.sin(turn('along', 610)!))).toBeCloseTo(0, 9);
  expect(Math.abs(Math.sin(turn('across', 610)!))).toBeCloseTo(1, 9);
  // across a narrow sheet there is no room
  expect(turn('across', 500)).toBeUndefined();
  expect(Math.abs(Math.sin(turn('none', 500)!))).toBeCloseTo(0, 9);
});

test('a stock’s gap in the place of the cut and a bridge', () => {
  const exact = { ...ply, width: 2 * 50 + 20 + 10, length: 2 * 100 + 20 + 10, gap: 20 };
  const count = (stock: Stock) => nestCuts([wanted(rect(100, 50, { grain: 0 }), 4)], [stock], router).value.length;
  expect(count(exact)).toBe(1);
  expect(count({ ...exact, gap: 20.1 })).toBeGreaterThan(1);
});

const anyStock = fc.record({
  defects: fc.array(
    fc.record({
      x: fc.integer({ min: 0, max: 1220 }),
      y: fc.integer({ min: 0, max: 610 }),
      r: fc.integer({ min: 5, max: 60 }),
    }),
    { maxLength: 4 },
  ),
  grain: fc.constantFrom('along', 'across', 'none') as fc.Arbitrary<NonNullable<Stock['grain']>>,
  margin: fc.constantFrom(0, 5, 20),
  gap: fc.constantFrom(7.35, 12),
});
const anySizes = fc.array(
  fc.record({
    x: fc.integer({ min: 40, max: 300 }),
    y: fc.integer({ min: 30, max: 200 }),
    n: fc.integer({ min: 1, max: 6 }),
    grain: fc.constantFrom(undefined, 0, 0.4),
  }),
  { minLength: 1, maxLength: 4 },
);

test('any stock with knots beside an offcut: judged by an independent library', () => {
  fc.assert(
    fc.property(anyStock, anySizes, ({ defects, grain, margin, gap }, sizes) => {
      const base: Stock = {
        ...ply,
        grain,
        margin,
        gap,
        defects: defects.map(d => solid(circle(d.r, { x: d.x, y: d.y }))),
      };
      const stocks = [base, { ...left, margin, gap }];
      const all = sizes.map((s, i) =>
        wanted(rect(s.x, s.y, { id: `r${i}`, ...(s.grain !== undefined && { grain: s.grain }) }), s.n),
      );
      const { value, findings } = nestCuts(all, stocks, router);
      if (findings.length === 0) expect(faultsOf(value, all, stocks, gap)).toEqual([]);
      for (const s of value) expect(s.utilisation).toBeLessThanOrEqual(1);
    }),
    { numRuns: 25 },
  );
});

test('a long search is never worse, has the same layout each time, and keeps to the rules', async () => {
  const all = [
    wanted(rect(330, 170), 9),
    wanted(plate(solid(circle(85)), { id: 'disc' }), 7),
    wanted(rect(500, 60, { id: 'bar', grain: 0 }), 4),
  ];
  const stocks = [ply, left, like('knotty', { count: 1, defects: [solid(circle(40, { x: 300, y: 300 }))] })];
  const search = { effort: { kind: 'steps', steps: 20 }, run: inline() } as const;
  const short = nestCuts(all, stocks, router);
  const long = await nestCutsLong(all, stocks, router, search);
  const cost = (sheets: readonly Sheet[]): number => sheets.reduce((sum, s) => sum + (s.stock.price ?? 0), 0);
  expect(cost(long.value)).toBeLessThanOrEqual(cost(short.value));
  expect(
    faultsOf(
      long.value,
      all,
      stocks,
      safeGap(
        all.map(w => w.cut),
        'router',
      ),
    ),
  ).toEqual([]);
  const again = await nestCutsLong(all, stocks, router, search);
  expect(again.value.map(s => s.placements.map(p => p.motion))).toEqual(
    long.value.map(s => s.placements.map(p => p.motion)),
  );
});

test('stopped before it begins, a long search answers as the short one', async () => {
  const all = [wanted(rect(330, 170), 9)];
  const long = await nestCutsLong(all, [ply], router, {
    effort: { kind: 'steps', steps: 100_000 },
    run: () => new Promise(() => undefined),
    stopped: Promise.resolve(),
  });
  expect(long.value.map(s => s.placements.length)).toEqual(
    nestCuts(all, [ply], router).value.map(s => s.placements.length),
  );
});

describe('what is left whole', () => {
  test('lies clear of every part by the gap, and is the larger of what either straight cut leaves', () => {
    const [sheet] = nestCuts([wanted(rect(300, 200, { grain: 0 }), 2)], [ply], router).value;
    const boxes = sheet!.placements.map(p => bounds(moveRegion(p.cut.finished, p.motion).outer));
    const box = bounds(sheet!.offcut!);
    for (const b of boxes) expect(Math.max(box.minX - b.maxX, box.minY - b.maxY)).toBeGreaterThan(7.35 - 1e-6);
    expect([box.maxX, box.maxY]).toEqual([1220, 610]);
    // 300 and 5 mm margin and the gap off one end
    expect(area(solid(sheet!.offcut!))).toBeCloseTo((1220 - 305 - 7.35) * 610, 6);
  });

  test('put back into a plan as an outline, it takes parts again', () => {
    const [sheet] = nestCuts([wanted(plate(solid(circle(150))), 1)], [ply, left], router).value;
    const corners = sheet!.offcut!.map(v => `[${v.x}, ${v.y}, ${v.bulge}]`).join(', ');
    const [stock] = readStock(`stock: { again: { kind: sheet, thickness: 12, outline: [${corners}] } }`);
    expect(area(stock!.outline!)).toBeCloseTo(area(solid(sheet!.offcut!)), 3);
    const small = [wanted(rect(60, 40, { stock: 'again' }), 3)];
    const { value, findings } = nestCuts(small, [stock!], router);
    expect(findings).toEqual([]);
    expect(faultsOf(value, small, [stock!], 7.35)).toEqual([]);
  });
});

// the hand counts of nest-straight.test.ts, with the stock as a plan writes it: both edges trued by 1/8 in, kerf 1/8 in
describe('strips from 8 ft boards as a plan names them', () => {
  const lumber = (width: string, layout: string) =>
    readStock(`units: in
stock: { plank: { kind: board, width: ${width}, length: 96, thickness: 3/4, true: 1/8, margin: 0, gap: 1/8, layout: ${layout} } }`);
  test.each([
    ['5-1/2', 20, 1.625, 12],
    ['3-1/2', 47, 1.625, 2],
    ['3-1/2', 41, 1.5, 4],
    ['7-1/4', 17.5, 4.25, 5],
    ['7-1/4', 30, 1.625, 12],
  ])('a %s in board gives %d x %d in: %d', (board, length, width, count) => {
    const strip = cut(
      rect(length * 25.4, width * 25.4, { grain: 0, stock: 'plank' }),
      { kind: 'saw', kerf: 3.175 },
      'hand',
    ).value;
    for (const layout of ['straight', 'free']) {
      const { value, counts, findings } = nestCuts([{ cut: strip, quantity: count + 1 }], lumber(board, layout), {
        method: 'hand',
      });
      expect(findings).toEqual([]);
      expect(value.map(s => s.placements.length)).toEqual([count, 1]);
      expect(counts).toEqual([{ stock: 'plank', free: 2, straight: 2 }]);
      if (layout === 'straight') expect(value.every(s => s.rips!.length > 0)).toBe(true);
    }
  });

  // spokes of 6: 1-5/8 wide and 20.4 in long. 3 x 1-5/8 + 2 x 1/8 = 5-1/8 of 5-1/4; 4 x 20.4 + 3/8 = 82 of 96
  test('make: three strips of 1-5/8 in from a 5-1/2 in board, four spokes each', async () => {
    const plan = readPlan(`
rimwright: 1
title: Lantern helm
units: in
model: helm-wheel
rim: { outside: 30, band: 4, felloes: 6, seam: { joint: butt, at: under-spokes }, stock: plank }
spokes: { count: 6, width: 1-5/8, overall: 41, stock: batten }
hub: { diameter: 8, faces: front, stock: ply }
turns: fixed
method: hand
cutter: { kind: saw, kerf: 1/8 }
stock:
  plank: { kind: board, width: 7-1/4, thickness: 1-1/2, length: 96, true: 1/8, price: 14 }
  batten: { kind: board, width: 5-1/2, thickness: 1-1/2, length: 96, true: 1/8, margin: 0, layout: straight }
  ply: { kind: sheet, width: 48, length: 96, thickness: 3/4, grain: none, price: 60 }
  left: { like: ply, outline: [[0, 0], [14, 0], [14, 9, 0.4], [5, 15], [0, 9]] }
copies: 3
`);
    const { report, files, findings } = await make(plan);
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    expect(report!.sheets.filter(s => s.stock === 'batten').map(s => s.parts.length)).toEqual([12, 6]);
    expect(report!.layouts!.find(l => l.stock === 'batten')).toEqual({ stock: 'batten', free: 2, straight: 2 });
    // three hub discs do not fit what is at hand: one sheet takes them all, so it stays there
    expect(report!.stock.map(s => [s.name, s.needed]).slice(1)).toEqual([
      ['batten', 2],
      ['ply', 1],
      ['left', 0],
    ]);
    expect(report!.sheets.every(s => files.has(s.picture) && files.has(s.file))).toBe(true);
    expect(check(plan).value).toEqual(report);
  });
});

test('knots are crosscut out of straight strips', () => {
  const [knotty] = readStock(
    `stock: { plank: { kind: board, width: 100, length: 1000, thickness: 20, margin: 0, count: 3, layout: straight, defects: [{ x: 250, y: 20, diameter: 20 }] } }`,
  );
  const bar = cut(rect(200, 45, { grain: 0, stock: 'plank' }), SAW, 'hand').value;
  const all = [{ cut: bar, quantity: 12 }];
  const { value, findings } = nestCuts(all, [knotty!], { method: 'hand' });
  expect(findings).toEqual([]);
  expect(faultsOf(value, all, [knotty!], 3.2)).toEqual([]);
  // four lengths of 200 in a clear strip; round the knot, from 260 mm, three and one before it
  expect(value.map(s => s.placements.length)).toEqual([8, 4]);
});
