import type { Region } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';

/** A kind of stock a plan names: boards run along the grain, sheets have no edge to true. All lengths mm. */
export interface Stock {
  readonly name: string;
  readonly kind: 'board' | 'sheet';
  /** x of a layout */
  readonly length: Mm;
  /** y of a layout */
  readonly width: Mm;
  readonly thickness: Mm;
  /** name of the stock this is more of: parts of that one may be cut from this one too */
  readonly like?: string;
  /** the piece's own outline, an offcut's: within length x width, its box from (0, 0) */
  readonly outline?: Region;
  /** knots, splits, old screws: no part lies on them; from the lower left corner */
  readonly defects?: readonly Region[];
  /** which way its grain runs, x being along: 'along' unless given */
  readonly grain?: 'along' | 'across' | 'none';
  /** how many there are; without it, as many as are needed */
  readonly count?: number;
  /** taken off each long edge of a board to true it */
  readonly true: Mm;
  /** from the trued edges and the ends to the nearest finished outline */
  readonly margin: Mm;
  readonly species?: string;
  /** for one board or sheet, in the maker's own money */
  readonly price?: number;
  /** the cutter for this stock, if not the plan's */
  readonly cutter?: Cutter;
  /** between finished outlines; the cut and a bridge of wood unless given */
  readonly gap?: Mm;
  /** straight: rips and crosscuts of a table saw; free unless given */
  readonly layout?: 'free' | 'straight';
}

/** What cuts: a router bit, a laser beam or a saw blade. */
export type Cutter =
  | { readonly kind: 'router'; readonly diameter: Mm; readonly reach?: Mm; readonly pass?: Mm }
  | { readonly kind: 'laser'; readonly kerf: Mm }
  | { readonly kind: 'saw'; readonly kerf: Mm };

/** Width of the cut a cutter makes, mm. */
export const cutWidth = (cutter: Cutter): Mm => (cutter.kind === 'router' ? cutter.diameter : cutter.kerf);

/** How the work is done: hand tools, a router (half laps are pockets) or a laser (half laps are through-cut layers). */
export type Method = 'hand' | 'router' | 'laser';
