import type { Mm } from '../units/length.js';

/** How much farther than its fit a face may be from the piece it meets: thousands of roundings, less than any cut. */
export const WITHIN: Mm = 0.01;

/** Faces, edges and axes that miss each other by no more than this were made to meet. What lies apart on purpose lies farther, or is kept
 * apart by a piece between (see seats.ts). */
export const NEAR: Mm = 5;

/** A number as a finding says it: micrometres. */
export const rounded = (n: number): number => Math.round(n * 1000) / 1000;
