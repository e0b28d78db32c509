import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import type { CutPart } from '../../lib/cutting/cut-part.js';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { circle, rectangle, solid } from '../../lib/geometry/outline.js';
import { nestCuts, type Wanted } from '../../lib/nesting/nest-cuts.js';
import type { Sheet } from '../../lib/nesting/sheet.js';
import { felloe } from '../../lib/parts/felloe.js';
import type { Part } from '../../lib/parts/part.js';
import type { Stock } from '../../lib/stock/stock.js';
import { near } from '../close.js';
import { BEAM, lap, plate, QUARTER_INCH, SAW } from '../cutting/pieces.js';
import { CHORD, leastGap, placed } from './gap.js';

const IN = 25.4;
const plank: Stock = {
  name: 'plank',
  kind: 'board',
  length: 96 * IN,
  width: 7.25 * IN,
  thickness: 19.05,
  true: IN / 8,
  margin: 5,
};
const ply: Stock = { name: 'ply', kind: 'sheet', length: 1220, width: 610, thickness: 12, true: 0, margin: 5 };

const routed = (part: Part): CutPart => cut(part, QUARTER_INCH, 'router').value;
const router = { method: 'router' } as const;
const rect = (x: number, y: number, over: Partial<Part> = {}): Part => plate(solid(rectangle(0, 0, x, y)), over);

/** A felloe of the design's example wheel: 30 in over the rim, band 4-1/4 in, five felloes. */
const ferryFelloe = felloe({
  outer: 15 * IN,
  inner: 10.75 * IN,
  sweep: (2 * Math.PI) / 5,
  thickness: 19.05,
  stock: 'plank',
});

const boxes = (sheet: Sheet) => placed(sheet).map(bounds);
const count = (sheets: readonly Sheet[], id: string) =>
  sheets.reduce((sum, s) => sum + s.placements.filter(p => p.cut.part.id === id).length, 0);

// Board a felloe needs: width Ro - Ri cos(180°/F), length 2 Ro sin(180°/F); ring cut from straight boards, plane trigonometry
test('a felloe goes on a board just as wide as it needs with trued edges and margins; a hair less is a stop that names it', () => {
  const width = 15 * IN - 10.75 * IN * Math.cos(Math.PI / 5) + 2 * (IN / 8) + 2 * 5;
  const wanted = [{ cut: routed(ferryFelloe), quantity: 5 }];
  const fits = nestCuts(wanted, [{ ...plank, width }], router);
  expect(fits.findings).toEqual([]);
  expect(count(fits.value, 'felloe')).toBe(5);
  const { value, findings } = nestCuts(wanted, [{ ...plank, width: width - 0.01 }], router);
  expect(value).toEqual([]);
  expect(findings).toMatchObject([{ level: 'stop', rule: 'stock-too-small', where: 'stock.plank.width' }]);
  near(Number(findings[0]!.limit), width);
  near(Number(findings[0]!.value), width - 0.01);
});

test('a board too short is a stop that names its length and what is needed', () => {
  const needed = 2 * 15 * IN * Math.sin(Math.PI / 5) + 10;
  const { findings } = nestCuts(
    [{ cut: routed(ferryFelloe), quantity: 1 }],
    [{ ...plank, length: needed - 1 }],
    router,
  );
  expect(findings).toMatchObject([{ level: 'stop', where: 'stock.plank.length' }]);
  near(Number(findings[0]!.limit), needed);
});

test('the five felloes of the example wheel come from one 8 ft 1x8, and utilisation is their area over the board', () => {
  const { value, findings } = nestCuts([{ cut: routed(ferryFelloe), quantity: 5 }], [{ ...plank, count: 2 }], router);
  expect(findings).toEqual([]);
  expect(value.map(s => [s.number, s.placements.length])).toEqual([[1, 5]]);
  near(value[0]!.utilisation, (5 * area(ferryFelloe.region)) / (96 * 7.25 * IN * IN));
});

test('too few boards: all are laid out and the stop says how many more', () => {
  const { value, findings } = nestCuts([{ cut: routed(ferryFelloe), quantity: 11 }], [{ ...plank, count: 1 }], router);
  expect(value.map(s => [s.stock.name, s.number, s.placements.length])).toEqual([
    ['plank', 1, 5],
    ['plank', 2, 5],
    ['plank', 3, 1],
  ]);
  expect(findings).toMatchObject([{ level: 'stop', rule: 'too-few', where: 'stock.plank.count', value: 1, limit: 3 }]);
  expect(findings[0]!.message).toContain('2 more');
});

