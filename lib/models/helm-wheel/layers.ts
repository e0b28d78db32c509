import type { Mm } from '../../units/length.js';
import type { HelmSizes } from './sizes.js';

/** A slab of a spoke: where it lies and how much of its thickness the lap takes (0 none, all of it: cut through). */
export interface Slab {
  /** height of its back face, mm; the rim's back is 0 */
  readonly z: Mm;
  readonly thickness: Mm;
  readonly lap: Mm;
}

/** Layers of the rim, and how thick each is. */
const rimLayers = (s: HelmSizes): number => Math.max(1, Math.round(s.rim.layers));
const layerThickness = (s: HelmSizes): Mm => s.rim.thickness / rimLayers(s);

/** Layers of the rim that a bridled spoke takes up; a fraction where its thickness does not come out. */
export const bridledLayers = (s: HelmSizes): number => s.spoke.thickness / layerThickness(s);

/** How much of the rim, from its front, the spokes take up in their laps: half of the thinner of the two where they are solid; whole layers
 * where they are built up, the smaller half. The spoke's tongue is as thick. With equal thicknesses each pocket is half the thickness. */
function tongue(s: HelmSizes): Mm {
  if (s.lap === 'layered') return Math.floor(rimLayers(s) / 2) * layerThickness(s);
  return Math.min(s.rim.thickness, s.spoke.thickness) / 2;
}

/** Heights over the rim's back between which the spokes cross it, mm: the front of it, or whole layers in its middle for a bridle, with the
 * odd layer in front. */
export function lapHeights(s: HelmSizes): { readonly low: Mm; readonly high: Mm } {
  if (s.lap !== 'bridle') return { low: s.rim.thickness - tongue(s), high: s.rim.thickness };
  const taken = Math.round(bridledLayers(s));
  const low = Math.max(0, Math.floor((rimLayers(s) - taken) / 2)) * layerThickness(s);
  return { low, high: low + taken * layerThickness(s) };
}

/** Height of the spokes' fronts over the rim's back: flush with the rim's, or under its front layers. */
export const spokeFront = (s: HelmSizes): Mm => lapHeights(s).high;

/** Within this a layer's share of the lap counts as none or all of it: layers are stacked by multiplication, which rounds. */
const SAME_HEIGHT: Mm = 1e-6;

const within = (depth: Mm, thickness: Mm): Mm =>
  depth < SAME_HEIGHT ? 0 : depth > thickness - SAME_HEIGHT ? thickness : depth;

/** The spokes' layers, back to front; the lap comes from the back, up to the rim's lap floor; a bridled spoke has none. */
export function spokeSlabs(s: HelmSizes): Slab[] {
  const count = Math.round(s.spoke.layers);
  const each = s.spoke.thickness / count;
  const back = spokeFront(s) - s.spoke.thickness;
  const floor = lapHeights(s).low;
  return Array.from({ length: count }, (_, i) => {
    const z = back + i * each;
    return { z, thickness: each, lap: within(floor - z, each) };
  });
}

/** Whether a slab is cut through by the lap, so that the spoke falls into two. */
export const cutThrough = (slab: Slab): boolean => slab.lap === slab.thickness;
