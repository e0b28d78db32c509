import { expect, test } from 'vitest';
import type { ClearingOptions } from '../../lib/cutting/pass.js';
import { clearingPasses } from '../../lib/cutting/passes.js';
import { asCircle, circle, polygon, type Region, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { clearedWrong } from '../judges/swept.js';
import { randomPockets, wrongIn } from './random-pockets.js';

const rings = (stepover: number): ClearingOptions => ({ stepover, run: 'rings' });
const grain = (stepover: number): ClearingOptions => ({ stepover, run: 'grain' });
const STEPS = [0.4, 0.6, 0.95];

test('a bearing seat of 35 mm, a 6 mm cutter, steps of 0.4: circles of 14.5 mm and 2.4 less each, the smallest first', () => {
  const passes = clearingPasses(solid(circle(17.5)), 6, rings(0.4), 0);
  const radii = passes.map(p => (p.closed ? asCircle(p.line)?.radius : undefined));
  [2.5, 4.9, 7.3, 9.7, 12.1, 14.5].forEach((r, i) => {
    expect(radii[i]).toBeCloseTo(r, 9);
  });
  expect(radii).toHaveLength(6);
});

test('strokes along the grain go to and fro in one run, then once round the wall', () => {
  const passes = clearingPasses(solid(rectangle(0, 0, 60, 30)), 6, grain(0.5), 0);
  expect(passes.map(p => p.closed)).toEqual([false, true]);
  const [strokes] = passes;
  expect(new Set(strokes!.line.map(v => v.y)).size * 2).toBe(strokes!.line.length);
});

const POCKETS: readonly (readonly [name: string, Region])[] = [
  ['a lap', solid(rectangle(-16, -30, 16, 30))],
  ['a seat', solid(circle(17.5))],
  ['hardly wider than the cutter', solid(rectangle(0, 0, 80, 6.02))],
  ['just as wide as the cutter', solid(rectangle(0, 0, 80, 6))],
  [
    'a room with a way as wide as the cutter',
    solid(
      polygon(
        [
          [0, 0],
          [30, 0],
          [30, 12],
          [60, 12],
          [60, 18],
          [30, 18],
          [30, 30],
          [0, 30],
        ].map(([x, y]) => ({ x: x!, y: y! })),
      ),
    ),
  ],
  ['a ring', { outer: circle(60), openings: [reverse(circle(41))] }],
  ['an island off the middle', { outer: rectangle(0, 0, 100, 70), openings: [reverse(rectangle(20, 15, 55, 40))] }],
];

test('a groove just as wide as the cutter is one line, or one ring, through its middle', () => {
  const long = clearingPasses(solid(rectangle(0, 0, 80, 6)), 6, rings(0.4), 0);
  expect(long.map(p => p.closed)).toEqual([false]);
  const ys = long[0]!.line.map(v => v.y);
  expect(Math.max(...ys.map(y => Math.abs(y - 3)))).toBeLessThan(1e-4);
  const [round, ...more] = clearingPasses({ outer: circle(30), openings: [reverse(circle(24))] }, 6, grain(0.4), 0);
  expect(more).toEqual([]);
  expect(asCircle(round!.line)?.radius).toBeCloseTo(27, 3);
});

test.each(POCKETS)('%s is cleared whole and nothing else, rings and strokes', (_, area) => {
  for (const stepover of STEPS)
    for (const options of [rings(stepover), grain(stepover)]) {
      const found = clearedWrong(area, clearingPasses(area, 6, options, 0.3), 6);
      expect({ ...options, ...found }).toEqual({ ...options, left: 0, outside: 0 });
    }
});

test('the judge finds a pass that is left out, and one in the wall', () => {
  const area = solid(rectangle(0, 0, 60, 30));
  const passes = clearingPasses(area, 6, rings(0.4), 0);
  expect(clearedWrong(area, passes.slice(1), 6).left).toBeGreaterThan(10);
  const beside = { line: rectangle(2.9, 3, 57, 27), closed: true };
  expect(clearedWrong(area, [...passes, beside], 6).outside).toBeGreaterThan(0.1 * 24);
});

test('random pockets are cleared whole and nothing else', () => {
  const wrong: unknown[] = [];
  for (const { seed, ...pocket } of randomPockets(1, 12)) {
    const found = wrongIn(pocket);
    if (found.left > 0 || found.outside > 0) wrong.push({ seed, ...found });
  }
  expect(wrong).toEqual([]);
});