test('grain runs along the stock, face up or face down; without grain a part may turn by quarters', () => {
  const slanted = rect(200, 40, { id: 'slanted', grain: Math.PI / 2, stock: 'plank' });
  // worked from the back it lies mirrored: a grain of 30° is seen at 150°
  const back = rect(150, 20, { id: 'back', grain: Math.PI / 6, stock: 'plank', features: [lap('back', 5, 20)] });
  const wanted = [slanted, back].map(p => ({ cut: routed(p), quantity: 2 }));
  const { value } = nestCuts(wanted, [{ ...plank, width: 240 }], router);
  const along = (id: string) =>
    value
      .flatMap(s => s.placements)
      .filter(p => p.cut.part.id === id)
      .map(p => p.motion.turn);
  expect(along('slanted')).toHaveLength(2);
  for (const turn of along('slanted')) near(Math.abs(Math.sin(turn + Math.PI / 2)), 0);
  for (const turn of along('back')) near(Math.abs(Math.sin(turn + (Math.PI * 5) / 6)), 0);
  const free = nestCuts([{ cut: routed(rect(40, 200, { stock: 'plank' })), quantity: 1 }], [plank], router);
  expect(free.findings).toEqual([]);
  expect(Math.abs(Math.sin(free.value[0]!.placements[0]!.motion.turn))).toBe(1);
});

test.each([
  ['router', QUARTER_INCH, 6.35 + 1],
  ['laser', BEAM, 0.2 + 2],
  ['hand', SAW, 3.2 + 1],
] as const)('side by side with a %s, finished outlines are the cut and a bridge apart', (method, cutter, gap) => {
  const wanted = [{ cut: cut(rect(100, 50), cutter, method).value, quantity: 4 }];
  const { value } = nestCuts(wanted, [ply], { method });
  expect(leastGap(value[0]!, 50)).toBeCloseTo(gap, 6);
  // as many rows as fit: the margin is to the finished outline, the cut may use it
  const exact = { ...ply, width: 2 * 50 + gap + 10, length: 2 * 100 + gap + 10 };
  expect(nestCuts(wanted, [exact], { method }).value.map(s => s.placements.length)).toEqual([4]);
  expect(nestCuts(wanted, [{ ...exact, width: exact.width - 0.01 }], { method }).value.length).toBeGreaterThan(1);
});

const anyPart = fc.oneof(
  fc
    .record({
      x: fc.integer({ min: 20, max: 400 }),
      y: fc.integer({ min: 20, max: 200 }),
      grain: fc.constantFrom(undefined, 0),
    })
    .map(({ x, y, grain }) => rect(x, y, grain === undefined ? {} : { grain })),
  fc.integer({ min: 15, max: 150 }).map(r => plate(solid(circle(r)))),
  fc
    .record({
      inner: fc.integer({ min: 60, max: 280 }),
      band: fc.integer({ min: 20, max: 90 }),
      n: fc.integer({ min: 4, max: 12 }),
    })
    .map(({ inner, band, n }) =>
      felloe({
        outer: inner + band,
        inner,
        sweep: (2 * Math.PI) / n,
        thickness: 12,
        stock: 'ply',
        grained: n % 2 === 0,
      }),
    ),
);
const anyJob = fc.array(fc.record({ part: anyPart, quantity: fc.integer({ min: 1, max: 6 }) }), {
  minLength: 1,
  maxLength: 5,
});
const wantedOf = (job: readonly { part: Part; quantity: number }[]): Wanted[] =>
  job.map(({ part, quantity }, i) => ({ cut: routed({ ...part, id: `p${i}` }), quantity }));

