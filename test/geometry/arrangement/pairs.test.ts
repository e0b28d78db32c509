import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closePairs } from '../../../lib/geometry/arrangement/pairs.js';
import { vertexMerger } from '../../../lib/geometry/arrangement/vertices.js';

const box = fc.record({
  x: fc.integer({ min: 0, max: 300 }),
  y: fc.integer({ min: 0, max: 300 }),
  w: fc.oneof(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 300 })),
  h: fc.oneof(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 300 })),
});

test('the sweep tells every pair of near boxes once, as holding each against each does', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 120 }), list => {
      const columns = {
        minX: list.map(b => b.x),
        minY: list.map(b => b.y),
        maxX: list.map(b => b.x + b.w),
        maxY: list.map(b => b.y + b.h),
      };
      const told: string[] = [];
      closePairs(columns, 0, list.length, 0.5, (i, j) => told.push(`${i} ${j}`));
      const want = list.flatMap((a, i) =>
        list.flatMap((b, j) => {
          const apart = Math.max(a.x - b.x - b.w, b.x - a.x - a.w, a.y - b.y - b.h, b.y - a.y - a.h);
          return i < j && apart <= 0.5 ? [`${i} ${j}`] : [];
        }),
      );
      expect(told.sort()).toEqual(want.sort());
    }),
    { seed: 1 },
  );
});

test('points within the tolerance are one vertex, wherever the cells’ borders are', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e3, max: 1e3, noNaN: true }),
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      (x, a) => {
        const vertices = vertexMerger(1e-6, 10);
        const first = vertices.at(x, -x);
        expect(vertices.at(x + 0.9e-6 * Math.cos(a), -x + 0.9e-6 * Math.sin(a))).toBe(first);
        expect(vertices.at(x + 1.1e-6 * Math.cos(a), -x + 1.1e-6 * Math.sin(a))).not.toBe(first);
      },
    ),
    { seed: 1 },
  );
});
