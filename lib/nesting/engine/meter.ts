/** How much a search may spend: places looked at (and pairs of pieces there, see clash.ts), which is the same on every machine, or time. */
export type Budget =
  | { readonly kind: 'evaluations'; readonly most: number }
  | { readonly kind: 'milliseconds'; readonly most: number };

/** Milliseconds from any start; handed in from outside, for the core has no clock of its own. */
export type Clock = () => number;

/** Counts what is spent. */
export interface Meter {
  evaluations: number;
  /** 0 at the start, 1 and more when the budget is used up */
  readonly spent: () => number;
}

/** @throws RangeError for a budget of time without a clock */
export function meterOf(budget: Budget, clock?: Clock): Meter {
  if (budget.kind === 'evaluations') {
    const meter: Meter = { evaluations: 0, spent: () => meter.evaluations / budget.most };
    return meter;
  }
  if (!clock) throw new RangeError('a budget of milliseconds needs a clock');
  const start = clock();
  return { evaluations: 0, spent: () => (clock() - start) / budget.most };
}
