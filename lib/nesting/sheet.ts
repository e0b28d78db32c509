import type { CutPart } from '../cutting/cut-part.js';
import type { Motion } from '../geometry/motion.js';
import type { Stock } from '../stock/stock.js';

/** A cut part's place on a sheet: its first face's frame turned and moved into the sheet's (origin at the raw stock's lower left corner, x along its length). */
export interface Placement {
  readonly cut: CutPart;
  readonly motion: Motion;
  /** letter of the copy the piece belongs to, where more than one prop is made */
  readonly copy?: string;
}

/** One piece of stock with what is cut from it. */
export interface Sheet {
  readonly stock: Stock;
  /** 1 for the first of its stock */
  readonly number: number;
  readonly placements: readonly Placement[];
  /** finished area over the stock's area, 0 to 1 */
  readonly utilisation: number;
}
