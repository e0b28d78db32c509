import type { CutPart } from '../cutting/cut-part.js';
import type { Motion } from '../geometry/motion.js';
import type { Outline, Polyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';

/** A cut part's place on a sheet: its first face's frame turned and moved into the sheet's (origin at the raw stock's lower left corner, x along its length). */
export interface Placement {
  readonly cut: CutPart;
  readonly motion: Motion;
  /** letter of the copy the piece belongs to, where more than one prop is made */
  readonly copy?: string;
}

/** A hole for a pin through the sheet into the bed, in the waste: the sheet is turned over on it. */
export interface RegisterPin {
  readonly at: Point;
  /** as it is drawn: a laser's hole is smaller by its kerf */
  readonly diameter: Mm;
}

/** One piece of stock with what is cut from it. */
export interface Sheet {
  readonly stock: Stock;
  /** 1 for the first of its stock */
  readonly number: number;
  readonly placements: readonly Placement[];
  /** of a sheet worked on both faces: each is the mirror image of one of them about the line the sheet is turned over on */
  readonly pins?: readonly RegisterPin[];
  /** of a straight layout: rips along the stock, then crosscuts, each the saw's near edge */
  readonly rips?: readonly Polyline[];
  /** the largest piece a straight cut leaves whole, if it leaves any */
  readonly offcut?: Outline;
  /** finished area over the stock's area, 0 to 1 */
  readonly utilisation: number;
}
