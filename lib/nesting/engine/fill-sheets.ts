import { type Begun, emptySheet, fillSheet, type Rest, restOf } from './fill-sheet.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import type { LaidSheet, SheetLayout } from './sheets.js';

/** Kinds of stock that are left, the cheapest by usable area first. */
function stocksByPrice(p: Prepared, used: readonly number[]): number[] {
  const { stocks } = p.problem;
  const each = (k: number): number => stocks[k]!.price / p.room[k]!;
  return stocks
    .map((_, k) => k)
    .filter(k => used[k]! < (stocks[k]!.count ?? Infinity))
    .sort((a, b) => each(a) - each(b) || a - b);
}

/** The same shapes on a cheaper kind of stock, if they all go on it: what is left for the last sheet is often little. */
function cheaper(p: Prepared, sheet: LaidSheet, used: readonly number[], random: Random, meter: Meter): LaidSheet {
  const { stocks } = p.problem;
  const price = (k: number): number => stocks[k]!.price;
  const tries = stocksByPrice(p, used)
    .filter(k => price(k) < price(sheet.stock))
    .sort((a, b) => price(a) - price(b) || a - b);
  const quantity = p.problem.kinds.map((_, k) => sheet.laid.filter(l => l.kind === k).length);
  for (const stock of tries) {
    const tried = fillSheet(p, restOf(p, quantity), emptySheet(stock), 1, random, meter);
    if (tried.laid.length === sheet.laid.length) return tried;
  }
  return sheet;
}

/** Takes what lies on a sheet, but did not before, off what is still to be laid. */
function takeOff(rest: Rest, sheet: LaidSheet, before: LaidSheet): void {
  for (const l of sheet.laid) rest.quantity[l.kind]!--;
  for (const l of before.laid) rest.quantity[l.kind]!++;
}

/** Lays shapes out sheet after sheet: first on those begun, then on new ones of the stock that is cheapest and takes anything.
 * @param quantity of each kind   @param tries at each sheet, of which the fullest is kept
 * @param sheets that there are already @param begun sheets to be filled up */
export function fillSheets(
  p: Prepared,
  quantity: readonly number[],
  tries: number,
  random: Random,
  meter: Meter,
  sheets: readonly LaidSheet[] = [],
  begun: readonly Begun[] = [],
): SheetLayout {
  const rest = restOf(p, quantity);
  const used = p.problem.stocks.map((_, k) => [...sheets, ...begun].filter(s => s.stock === k).length);
  const filled: LaidSheet[] = [];
  const fill = (from: Begun): boolean => {
    const sheet = fillSheet(p, rest, from, tries, random, meter);
    if (sheet.laid.length === 0) return false;
    takeOff(rest, sheet, from);
    filled.push(sheet);
    return true;
  };
  for (const b of begun) fill(b);
  while (rest.quantity.some(q => q > 0)) {
    const stock = stocksByPrice(p, used).find(k => fill(emptySheet(k)));
    if (stock === undefined) break;
    used[stock]!++;
  }
  const last = filled.pop();
  if (last) filled.push(cheaper(p, last, used, random, meter));
  const left = rest.order.flatMap(k => Array.from({ length: rest.quantity[k]! }, () => k));
  return { sheets: [...sheets, ...filled], left };
}
