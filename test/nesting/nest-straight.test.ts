import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { moveOutline } from '../../lib/geometry/motion.js';
import { circle, rectangle, solid } from '../../lib/geometry/outline.js';
import type { NestPart, NestStock } from '../../lib/nesting/job.js';
import { nest } from '../../lib/nesting/nest.js';
import { nestStraight } from '../../lib/nesting/nest-straight.js';
import { layoutFaults } from './faults.js';

const IN = 25.4;
const KERF = IN / 8;
const lumber = (width: number): NestStock => ({
  kind: 'board',
  name: 'board',
  length: 96 * IN,
  width: width * IN,
  true: IN / 8,
});
const bars = (length: number, width: number, quantity: number): NestPart => ({
  id: 'bar',
  region: solid(rectangle(0, 0, length * IN, width * IN)),
  quantity,
  grain: { direction: 0, rule: 'along' },
});

/** Hand counts for an 8 ft board of construction lumber, both edges trued by 1/8 in, kerf 1/8 in. Actual widths: NIST PS 20, table 3. */
const CASES = [
  // 3 strips: 3 x 1-5/8 + 2 x 1/8 = 5-1/8 of 5-1/4; 4 lengths: 4 x 20 + 3 x 1/8 = 80-3/8 of 96, a fifth would end at 100-1/2
  { board: 5.5, length: 20, width: 1.625, count: 12 },
  // 2 strips: 2 x 1-5/8 + 1/8 = 3-3/8 > 3-1/4, so 1; 2 lengths: 2 x 47 + 1/8 = 94-1/8
  { board: 3.5, length: 47, width: 1.625, count: 2 },
  // 2 strips: 2 x 1-1/2 + 1/8 = 3-1/8 of 3-1/4; 2 lengths: 2 x 41 + 1/8 = 82-1/8
  { board: 3.5, length: 41, width: 1.5, count: 4 },
  // 1 strip: 2 x 4-1/4 > 7; 5 lengths: 5 x 17-1/2 + 4 x 1/8 = 88
  { board: 7.25, length: 17.5, width: 4.25, count: 5 },
  // 4 strips: 4 x 1-5/8 + 3 x 1/8 = 6-7/8 of 7; 3 lengths: 3 x 30 + 2 x 1/8 = 90-1/4
  { board: 7.25, length: 30, width: 1.625, count: 12 },
] as const;

test.each(CASES)(
  '$length x $width in from a board $board in wide: $count by hand',
  ({ board, length, width, count }) => {
    expect(nestStraight([bars(length, width, count)], [lumber(board)], KERF).pieces).toHaveLength(1);
    expect(
      nestStraight([bars(length, width, count + 1)], [lumber(board)], KERF).pieces.map(p => p.placements.length),
    ).toEqual([count, 1]);
    // the free layout does as well
    const free = (quantity: number) => nest([bars(length, width, quantity)], [lumber(board)], { gap: KERF });
    expect(free(count).pieces).toHaveLength(1);
    expect(free(count + 1).pieces).toHaveLength(2);
  },
);

const anyBars = fc.array(
  fc.record({
    w: fc.integer({ min: 30, max: 500 }),
    h: fc.integer({ min: 15, max: 90 }),
    quantity: fc.integer({ min: 1, max: 6 }),
  }),
  { minLength: 1, maxLength: 6 },
);

test('every part lies in its strip, a kerf from the next; no cut goes through a part', () => {
  const stock: NestStock = { kind: 'board', name: 'b', length: 1000, width: 140, true: 3, margin: 2 };
  fc.assert(
    fc.property(anyBars, all => {
      const parts = all.map(({ w, h, quantity }, i) => ({
        id: `p${i}`,
        region: solid(rectangle(0, 0, w, h)),
        quantity,
        turns: 'half' as const,
      }));
      const { pieces } = nestStraight(parts, [stock], 3);
      let laid = 0;
      for (const piece of pieces) {
        const boxes = piece.placements.map(p =>
          bounds(moveOutline(parts.find(q => q.id === p.part)!.region.outer, p.motion)),
        );
        boxes.forEach((a, i) => {
          expect(Math.min(a.minX - 2, a.minY - 5, 998 - a.maxX, 135 - a.maxY)).toBeGreaterThan(-1e-6);
          for (const b of boxes.slice(i + 1)) {
            const apart = Math.max(b.minX - a.maxX, a.minX - b.maxX, b.minY - a.maxY, a.minY - b.maxY);
            expect(apart).toBeGreaterThan(3 - 1e-6);
          }
          for (const cut of piece.cuts) {
            const c = {
              minX: Math.min(...cut.map(v => v.x)),
              maxX: Math.max(...cut.map(v => v.x)),
              minY: Math.min(...cut.map(v => v.y)),
              maxY: Math.max(...cut.map(v => v.y)),
            };
            const overlap =
              Math.min(a.maxX, c.maxX) - Math.max(a.minX, c.minX) > -1e-6 &&
              Math.min(a.maxY, c.maxY) - Math.max(a.minY, c.minY) > -1e-6;
            const onEdge =
              Math.abs(c.minY - a.maxY) < 1e-6 || Math.abs(c.minX - a.maxX) < 1e-6 || Math.abs(c.maxY - a.minY) < 1e-6;
            expect(overlap && !onEdge).toBe(false);
          }
        });
        laid += boxes.length;
      }
      expect(laid).toBe(all.reduce((sum, b) => sum + b.quantity, 0));
      const covered = parts.reduce((sum, p) => sum + p.quantity * area(p.region), 0);
      expect(pieces.reduce((sum, p) => sum + p.utilisation, 0) * 140_000).toBeCloseTo(covered, 3);
    }),
    { numRuns: 100 },
  );
});

