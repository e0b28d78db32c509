import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intersection } from '../../lib/geometry/boolean.js';
import { area } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { annularSector, circle, rectangle, solid } from '../../lib/geometry/outline.js';
import { separated } from '../../lib/geometry/separated.js';

const felloe = solid(annularSector(300, 400, 0.2, 1));
const box = solid(rectangle(0, 0, 40, 20));

test('neighbours along a seam, and a disc on an edge, are kept apart', () => {
  for (const turn of [1, -1]) expect(separated([felloe], [moveRegion(felloe, { turn, x: 0, y: 0 })], 1e-9)).toBe(true);
  expect(separated([solid(circle(10, { x: 20, y: 30 }))], [box], 1e-9)).toBe(true);
  expect(separated([solid(circle(10, { x: 20, y: 29.99 }))], [box], 1e-9)).toBe(false);
  expect(separated([solid(circle(10, { x: 20, y: 29.99 }))], [box], 0.02)).toBe(true);
});

test('what is kept apart shares no area', () => {
  const number = fc.double({ min: -500, max: 500, noNaN: true });
  const shape = fc.constantFrom(felloe, box, solid(circle(60)));
  let kept = 0;
  fc.assert(
    fc.property(shape, shape, number, number, number, (a, b, turn, x, y) => {
      const moved = moveRegion(b, { turn, x, y });
      if (!separated([a], [moved], 0)) return;
      kept++;
      expect(intersection([a], [moved]).reduce((sum, r) => sum + area(r), 0)).toBeLessThan(1e-6);
    }),
    { numRuns: 400 },
  );
  expect(kept).toBeGreaterThan(20);
});
