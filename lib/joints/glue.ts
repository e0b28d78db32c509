import type { Mm, Radians } from '../units/length.js';
import type { GlueArea, SeamSite } from './seam-joint.js';

// How strongly glue holds a seam, as a maker judges it: by how much face there is, and how much of it is long grain. Common practice, no
// source. A felloe's grain runs along its chord. A face within 45 degrees of the grain counts as long grain, a steeper one as end grain,
// which holds next to nothing. A loose piece (biscuit, dowel, key) is counted on one side of the seam: its two halves hold one after the
// other. Sheets without a grain are counted alike.

/** A face that is glued: its area, mm², and whether it lies along the grain. */
export interface GlueFace {
  readonly area: number;
  readonly long: boolean;
}

const STEEP: Radians = Math.PI / 4;
const ROUNDING: Radians = 1e-9;

/** Whether a face square to the seam's tangent (the seam's own face, the tips of fingers) lies within 45 degrees of the grain: only in
 * felloes of more than a quarter turn. */
export const acrossIsLong = (site: SeamSite): boolean => site.sweep / 2 > STEEP + ROUNDING;

/** Whether a face along the seam's tangent (the flanks of fingers) lies within 45 degrees of the grain. */
export const alongIsLong = (site: SeamSite): boolean => site.sweep / 2 <= STEEP + ROUNDING;

/** The seam's own face, less what a joint takes out of it, mm². */
export const seamFace = (site: SeamSite, less = 0): GlueFace => ({
  area: (site.outer - site.inner) * site.thickness - less,
  long: acrossIsLong(site),
});

/** All faces of a seam as one area and a share. */
export function glued(faces: readonly GlueFace[]): GlueArea {
  const sum = (of: readonly GlueFace[]): number => of.reduce((total, f) => total + f.area, 0);
  const area = sum(faces);
  return { area, longGrain: area > 0 ? sum(faces.filter(f => f.long)) / area : 0 };
}

/** Area of a circular segment by its chord and height, mm². Source: Machinery's Handbook, "Areas and dimensions of plane figures". */
export function segmentArea(chord: Mm, height: Mm): number {
  const radius = height / 2 + (chord * chord) / (8 * height);
  const angle = 2 * Math.acos(1 - height / radius);
  return (radius * radius * (angle - Math.sin(angle))) / 2;
}