test('every part in its quantity, inside the trued stock by its margin, a safe gap apart', () => {
  fc.assert(
    fc.property(anyJob, fc.constantFrom(0, 5, 12), fc.constantFrom(0, 3), (job, margin, trued) => {
      const stock = { ...ply, kind: 'board', margin, true: trued } as const;
      const wanted = wantedOf(job);
      const { value, findings } = nestCuts(wanted, [stock], router);
      expect(findings).toEqual([]);
      for (const w of wanted) expect(count(value, w.cut.part.id)).toBe(w.quantity);
      for (const sheet of value) {
        for (const b of boxes(sheet)) {
          expect(Math.min(b.minX, b.minY - trued)).toBeGreaterThan(margin - 1e-5);
          expect(Math.max(b.maxX - stock.length, b.maxY + trued - stock.width)).toBeLessThan(1e-5 - margin);
        }
        expect(leastGap(sheet, 10)).toBeGreaterThan(7.35 - 2 * CHORD);
      }
    }),
    { numRuns: 60 },
  );
});

test('same input, same layout', () => {
  fc.assert(
    fc.property(anyJob, job => {
      const lay = () =>
        JSON.stringify(nestCuts(wantedOf(job), [ply], router).value.map(s => s.placements.map(p => p.motion)));
      expect(lay()).toBe(lay());
    }),
    { numRuns: 15 },
  );
});

test('ring segments lie in each other: a column of them takes a third less than their boxes would', () => {
  const segment = felloe({
    outer: 360,
    inner: 309,
    sweep: (2 * Math.PI) / 5,
    thickness: 12,
    stock: 'ply',
    grained: false,
  });
  const { value } = nestCuts([{ cut: routed(segment), quantity: 12 }], [ply], router);
  const used = Math.max(...boxes(value[0]!).map(b => b.maxX));
  const box = bounds(segment.region.outer);
  expect(value).toHaveLength(1);
  expect(used).toBeLessThan((2 / 3) * 12 * (box.maxY - box.minY + 7.35));
});

test('2000 parts are all laid out, and well', () => {
  const sizes = Array.from({ length: 20 }, (_, i) => ({
    cut: routed(rect(40 + 11 * i, 30 + 5 * i, { id: `r${i}` })),
    quantity: 100,
  }));
  const { value, findings } = nestCuts(sizes, [ply], router);
  expect(findings).toEqual([]);
  expect(value.reduce((sum, s) => sum + s.placements.length, 0)).toBe(2000);
  const full = value.slice(0, -1);
  expect(full.reduce((sum, s) => sum + s.utilisation, 0) / full.length).toBeGreaterThan(0.7);
});

test('a part larger than the bed is a stop; stock longer than the bed a warning; the stock may lie across', () => {
  const wanted = [{ cut: routed(rect(600, 100, { grain: 0 })), quantity: 1 }];
  const on = (length: number, width: number) => nestCuts(wanted, [ply], { ...router, bed: { length, width } }).findings;
  expect(on(1220, 610)).toEqual([]);
  expect(on(610, 1220)).toEqual([]);
  expect(on(700, 650)).toMatchObject([
    { level: 'warn', rule: 'stock-over-bed', where: 'stock.ply.length', value: 1220, limit: 700 },
  ]);
  // 600 mm and half a cut on either end
  const [finding, ...more] = on(606, 400);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ level: 'stop', rule: 'bed-too-small', where: 'bed.length', value: 606 });
  near(Number(finding!.limit), 606.35);
  expect(on(700, 106)).toMatchObject([{ level: 'stop', where: 'bed.width', value: 106 }]);
});

test('a stock that is not there, or half a part, is refused', () => {
  const wanted = [{ cut: routed(rect(60, 10, { stock: 'oak' })), quantity: 1 }];
  expect(() => nestCuts(wanted, [ply, plank], router)).toThrow(Unusable);
  expect(() => nestCuts(wanted, [ply, plank], router)).toThrow('plate.stock is oak; allowed: ply, plank');
  expect(() => nestCuts([{ cut: routed(rect(60, 10)), quantity: 1.5 }], [ply], router)).toThrow(
    'plate.quantity is 1.5',
  );
});

// the search begins with the plain layout and takes nothing worse
test('more steps never need more boards, and keep the gap', () => {
  const wanted = [
    { cut: routed(ferryFelloe), quantity: 7 },
    { cut: routed(rect(400, 30, { id: 'bar', stock: 'plank' })), quantity: 9 },
  ];
  const few = nestCuts(wanted, [plank], router).value;
  const more = nestCuts(wanted, [plank], { ...router, steps: 30 }).value;
  expect(more.length).toBeLessThanOrEqual(few.length);
  for (const sheet of more) expect(leastGap(sheet, 10)).toBeGreaterThan(7.35 - 2 * CHORD);
});
