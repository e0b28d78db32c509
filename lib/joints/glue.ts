import type { Mm, Radians } from '../units/length.js';
import type { GlueArea, SeamSite } from './seam-joint.js';

// How strongly glue holds a seam, as a proxy: how much face there is, and how much of it is long grain. What pulls a seam apart runs along
// the ring. The grains of its two felloes lean to either side of that by half a felloe's angle, so that between them they run along it: a
// face square to the ring's run is glued as end grain, which holds next to nothing, a face along it as long grain (Wood Handbook
// FPL-GTR-282, chapter 10, on bonding end grain). Between the two a face counts by sin² of the angle between its normal and the ring's run,
// the weight Hankinson's formula gives (chapter 5). A loose piece (biscuit, dowel, key) is counted on one side of the seam: its two halves
// hold one after the other. That the grain leans in few felloes weakens the wood beside every joint alike: see woodAtSeam.

/** A face that is glued: its area, mm², and how far it lies along the ring: 0 for one square to its run, 1 for one along it. */
export interface GlueFace {
  readonly area: number;
  readonly along: number;
}

/** How far a face lies along the ring. @param normal angle between its normal and the ring's run */
export const alongRing = (normal: Radians): number => Math.sin(normal) ** 2;

/** The seam's own face, square to the ring, less what a joint takes out of it, mm². */
export const seamFace = (site: SeamSite, less = 0): GlueFace => ({
  area: (site.outer - site.inner) * site.thickness - less,
  along: 0,
});

/** All faces of a seam as one area and a share. */
export function glued(faces: readonly GlueFace[]): GlueArea {
  const area = faces.reduce((sum, f) => sum + f.area, 0);
  const along = faces.reduce((sum, f) => sum + f.area * f.along, 0);
  return { area, longGrain: area > 0 ? along / area : 0 };
}

/** The strength proxy of a seam: the area that counts as long grain, mm². */
export const strengthProxy = ({ area, longGrain }: GlueArea): number => area * longGrain;

/** Bending strength across the grain over that along it: the lower middle of what the Wood Handbook prints for Hankinson's formula (0.04 to 0.10). */
const ACROSS = 0.05;

/** Strength of solid wood along the ring at a seam, over that along its grain, which leans by half the felloe's sweep there.
 * Source: Hankinson's formula with n = 2, Wood Handbook FPL-GTR-282, chapter 5 (from memory). @param sweep of a felloe, radians */
export const woodAtSeam = (sweep: Radians): number =>
  ACROSS / (Math.sin(sweep / 2) ** 2 + ACROSS * Math.cos(sweep / 2) ** 2);

/** Area of a circular segment by its chord and height, mm². Source: Machinery's Handbook, "Areas and dimensions of plane figures". */
export function segmentArea(chord: Mm, height: Mm): number {
  const radius = height / 2 + (chord * chord) / (8 * height);
  const angle = 2 * Math.acos(1 - height / radius);
  return (radius * radius * (angle - Math.sin(angle))) / 2;
}
