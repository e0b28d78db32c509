import type { Mm } from '../../units/length.js';

/** What a maker wants no part to fall below. */
export interface Least {
  /** wood between openings, pockets, holes and the outline once everything is cut; 0: anything */
  readonly wall: Mm;
  /** a part whose outline has less area than a square of this side is too small to hold while it is cut; 0: none is */
  readonly part: Mm;
}

/** Taken where a plan does not say: thinner walls break out as they are cut, and of smaller pieces clamps, tape and a vacuum bed lose hold.
 * Common practice, no source. */
export const LEAST: Least = { wall: 2, part: 50 };
