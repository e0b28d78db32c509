import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SEAM_JOINTS } from '../../lib/joints/seam-joint.js';
import { helmWheel } from '../../lib/models/helm-wheel.js';
import { inches } from '../../lib/units/length.js';
import { ferryStock, ferryWith } from '../models/ferry.js';

const upTo = (max: number, min = 0): fc.Arbitrary<number | undefined> =>
  fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined, freq: 2 });

const seam = fc.record(
  {
    joint: fc.constantFrom(...SEAM_JOINTS),
    size: fc.constantFrom('0', '10', '20'),
    count: fc.integer({ min: 1, max: 49 }),
    diameter: upTo(100, 1),
    depth: upTo(200, 0.5),
    length: upTo(500, 1),
    width: upTo(500, 1),
    overlap: upTo(Math.PI / 2, 0.01),
    face: fc.constantFrom('front' as const, 'back' as const),
    stagger: upTo(1),
    at: fc.constantFrom('between-spokes' as const, 'under-spokes' as const, { angle: 0.3 }),
  },
  { requiredKeys: ['joint'] },
);

const defined = <T extends object>(o: T): T =>
  Object.fromEntries(Object.entries(o).filter(([, v]) => v !== undefined)) as T;

test('whatever a seam asks for, the wheel is built or a stop says why not, with a number in it', () => {
  fc.assert(
    fc.property(
      seam,
      fc.constantFrom('router' as const, 'hand' as const, 'laser' as const),
      fc.integer({ min: 3, max: 24 }),
      fc.integer({ min: 1, max: 4 }),
      fc.double({ min: 5, max: 340, noNaN: true }),
      fc.constantFrom('half' as const, 'layered' as const, 'bridle' as const),
      (own, method, felloes, layers, band, lap) => {
        const rim = { felloes, layers, band, stock: 'leaf', seam: defined(own) as never };
        const thickness = lap === 'bridle' ? inches(0.25) : inches(0.25) * layers;
        const options = ferryWith({
          method,
          rim,
          spokes: { lap, stock: 'leaf', thickness, width: 15, count: 8 },
          hub: { faces: 'front', bore: 'none', stock: 'leaf', diameter: 60 },
          turns: 'fixed',
        });
        for (const f of helmWheel(options, ferryStock).findings)
          expect(f.message).not.toMatch(/NaN|undefined|Infinity/);
      },
    ),
    { numRuns: 200 },
  );
}, 180_000);
