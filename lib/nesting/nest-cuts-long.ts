import type { Stock } from '../stock/stock.js';
import type { Wanted } from './admit.js';
import { type FamilyLayout, familyLayout, nestJob } from './family-layout.js';
import { allReady, isStraight, layOutNow, type NestOptions, type Ready } from './family-ready.js';
import { type Nested, nestedOn } from './family-sheets.js';
import type { NestLayout } from './job.js';
import { type LongNest, nestLong } from './nest.js';
import { together } from './nest-cuts.js';
import { nestStockOf } from './stock-family.js';

/** How far a long search of nested cuts is. */
export interface NestProgress {
  /** which stock is at work */
  readonly stock: string;
  /** the best layout of it so far, if there is one */
  readonly best: NestLayout | undefined;
  /** of the whole effort, 0 to 1 */
  readonly share: number;
}

/** A longer search for nested cuts. */
export interface LongSearch extends Pick<LongNest, 'effort' | 'run'> {
  /** called now and then */
  readonly progress?: (now: NestProgress) => void;
  /** settles when the search is to stop with the best it has */
  readonly stopped?: Promise<void>;
}

const priceOf = (s: Stock): number => nestStockOf(s).price ?? s.length * s.width * 1e-6;

/** Numbers a layout is ranked by, the first that differs decides; less is better: left over, pieces there are not, money, pieces. */
function rank({ laid, left }: FamilyLayout): number[] {
  const taken = (s: Stock): number => laid.filter(l => l.stock === s).length;
  return [
    left.reduce((sum, l) => sum + l.quantity, 0),
    laid.filter(l => taken(l.stock) > (l.stock.count ?? Infinity)).length,
    laid.reduce((sum, l) => sum + priceOf(l.stock), 0),
    laid.length,
  ];
}

/** The better of two layouts; the later one where they are as good. */
function betterOf(first: FamilyLayout, later: FamilyLayout): FamilyLayout {
  const [a, b] = [rank(first), rank(later)];
  const at = a.findIndex((v, i) => Math.abs(v - b[i]!) > 1e-9);
  return at >= 0 && a[at]! < b[at]! ? first : later;
}

/** A part of an effort. @param share above 0, 1 at most */
export function partOf(effort: LongNest['effort'], share: number): LongNest['effort'] {
  if (effort.kind === 'steps') return { kind: 'steps', steps: Math.max(1, Math.round(effort.steps * share)) };
  return { ...effort, seconds: Math.max(0.05, effort.seconds * share) };
}

/** Searches for a family's layout with a part of the effort. @param from how much of it is spent before, 0 to 1 */
async function searched(ready: Ready, search: LongSearch, from: number, share: number): Promise<FamilyLayout> {
  const { parts, stocks } = nestJob(ready.job);
  const stock = ready.family[0].name;
  const found = await nestLong(parts, stocks, {
    gap: ready.job.gap,
    effort: partOf(search.effort, share),
    run: search.run,
    watch: {
      progress: (best, part) => search.progress?.({ stock, best, share: from + share * part }),
      ...(search.stopped && { stopped: search.stopped }),
    },
  });
  return familyLayout(ready.job, found);
}

/** As `nestCuts`, with a long search after it, in other threads where the host has them: never worse; with seconds to spend
 * it depends on the machine. Stopped, it answers with the best it has. Straight layouts are as they are. Each family of stocks has a part of
 * the effort by how much stock it takes. */
export async function nestCutsLong(
  cuts: readonly Wanted[],
  stocks: readonly Stock[],
  options: NestOptions,
  search: LongSearch,
): Promise<Nested> {
  const all = allReady(cuts, stocks, options).map(ready => ({ ready, first: layOutNow(ready) }));
  const weights = all.map(({ ready, first }) =>
    isStraight(ready) ? 0 : first.laid.reduce((sum, l) => sum + l.stock.length * l.stock.width, 0),
  );
  const total = weights.reduce((sum, w) => sum + w, 0);
  let stopped = false;
  const hear = search.stopped?.then(() => {
    stopped = true;
  });
  const nested: Nested[] = [];
  let spent = 0;
  for (const [i, { ready, first }] of all.entries()) {
    const share = weights[i]! > 0 ? weights[i]! / total : 0;
    const found = share === 0 || stopped ? first : betterOf(first, await searched(ready, search, spent, share));
    // a stopped search may come back before the wish to stop is heard here
    await Promise.race([hear, Promise.resolve()]);
    spent += share;
    nested.push(nestedOn(ready, found, options));
  }
  return together(nested);
}