const anyBoards = fc.array(
  fc.record({
    length: fc.integer({ min: 400, max: 1200 }),
    width: fc.integer({ min: 60, max: 200 }),
    count: fc.constantFrom(undefined, 1, 2),
    price: fc.constantFrom(undefined, 0, 9),
    grain: fc.constantFrom('along', 'across', 'none') as fc.Arbitrary<'along' | 'across' | 'none'>,
    knots: fc.array(fc.tuple(fc.integer({ min: 0, max: 1200 }), fc.integer({ min: 0, max: 200 })), { maxLength: 3 }),
  }),
  { minLength: 1, maxLength: 3 },
);

test('boards of several kinds, with knots and counts: judged by an independent library; what is left over fits none that is left', () => {
  fc.assert(
    fc.property(anyBoards, anyBars, fc.boolean(), (boards, all, grained) => {
      const stocks = boards.map(
        ({ knots, count, price, ...b }, i): NestStock => ({
          ...b,
          kind: 'board',
          name: `b${i}`,
          true: 3,
          margin: 2,
          defects: knots.map(([x, y]) => solid(circle(12, { x, y }))),
          ...(count !== undefined && { count }),
          ...(price !== undefined && { price }),
        }),
      );
      const parts = all.map(
        ({ w, h, quantity }, i): NestPart => ({
          id: `p${i}`,
          region: solid(rectangle(0, 0, w, h)),
          quantity,
          ...(grained && { grain: { direction: 0, rule: 'along' } }),
        }),
      );
      const layout = nestStraight(parts, stocks, 3);
      expect(layoutFaults(parts, stocks, layout, 3)).toEqual([]);
      const endless = stocks.some(s => s.count === undefined && s.grain !== 'across' && s.defects!.length === 0);
      const fits = (s: NestStock, p: NestPart): boolean => {
        const { maxX, maxY } = bounds(p.region.outer);
        return s.kind === 'board' && maxX <= s.length - 4 && maxY <= s.width - 10;
      };
      if (endless)
        for (const { part } of layout.unplaced) {
          const plain = stocks.filter(s => s.count === undefined && s.grain !== 'across' && s.defects!.length === 0);
          expect(plain.some(s => fits(s, parts.find(p => p.id === part)!))).toBe(false);
        }
    }),
    { numRuns: 40 },
  );
});

test('what costs less is taken first, as far as there is any; the rest is left', () => {
  const board = (name: string, more: object): NestStock => ({ kind: 'board', name, length: 1000, width: 100, ...more });
  const stocks = [board('dear', { price: 20, count: 1 }), board('cheap', { price: 5, count: 2 })];
  const parts = [{ id: 'bar', region: solid(rectangle(0, 0, 480, 40)), quantity: 13 }];
  const layout = nestStraight(parts, stocks, 3);
  // two strips of two to a board
  expect(layout.pieces.map(p => [p.stock, p.placements.length])).toEqual([
    ['cheap', 4],
    ['cheap', 4],
    ['dear', 4],
  ]);
  expect([layout.unplaced, layout.cost]).toEqual([[{ part: 'bar', quantity: 1 }], 30]);
});

test('what is left whole is crosscut off before anything is ripped', () => {
  const [piece] = nestStraight([bars(20, 1.625, 12)], [lumber(5.5)], KERF).pieces;
  const box = bounds(piece!.offcut!);
  for (const cut of piece!.cuts) for (const v of cut) expect(v.x).toBeLessThanOrEqual(box.minX - KERF + 1e-9);
  expect(piece!.cuts[0]!.map(v => v.x)).toEqual([box.minX - KERF, box.minX - KERF]);
});
