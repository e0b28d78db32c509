import type { Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A compressed-wood plate for a seam. Lengths mm. */
export interface Biscuit extends Sourced {
  readonly size: '0' | '10' | '20';
  readonly length: Mm;
  readonly width: Mm;
  /** also the slot's width */
  readonly thickness: Mm;
  /** of the slot, into each side of the seam */
  readonly depth: Mm;
}

const source = SOURCES.biscuit;

/** The three common sizes, small to large. */
export const biscuits: readonly Biscuit[] = [
  { size: '0', length: 47, width: 15, thickness: 4, depth: 8, source },
  { size: '10', length: 53, width: 19, thickness: 4, depth: 10, source },
  { size: '20', length: 56, width: 23, thickness: 4, depth: 12.3, source },
];

/** Diameter of a plate joiner's cutter: common practice, 100 mm (4 in). */
export const CUTTER_DIAMETER: Mm = 100;

/** Length of a slot at the seam: the chord of the cutter's circle, 2 sqrt(d (100 - d)). @param depth mm, 0 to 50 */
export const slotLength = (depth: Mm): Mm => 2 * Math.sqrt(depth * (CUTTER_DIAMETER - depth));

/** A biscuit by its size: "0", "10", "20". @throws Unusable naming field, size and the sizes there are. */
export const biscuit = (size: string, field = 'biscuit'): Biscuit => lookup(biscuits, b => b.size, field, size);
