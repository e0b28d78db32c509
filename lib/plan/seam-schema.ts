import * as z from 'zod/mini';
import { SEAM_JOINTS } from '../joints/seam-joint.js';
import { biscuits } from '../stock/biscuits.js';
import { degrees, type Unit } from '../units/length.js';
import { angle, choice, keys, length, named, seamPlace, whole } from './fields.js';

/** The keys every seam has, whatever the model. */
const common = (unit: Unit) => ({
  joint: z.exactOptional(choice(SEAM_JOINTS)),
  size: z.exactOptional(named(biscuits.map(b => b.size))),
  count: z.exactOptional(whole(1, 49)),
  diameter: z.exactOptional(length(unit, 1, 100)),
  depth: z.exactOptional(length(unit, 0.5, 200)),
  length: z.exactOptional(length(unit, 1, 500)),
  width: z.exactOptional(length(unit, 1, 500)),
  overlap: z.exactOptional(angle(degrees(0.5), degrees(90))),
  face: z.exactOptional(choice(['front', 'back'])),
  stagger: z.exactOptional(angle(degrees(0), degrees(60))),
});

/** A plan's `seam`: how felloes are joined, and where between or under the spokes. */
export const seam = (unit: Unit) => keys({ ...common(unit), at: z.exactOptional(seamPlace()) });

/** A plan's `seam` in a prop without spokes: the first one lies at an angle from straight up. */
export const plainSeam = (unit: Unit) => {
  const at = z.transform((found: number) => ({ angle: found }));
  return keys({ ...common(unit), at: z.exactOptional(z.pipe(angle(degrees(0), degrees(360)), at)) });
};
