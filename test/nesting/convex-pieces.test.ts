import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convexPieces } from '../../lib/nesting/engine/convex-pieces.js';
import { type Ring, ringArea, shapeArea, turnOf } from '../../lib/nesting/engine/polygon.js';
import { near } from '../close.js';

const ring = (...points: readonly (readonly [number, number])[]): Ring => points.map(([x, y]) => ({ x, y }));
const total = (pieces: readonly Ring[]): number => pieces.reduce((sum, p) => sum + ringArea(p), 0);
const isConvex = (p: Ring): boolean =>
  p.every((b, k) => turnOf(p[(k + p.length - 1) % p.length]!, b, p[(k + 1) % p.length]!) > -1e-6);

/** Corners at growing angles about the origin: plain whatever the radii. */
const star = (radii: readonly number[]): Ring =>
  radii.map((r, i) => ({
    x: r * Math.cos((2 * Math.PI * i) / radii.length),
    y: r * Math.sin((2 * Math.PI * i) / radii.length),
  }));

test('an L falls into two rectangles, a convex shape stays whole', () => {
  const ell = ring([0, 0], [30, 0], [30, 10], [10, 10], [10, 30], [0, 30]);
  expect(convexPieces({ outline: ell, openings: [] })).toHaveLength(2);
  expect(convexPieces({ outline: star([9, 9, 9, 9, 9, 9]), openings: [] })).toHaveLength(1);
});

// area in = area out: convex pieces that sum to the shape's area cover it once
test('pieces are convex and cover a shape with an opening once, whichever way its rings run', () => {
  const radii = fc.array(fc.integer({ min: 40, max: 100 }), { minLength: 5, maxLength: 14 });
  const holes = fc.array(fc.integer({ min: 5, max: 20 }), { minLength: 3, maxLength: 8 });
  fc.assert(
    fc.property(radii, holes, fc.boolean(), (outer, inner, back) => {
      const opening = star(inner);
      const shape = { outline: star(outer), openings: [back ? [...opening].reverse() : opening] };
      const pieces = convexPieces(shape);
      for (const p of pieces) expect(isConvex(p)).toBe(true);
      near(total(pieces), shapeArea(shape), 1e-6);
    }),
    { numRuns: 300 },
  );
});

test('a comb with two openings is covered too', () => {
  const comb = ring([0, 0], [90, 0], [90, 50], [70, 50], [70, 30], [50, 30], [50, 50], [30, 50], [30, 30], [0, 30]);
  const openings = [ring([5, 5], [20, 5], [20, 20], [5, 20]), ring([60, 8], [80, 8], [70, 25])];
  const shape = { outline: comb, openings };
  near(total(convexPieces(shape)), shapeArea(shape), 1e-6);
});
