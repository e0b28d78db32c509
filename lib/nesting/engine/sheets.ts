import type { Prepared } from './prepared.js';

/** A shape laid on a sheet, its box's lower left corner from the sheet's. */
export interface Laid {
  readonly kind: number;
  readonly pose: number;
  readonly x: number;
  readonly y: number;
}

/** A piece of stock with what lies on it. */
export interface LaidSheet {
  readonly stock: number;
  readonly laid: readonly Laid[];
}

/** Sheets filled so far, and what found no place on any stock there is. */
export interface SheetLayout {
  readonly sheets: readonly LaidSheet[];
  /** kinds left over, one entry a shape */
  readonly left: readonly number[];
}

export const laidArea = (prepared: Prepared, laid: readonly Laid[]): number =>
  laid.reduce((sum, l) => sum + prepared.area[l.kind]!, 0);

export const priceOf = (prepared: Prepared, sheets: readonly LaidSheet[]): number =>
  sheets.reduce((sum, s) => sum + prepared.problem.stocks[s.stock]!.price, 0);

/** Whether a layout is better: nothing more left over, then cheaper, then fewer sheets, then the least filled sheet emptier. */
export function betterSheets(prepared: Prepared, a: SheetLayout, b: SheetLayout): boolean {
  const rank = (l: SheetLayout): number[] => [
    l.left.length,
    priceOf(prepared, l.sheets),
    l.sheets.length,
    Math.min(...l.sheets.map(s => laidArea(prepared, s.laid))),
  ];
  const [one, two] = [rank(a), rank(b)];
  for (let k = 0; k < one.length; k++) {
    const difference = one[k]! - two[k]!;
    if (Math.abs(difference) > 1e-9 * Math.abs(two[k]!)) return difference < 0;
  }
  return false;
}

/** Fewest sheets the shapes' area allows, all of the roomiest stock. */
export const leastSheets = (p: Prepared, layout: SheetLayout): number =>
  Math.ceil(layout.sheets.reduce((sum, s) => sum + laidArea(p, s.laid), 0) / Math.max(...p.room) - 1e-9);
