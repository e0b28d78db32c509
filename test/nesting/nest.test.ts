import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { moveOutline, movePoint } from '../../lib/geometry/motion.js';
import { circle, polygon, type Region, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { inline } from '../../lib/nesting/engine/rounds.js';
import type { NestPart, NestStock } from '../../lib/nesting/job.js';
import { nest, nestLong } from '../../lib/nesting/nest.js';
import { near } from '../close.js';
import { layoutFaults } from './faults.js';
import { randomJob } from './random-jobs.js';

const sheet = (length: number, width: number, more: Partial<NestStock> = {}): NestStock =>
  ({ kind: 'sheet', name: 'ply', length, width, grain: 'none', ...more }) as NestStock;
const rect = (id: string, w: number, h: number, quantity: number, more: Partial<NestPart> = {}): NestPart => ({
  id,
  region: solid(rectangle(0, 0, w, h)),
  quantity,
  ...more,
});
const ring = (outer: number, inner: number): Region => ({ outer: circle(outer), openings: [reverse(circle(inner))] });

test('discs lie in the openings of rings, a gap off the rim', () => {
  const parts: NestPart[] = [
    { id: 'ring', region: ring(100, 70), quantity: 2 },
    { id: 'disc', region: solid(circle(60)), quantity: 2 },
  ];
  const stock = [sheet(410, 206)];
  // 2 rings of 200 and a gap fill the sheet but for 2: the discs have no place but the openings
  const layout = nest(parts, stock, { gap: 5 });
  expect(layoutFaults(parts, stock, layout, 5)).toEqual([]);
  expect(layout.pieces).toHaveLength(1);
  const middles = (id: string) =>
    layout.pieces[0]!.placements.filter(p => p.part === id).map(p => movePoint({ x: 0, y: 0 }, p.motion));
  for (const d of middles('disc'))
    expect(Math.min(...middles('ring').map(r => Math.hypot(r.x - d.x, r.y - d.y)))).toBeLessThanOrEqual(5.01);
});

test('the cheapest stock that takes all is used, and an offcut first where it is cheap', () => {
  const stock: NestStock[] = [
    { ...sheet(1000, 500), name: 'full', price: 40 },
    {
      kind: 'offcut',
      name: 'left',
      outline: solid(
        polygon([
          { x: 0, y: 0 },
          { x: 300, y: 0 },
          { x: 0, y: 300 },
        ]),
      ),
      count: 1,
      price: 1,
    },
  ];
  const small = nest([rect('a', 90, 90, 1)], stock, { gap: 2 });
  expect(small.pieces.map(p => p.stock)).toEqual(['left']);
  near(small.cost, 1);
  const large = nest([rect('a', 400, 300, 1)], stock, { gap: 2 });
  expect(large.pieces.map(p => p.stock)).toEqual(['full']);
});

test('parts keep off defects, and what finds no place is told', () => {
  const knot = solid(circle(40, { x: 100, y: 50 }));
  const stock = [sheet(200, 100, { defects: [knot], count: 1 })];
  const parts = [rect('a', 50, 90, 3)];
  const layout = nest(parts, stock, { gap: 2 });
  expect(layoutFaults(parts, stock, layout, 2)).toEqual([]);
  expect(layout.unplaced).toEqual([{ part: 'a', quantity: 1 }]);
  expect(layout.findings).toMatchObject([{ level: 'stop', rule: 'no-place', where: 'a', value: 1 }]);
});

test('the offcut is what a straight cut leaves whole: beside two squares, the rest of the length', () => {
  const layout = nest([rect('a', 100, 100, 2)], [sheet(1000, 201)], { gap: 1 });
  const { offcut } = layout.pieces[0]!;
  const box = bounds(offcut!);
  near(box.maxX, 1000);
  near(area(solid(offcut!)), (1000 - 101) * 201, 1e-6);
});

test('grain: along and across the stock, within degrees, mirrored or not', () => {
  const along = { direction: Math.PI / 2, rule: 'along' } as const;
  const parts = [
    rect('a', 30, 200, 3, { grain: along }),
    rect('b', 200, 30, 3, { grain: { direction: 0, rule: 'across' } }),
    rect('c', 150, 40, 2, { grain: { direction: 0.1, rule: 'along', within: 0.1 }, mirrored: true }),
  ];
  const stock = [sheet(900, 400, { grain: 'along' })];
  const layout = nest(parts, stock, { gap: 3 });
  expect(layoutFaults(parts, stock, layout, 3)).toEqual([]);
  for (const p of layout.pieces[0]!.placements) {
    const box = bounds(moveOutline(parts.find(q => q.id === p.part)!.region.outer, p.motion));
    if (p.part === 'a') near(box.maxX - box.minX, 200);
    if (p.part === 'b') near(box.maxY - box.minY, 200);
  }
});

test('what cannot be asked for is refused by name', () => {
  const one = [sheet(100, 100)];
  expect(() => nest([rect('a', 10, 10, 1.5)], one, { gap: 1 })).toThrow(/a\.quantity is 1\.5/);
  expect(() => nest([rect('a', 10, 10, 1, { stock: ['oak'] })], one, { gap: 1 })).toThrow(
    /a\.stock is oak; allowed: ply/,
  );
  expect(() => nest([rect('a', 10, 10, 1)], one, { gap: Number.NaN })).toThrow(Unusable);
  expect(() => nest([], [], { gap: 1 })).toThrow(/stock/);
});

test('nothing to lay out, stock eaten up by its margin, a part too large', () => {
  expect(nest([], [sheet(100, 100)], { gap: 1 }).pieces).toEqual([]);
  expect(nest([rect('a', 10, 10, 2)], [sheet(100, 100, { margin: 60 })], { gap: 1 }).unplaced).toEqual([
    { part: 'a', quantity: 2 },
  ]);
  const some = nest([rect('a', 500, 10, 1), rect('b', 20, 20, 1)], [sheet(100, 100)], { gap: 1 });
  expect(some.unplaced).toEqual([{ part: 'a', quantity: 1 }]);
  expect(some.pieces).toHaveLength(1);
});

test('a long search answers as a short one of the same steps does', async () => {
  const { parts, stocks, gap } = randomJob(7);
  const long = await nestLong(parts, stocks, { gap, effort: { kind: 'steps', steps: 10 }, run: inline() });
  expect(JSON.stringify(long)).toBe(JSON.stringify(nest(parts, stocks, { gap, steps: 10 })));
});

test('random jobs: every part where it may lie, its gap kept, judged by an independent library', () => {
  for (let seed = 1; seed <= 30; seed++) {
    const { parts, stocks, gap } = randomJob(seed);
    const layout = nest(parts, stocks, { gap, steps: 3 });
    expect(layoutFaults(parts, stocks, layout, gap), `seed ${seed}`).toEqual([]);
  }
});

// the margin was smaller than half the gap: grown by the difference, the notch of the outline lost its tip
test('a part does not reach into the notch of an offcut', () => {
  const { parts, stocks, gap } = randomJob(1422);
  expect(layoutFaults(parts, stocks, nest(parts, stocks, { gap, steps: 5 }), gap)).toEqual([]);
});

test('the judge sees what is wrong: a part moved, turned, lost', () => {
  const parts = [rect('a', 100, 50, 4, { turns: 'none' })];
  const stock = [sheet(400, 220)];
  const layout = nest(parts, stock, { gap: 5 });
  expect(layoutFaults(parts, stock, layout, 5)).toEqual([]);
  const [piece] = layout.pieces;
  const spoilt = (change: (m: { turn: number; x: number; y: number }) => { turn: number; x: number; y: number }) => {
    const [first, ...rest] = piece!.placements;
    const placements = [{ ...first!, motion: change(first!.motion) }, ...rest];
    return layoutFaults(parts, stock, { ...layout, pieces: [{ ...piece!, placements }] }, 5).join('\n');
  };
  const second = piece!.placements[1]!.motion;
  expect(spoilt(() => ({ ...second, x: second.x + 1 }))).toMatch(/too close/);
  expect(spoilt(m => ({ ...m, x: m.x - 500 }))).toMatch(/leaves the stock/);
  expect(spoilt(m => ({ ...m, turn: 0.1 }))).toMatch(/against its rules/);
  expect(
    layoutFaults(parts, stock, { ...layout, pieces: [{ ...piece!, placements: piece!.placements.slice(1) }] }, 5)[0],
  ).toMatch(/3 laid, 0 left, 4 wanted/);
});
