import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area, bounds, centroid, length } from '../../lib/geometry/measure.js';
import { felloe, looseFelloe } from '../../lib/parts/felloe.js';
import { near } from '../close.js';

const board = { thickness: 19, stock: 'plank' };

// Annular sector, Machinery's Handbook, "Areas and dimensions of plane figures"; figures worked out by its formulas:
// area = angle / 2 (R^2 - r^2), centroid radius = 2/3 sin a / a (R^3 - r^3) / (R^2 - r^2), a half the angle
test.each([
  [45, 12, 9, 24.7400421, 10.3018081],
  [30, 300, 230, 9712.75729, 263.50656],
  [22.5, 24, 21, 26.507188, 22.3888237],
])(
  'a felloe of %s degrees, radii %s and %s, has the handbook area and centroid',
  (degrees, outer, inner, expected, middle) => {
    const part = felloe({ ...board, outer, inner, sweep: (degrees * Math.PI) / 180 });
    near(area(part.region), expected, 1e-8);
    near(centroid(part.region).y, middle, 1e-8);
    near(centroid(part.region).x, 0);
  },
);

// Segmented ring cut from straight boards: length 2 R sin(pi/n), width R - r cos(pi/n); worked examples in inches and mm
test.each([
  [6, 18, 14.5, 18.0, 5.44263165],
  [8, 12, 9, 9.18440238, 3.68508421],
  [12, 300, 230, 155.291427, 77.83706],
])('%s felloes, radii %s and %s: the board they need', (count, outer, inner, long, wide) => {
  const box = bounds(felloe({ ...board, outer, inner, sweep: (2 * Math.PI) / count }).region.outer);
  near(box.maxX - box.minX, long, 1e-8);
  near(box.maxY - box.minY, wide, 1e-8);
});

const ring = fc.record({
  count: fc.integer({ min: 3, max: 24 }),
  outer: fc.double({ min: 50, max: 1000, noNaN: true }),
  share: fc.double({ min: 0.3, max: 0.95, noNaN: true }),
});

test('felloes fill the annulus; their edges are two arcs and two seams', () => {
  fc.assert(
    fc.property(ring, ({ count, outer, share }) => {
      const inner = outer * share;
      const { region } = felloe({ ...board, outer, inner, sweep: (2 * Math.PI) / count });
      near(count * area(region), Math.PI * (outer * outer - inner * inner));
      near(length(region.outer), ((2 * Math.PI) / count) * (outer + inner) + 2 * (outer - inner));
      expect(region.outer).toHaveLength(4);
    }),
  );
});

/** Area of a strip of width w through the middle of a circle of radius r: circular segments taken off a disc. */
const strip = (w: number, r: number): number => w * Math.sqrt(r * r - (w * w) / 4) + 2 * r * r * Math.asin(w / 2 / r);

test('loose felloes and the laps between them fill the annulus', () => {
  fc.assert(
    fc.property(ring, fc.double({ min: 0.05, max: 0.8, noNaN: true }), ({ count, outer, share }, wide) => {
      const inner = outer * share;
      const lap = wide * 2 * inner * Math.sin(Math.PI / count);
      const laps = { left: lap, right: lap };
      const loose = looseFelloe({ ...board, outer, inner, between: (2 * Math.PI) / count, laps });
      const crossing = (strip(lap, outer) - strip(lap, inner)) / 2;
      near(count * (area(loose.region) + crossing), Math.PI * (outer * outer - inner * inner));
    }),
  );
});

test.each([
  [{ outer: Number.NaN }, /outer is NaN mm; allowed: 1 to 10000 mm/],
  [{ inner: 310 }, /inner is 310 mm; allowed: 0.5 to 299.5 mm/],
  [{ sweep: 4 }, /sweep is 4 rad; allowed/],
])('refuses %j, naming option, value and range', (bad, message) => {
  expect(() => felloe({ ...board, outer: 300, inner: 230, sweep: 0.5, ...bad })).toThrow(message);
});
