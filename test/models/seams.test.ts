import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gcd, layerSeams, lcm, ringOfSeams, staggered, wrap } from '../../lib/models/seams.js';
import { near } from '../close.js';

const least = (seams: readonly number[], spokes: readonly number[]): number =>
  Math.min(...seams.flatMap(a => spokes.map(b => Math.abs(wrap(a - b + Math.PI) - Math.PI))));

test('no seam angle lies farther from the spokes than pi / lcm', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 3, max: 24 }),
      fc.integer({ min: 3, max: 36 }),
      fc.double({ min: 0, max: 7, noNaN: true }),
      (f, n, other) => {
        const spokes = ringOfSeams(n, 0);
        near(least(ringOfSeams(f, staggered(f, n)), spokes), Math.PI / lcm(f, n));
        expect(least(ringOfSeams(f, other), spokes)).toBeLessThanOrEqual(Math.PI / lcm(f, n) + 1e-12);
      },
    ),
  );
});

test('lcm * gcd is the product', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 1, max: 500 }),
      (a, b) => lcm(a, b) * gcd(a, b) === a * b,
    ),
  );
});

test('seams of neighbouring layers never lie over each other', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 6 }),
      fc.integer({ min: 3, max: 24 }),
      fc.integer({ min: 3, max: 36 }),
      (layers, f, n) => {
        const firsts = layerSeams(layers, f, n, staggered(f, n));
        for (let i = 1; i < layers; i++)
          expect(least(ringOfSeams(f, firsts[i]!), ringOfSeams(f, firsts[i - 1]!))).toBeGreaterThan(1e-3);
      },
    ),
  );
});
