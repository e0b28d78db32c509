import fc from 'fast-check';
import { expect, test } from 'vitest';
import { levelSpans } from '../../lib/geometry/level.js';
import { encloses } from '../../lib/geometry/locate.js';
import { annularSector, circle, rectangle, reverse } from '../../lib/geometry/outline.js';
import { near } from '../close.js';

test('a ring is crossed in two chords of its circles', () => {
  const ring = { outer: circle(50, { x: 5, y: 0 }), openings: [reverse(circle(30, { x: 5, y: 0 }))] };
  // chord 2 sqrt(r² - d²): 30-40-50 and 18-24-30 triangles, Euclid I.47
  const spans = levelSpans(ring, 24);
  expect(spans).toHaveLength(2);
  near(spans[0]![0], 5 - Math.sqrt(2500 - 576));
  near(spans[0]![1], 5 - 18);
  near(spans[1]![0], 5 + 18);
  expect(levelSpans(ring, 40)).toHaveLength(1);
  near(levelSpans(ring, 40)[0]![1], 35);
  expect(levelSpans(ring, 51)).toEqual([]);
});

test('the level line is inside between the ends of its spans and nowhere else', () => {
  const sector = annularSector(40, 100, 0.3, 2.5);
  const region = { outer: sector, openings: [reverse(rectangle(-4, 60, 6, 80))] };
  fc.assert(
    fc.property(
      fc.double({ min: -99, max: 99, noNaN: true }),
      fc.double({ min: -99, max: 99, noNaN: true }),
      (x, y) => {
        const inside = encloses(region.outer, { x, y }) && !encloses(region.openings[0]!, { x, y });
        const spans = levelSpans(region, y);
        fc.pre(spans.flat().every(end => Math.abs(end - x) > 1e-9));
        expect(spans.some(([from, to]) => from < x && x < to)).toBe(inside);
      },
    ),
    { numRuns: 500 },
  );
});
