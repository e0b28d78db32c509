import type { Mm } from '../units/length.js';

/** Length of the straight strip that closes into a ring round a rim, butted: pi (D + t), the circumference of its neutral line at half its
 * thickness, D the rim's outside diameter. Source: bend length along the neutral line of flat stock at large radii, Machinery's Handbook,
 * "Bending sheet metal". @param outside diameter of the rim   @param thickness of the strip */
export const tyreLength = (outside: Mm, thickness: Mm): Mm => Math.PI * (outside + thickness);
