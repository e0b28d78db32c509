import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depthPasses, passesTo } from '../../lib/cutting/depth-passes.js';
import { circle, rectangle, reverse } from '../../lib/geometry/outline.js';
import { BEAM, lap, plate } from './pieces.js';

const bit = { kind: 'router', diameter: 6, pass: 4 } as const;

test('10 mm in passes of 4 at most is 3 of 10/3; a lap of 5 is 2 of 2.5; a pass as deep as the work is one', () => {
  const worked = plate(
    { outer: rectangle(0, -10, 100, 10), openings: [reverse(circle(5, { x: 20, y: 0 }))] },
    {
      features: [
        lap('back'),
        { kind: 'drill', from: 'front', at: { x: 80, y: 0 }, diameter: 8, depth: 4 },
        { kind: 'drill', from: 'through', at: { x: 90, y: 0 }, diameter: 3, depth: 10 },
      ],
    },
  );
  expect(depthPasses(worked, bit)).toEqual([
    { work: 'outside', face: 'front', depth: 10, passes: 3, each: 10 / 3 },
    { work: 'inside', face: 'front', depth: 10, passes: 3, each: 10 / 3 },
    { work: 'pocket', face: 'back', depth: 5, passes: 2, each: 2.5 },
    { work: 'drill', face: 'front', depth: 4, diameter: 8, passes: 1, each: 4 },
    { work: 'drill', face: 'front', depth: 10, diameter: 3, passes: 3, each: 10 / 3 },
  ]);
  expect(depthPasses(worked, BEAM)).toEqual([]);
});

test('a cutter that does not say goes half its diameter deep at a time', () => {
  expect(passesTo(12, { kind: 'router', diameter: 6 })).toEqual({ passes: 4, each: 3 });
});

test('passes reach the depth, none deeper than allowed, and one fewer would not do', () => {
  const size = (max: number) => fc.double({ min: 0.1, max, noNaN: true });
  fc.assert(
    fc.property(size(300), size(100), (depth, pass) => {
      const { passes, each } = passesTo(depth, { ...bit, pass });
      expect(passes * each).toBeCloseTo(depth, 9);
      expect(each).toBeLessThanOrEqual(pass * (1 + 1e-8));
      if (passes > 1) expect(depth / (passes - 1)).toBeGreaterThan(pass);
    }),
  );
});
