import { type DepthPasses, depthPasses } from '../cutting/depth-passes.js';
import type { Part } from '../parts/part.js';
import type { Cutter, Stock } from '../stock/stock.js';

/** What is cut to one depth in a part, and in how many passes; `each` is the depth of one. Lengths mm. */
export interface ReportPasses extends DepthPasses {
  readonly part: string;
}

/** How deep a router goes at a time, part by part, by the cutter of each part's stock; nothing where it is sawn or lasered.
 * @param cutter of a stock that has none of its own */
export const reportPasses = (parts: readonly Part[], stock: readonly Stock[], cutter: Cutter): ReportPasses[] =>
  parts.flatMap(part => {
    const own = stock.find(s => s.name === part.stock)?.cutter ?? cutter;
    return depthPasses(part, own).map(p => ({ part: part.id, ...p }));
  });
