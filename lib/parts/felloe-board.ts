import type { Mm, Radians } from '../units/length.js';

/** The smallest board a felloe with radial seams is cut from, its grain along the chord: as long as the chord of its outer edge, as wide as
 * its outer edge rises over the corners of its inner one. Source: annular sector and circular segment, Machinery's Handbook, "Areas and
 * dimensions of plane figures". @param sweep radians, above 0 to pi */
export const felloeBoard = (inner: Mm, outer: Mm, sweep: Radians): { readonly length: Mm; readonly width: Mm } => ({
  length: 2 * outer * Math.sin(sweep / 2),
  width: outer - inner * Math.cos(sweep / 2),
});
