import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { moveRegion, turning } from '../../lib/geometry/motion.js';
import { segments } from '../../lib/geometry/segment.js';
import { felloe } from '../../lib/parts/felloe.js';
import { type Leg, withLeg } from '../../lib/parts/leg.js';
import { degrees } from '../../lib/units/length.js';

const legs = fc.record({
  arch: fc.double({ min: degrees(95), max: degrees(265), noNaN: true }),
  pieces: fc.integer({ min: 2, max: 6 }),
  end: fc.constantFrom<Leg['end']>('left', 'right'),
  height: fc.double({ min: 80, max: 900, noNaN: true }),
});

test('a leg is as long as its middle: area = sector + band x height; its foot is level as the arch stands', () => {
  fc.assert(
    fc.property(legs, ({ arch, pieces, end, height }) => {
      const ring = { inner: 500, outer: 600 };
      const sweep = arch / pieces;
      const plain = felloe({ ...ring, sweep, thickness: 18, stock: 'ply' });
      const part = withLeg(plain, { ...ring, end, sweep, arch, height });
      expect(area(part.region) / (area(plain.region) + 100 * height)).toBeCloseTo(1, 9);
      // from the piece's middle to the arch's
      const turn = ((end === 'left' ? 1 : -1) * (arch - sweep)) / 2;
      const placed = moveRegion(part.region, turning(turn));
      const lowest = Math.min(...placed.outer.map(v => v.y));
      const foot = segments(placed.outer).filter(s => s.kind === 'line' && Math.abs(s.to.y - s.from.y) < 1e-6);
      expect(foot.some(s => Math.abs(s.from.y - lowest) < 1e-6)).toBe(true);
    }),
    { numRuns: 40 },
  );
});

test('a half circle goes on straight down', () => {
  const ring = { inner: 500, outer: 600 };
  const plain = felloe({ ...ring, sweep: Math.PI, thickness: 18, stock: 'ply' });
  const leg = { ...ring, sweep: Math.PI, arch: Math.PI, height: 1300 };
  const part = withLeg(withLeg(plain, { ...leg, end: 'left' }), { ...leg, end: 'right' });
  expect(Math.min(...part.region.outer.map(v => v.y))).toBeCloseTo(-1300, 9);
  expect([...new Set(part.region.outer.map(v => Math.round(Math.abs(v.x))))].sort()).toEqual([500, 600]);
  // grain down the legs
  expect(Math.abs(Math.sin(part.grain!))).toBeCloseTo(1, 12);
});
