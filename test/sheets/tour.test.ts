import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { distance, type Point } from '../../lib/geometry/point.js';
import { type Tasks, tour, travel } from '../../lib/sheets/tour.js';
import type { Reach } from '../../lib/sheets/work.js';

const HOME = { x: 0, y: 0 };

/** Stops in which the tool does not matter. */
const tasksOf = (reaches: readonly Reach[], after: readonly (readonly number[])[] = reaches.map(() => [])): Tasks => ({
  reaches,
  after,
  tools: reaches.map(() => 0),
  start: HOME,
});
const dot = (x: number, y: number): Reach => ({ from: { x, y }, to: { x, y }, reversible: false });

const point = fc.record({ x: fc.integer({ min: 0, max: 1000 }), y: fc.integer({ min: 0, max: 1000 }) });
const reach = fc
  .record({ from: point, to: point, line: fc.boolean() })
  .map(({ from, to, line }): Reach => ({ from, to: line ? to : from, reversible: line }));
/** Stops, and pairs (earlier, later) that run from low numbers to high: never in a circle. */
const job = fc.array(reach, { minLength: 1, maxLength: 24 }).chain(reaches =>
  fc.record({
    reaches: fc.constant(reaches),
    pairs: fc.array(fc.tuple(fc.nat(reaches.length - 1), fc.nat(reaches.length - 1)), { maxLength: 20 }),
  }),
);
const afterOf = (count: number, pairs: readonly (readonly [number, number])[]): number[][] =>
  Array.from({ length: count }, (_, i) =>
    pairs.flatMap(([a, b]) => (a !== b && Math.min(a, b) === i ? [Math.max(a, b)] : [])),
  );

test('every stop once, nothing before what must precede it, only lines turned round', () => {
  fc.assert(
    fc.property(job, ({ reaches, pairs }) => {
      const after = afterOf(reaches.length, pairs);
      const stops = tour(tasksOf(reaches, after));
      const place = new Map(stops.map((s, i) => [s.task, i]));
      expect(place.size).toBe(reaches.length);
      after.forEach((later, task) => {
        for (const t of later) expect(place.get(t)!).toBeGreaterThan(place.get(task)!);
      });
      for (const s of stops) if (s.reversed) expect(reaches[s.task]!.reversible).toBe(true);
    }),
    { numRuns: 300 },
  );
});

test('a row of holes is drilled in a row, from the near end', () => {
  const row = [5, 3, 9, 1, 7].map(i => dot(i * 10, 0));
  const stops = tour(tasksOf(row));
  expect(stops.map(s => s.task)).toEqual([3, 1, 0, 4, 2]);
  expect(travel(tasksOf(row), stops)).toBe(90);
});

test('a line is run from the end that is nearer', () => {
  const line: Reach = { from: { x: 100, y: 0 }, to: { x: 10, y: 0 }, reversible: true };
  const stops = tour(tasksOf([line]));
  expect(stops).toEqual([{ task: 0, reversed: true }]);
  expect(travel(tasksOf([line]), stops)).toBe(10);
});

test('one tool after the other, whatever the way', () => {
  const row = [1, 2, 3, 4, 5, 6].map(i => dot(i * 10, 0));
  const tools = [2, 1, 2, 1, 2, 1];
  const stops = tour({ ...tasksOf(row), tools });
  expect(stops.map(s => tools[s.task])).toEqual([1, 1, 1, 2, 2, 2]);
  // out along the first, back along the second
  expect(stops.map(s => s.task)).toEqual([1, 3, 5, 4, 2, 0]);
});

test('stops that wait for each other are refused', () => {
  expect(() => tour(tasksOf([dot(1, 1), dot(2, 2)], [[1], [0]]))).toThrow(Unusable);
});

/** The shortest way through few stops: every order tried. */
function shortest(points: readonly Point[], after: readonly (readonly number[])[]): number {
  const go = (at: Point, left: ReadonlySet<number>): number => {
    if (left.size === 0) return 0;
    const open = [...left].filter(t => ![...left].some(o => after[o]!.includes(t)));
    return Math.min(
      ...open.map(t => distance(at, points[t]!) + go(points[t]!, new Set([...left].filter(o => o !== t)))),
    );
  };
  return go(HOME, new Set(points.keys()));
}

describe('beside the shortest way of all', () => {
  test('seven stops are at most a few hundredths longer on average', () => {
    const ratios: number[] = [];
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 7, maxLength: 7 }),
        fc.array(fc.tuple(fc.nat(6), fc.nat(6)), { maxLength: 4 }),
        (points, pairs) => {
          const after = afterOf(7, pairs);
          const reaches = points.map(p => dot(p.x, p.y));
          const best = shortest(points, after);
          const tasks = tasksOf(reaches, after);
          const found = travel(tasks, tour(tasks));
          expect(found).toBeGreaterThan(best - 1e-6);
          if (best > 0) ratios.push(found / best);
        },
      ),
      { numRuns: 60 },
    );
    expect(ratios.reduce((a, b) => a + b, 0) / ratios.length).toBeLessThan(1.04);
  });
});
