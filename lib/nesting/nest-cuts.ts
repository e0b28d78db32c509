import type { Stock } from '../stock/stock.js';
import type { Wanted } from './admit.js';
import { allReady, layOutNow, type NestOptions } from './family-ready.js';
import { type Nested, nestedOn } from './family-sheets.js';

export type { Wanted } from './admit.js';
export { type NestOptions, safeGap } from './family-ready.js';
export type { LayoutCounts, Nested } from './family-sheets.js';

/** What several families come to. */
export const together = (each: readonly Nested[]): Nested => ({
  value: each.flatMap(o => o.value),
  findings: each.flatMap(o => o.findings),
  counts: each.flatMap(o => o.counts),
});

/** Lays cut parts out on the stock each names, and on stock that is like it. Finished outlines lie inside the trued stock by its margin and
 * a safe gap apart (the cut's width and a bridge, unless the stock says otherwise), grain along the stock's, clear of defects; the cutter's path may
 * run off the stock's edge. A fixed effort: same input, same layout: a plain layout from end to end, bettered by the engine where fewer sheets might do.
 * @param cuts quantities are whole, for all copies together
 * @returns parts that fit nowhere are left out, with a finding.
 * Findings: `stop` for a part larger than its stock or the bed and for too little stock, `warn` for stock longer than the bed and for a sheet
 * worked on both faces without a place for register pins.
 * @throws Unusable if a part names a stock that is not there, or a quantity is not a whole number */
export function nestCuts(cuts: readonly Wanted[], stocks: readonly Stock[], options: NestOptions): Nested {
  const all = allReady(cuts, stocks, options);
  return together(all.map(ready => nestedOn(ready, layOutNow(ready, options.steps), options)));
}
