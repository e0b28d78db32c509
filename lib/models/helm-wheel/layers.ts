import type { Mm } from '../../units/length.js';
import type { HelmSizes } from './sizes.js';

/** A slab of rim or spoke: where it lies and how much of its thickness the lap takes (0 none, all of it: cut through). */
export interface Slab {
  /** height of its back face, mm; the rim's back is 0 */
  readonly z: Mm;
  readonly thickness: Mm;
  readonly lap: Mm;
}

/** Depths of the half lap: front faces flush, mm. */
export interface LapDepths {
  /** pocket in the rim, from the front; the spoke's tongue is as thick */
  readonly rim: Mm;
  /** pocket in the spoke, from the back */
  readonly spoke: Mm;
}

/** Half of the thinner of the two where they are solid; whole layers where they are built up from sheet, the smaller half in front.
 * With equal thicknesses each pocket is half the thickness. */
export function lapDepths(s: HelmSizes): LapDepths {
  const tongue =
    s.method === 'laser'
      ? Math.floor(Math.round(s.rim.layers) / 2) * (s.rim.thickness / Math.round(s.rim.layers))
      : Math.min(s.rim.thickness, s.spoke.thickness) / 2;
  return { rim: tongue, spoke: s.spoke.thickness - tongue };
}

/** Within this a layer's share of the lap counts as none or all of it: layers are stacked by multiplication, which rounds. */
const SAME_HEIGHT: Mm = 1e-6;

const within = (depth: Mm, thickness: Mm): Mm =>
  depth < SAME_HEIGHT ? 0 : depth > thickness - SAME_HEIGHT ? thickness : depth;

function stack(count: number, from: Mm, thickness: Mm, lap: (z: Mm) => Mm): Slab[] {
  return Array.from({ length: count }, (_, i) => {
    const z = from + i * thickness;
    return { z, thickness, lap: within(lap(z), thickness) };
  });
}

/** The rim's layers, back to front; the lap comes from the front. */
export function rimSlabs(s: HelmSizes): Slab[] {
  const each = s.rim.thickness / Math.round(s.rim.layers);
  const floor = s.rim.thickness - lapDepths(s).rim;
  return stack(Math.round(s.rim.layers), 0, each, z => z + each - floor);
}

/** The spokes' layers, back to front; the lap comes from the back. */
export function spokeSlabs(s: HelmSizes): Slab[] {
  const each = s.spoke.thickness / Math.round(s.spoke.layers);
  const tongue = s.rim.thickness - lapDepths(s).rim;
  return stack(Math.round(s.spoke.layers), s.rim.thickness - s.spoke.thickness, each, z => tongue - z);
}

/** Whether a slab is cut through by the lap, so that the rim falls into loose pieces, or the spoke into two. */
export const cutThrough = (slab: Slab): boolean => slab.lap === slab.thickness;
