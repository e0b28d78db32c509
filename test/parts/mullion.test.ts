import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { mullion, mullionLength } from '../../lib/parts/mullion.js';

/** Integral of the half chord of a circle of radius R from its centre to y: (y sqrt(R² - y²) + R² asin(y / R)) / 2; plane geometry. */
const halfChords = (y: number, R: number): number => (y * Math.sqrt(R * R - y * y) + R * R * Math.asin(y / R)) / 2;

const sizes = fc.record({
  reach: fc.double({ min: 20, max: 900, noNaN: true }),
  off: fc.double({ min: 0, max: 0.8, noNaN: true }),
  width: fc.double({ min: 0.01, max: 0.15, noNaN: true }),
});

test('a bar is what two arcs leave of a strip: its area is the integral of the chords, its length the longest of them', () => {
  fc.assert(
    fc.property(sizes, ({ reach, off, width }) => {
      const o = { reach, off: off * reach, width: width * reach };
      const part = mullion({ ...o, thickness: 10, stock: 'strip' });
      const [low, high] = [o.off - o.width / 2, o.off + o.width / 2];
      const expected = 2 * (halfChords(high, reach) - halfChords(low, reach));
      expect(area(part.region) / expected).toBeCloseTo(1, 9);
      const { minX, maxX, minY, maxY } = bounds(part.region.outer);
      expect(maxX - minX).toBeCloseTo(mullionLength(o), 6);
      expect(maxY - minY).toBeCloseTo(o.width, 6);
    }),
    { numRuns: 40 },
  );
});

test("a chord of Machinery's Handbook: radius 1, 60 degrees, height 0.13397, chord 1.0000", () => {
  // a thin bar 0.86603 from the centre: what lies past it is the segment
  expect(mullionLength({ reach: 1, off: 1 - 0.13397, width: 0 })).toBeCloseTo(1, 4);
});
