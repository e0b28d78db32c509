import { baysOf, searchOf } from './build-search.js';
import { layInBay } from './fill.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import type { Search } from './search.js';
import type { Laid, LaidSheet, SheetLayout } from './sheets.js';

/** What lies in a bay, measured from its corner. */
export function laidIn(s: Search, b: number): Laid[] {
  const bay = s.bays[b]!;
  const from = b * s.count;
  const members = Array.from(s.members.subarray(from, from + s.filled[b]!)).filter(i => i < s.movable);
  return members
    .sort((i, j) => i - j)
    .map(i => ({ kind: s.kind[i]!, pose: s.pose[i]!, x: s.x[i]! - bay.x, y: s.y[i]! - bay.y }));
}

/** Kinds in the order they are laid, and how many of each are still to be. */
interface Rest {
  readonly order: readonly number[];
  readonly quantity: number[];
}

/** As many shapes of each kind as could lie on a sheet of this room, and no more than there are. */
function candidates(p: Prepared, rest: Rest, stock: number): number[] {
  return rest.order.flatMap(kind => {
    const most = Math.min(rest.quantity[kind]!, Math.floor(p.room[stock]! / p.area[kind]!) + 1);
    return Array.from({ length: most }, () => kind);
  });
}

/** Fills one sheet, kind by kind; a kind that finds no place once is not tried again. */
function fillOne(p: Prepared, rest: Rest, stock: number, random: Random, meter: Meter): LaidSheet {
  const kinds = candidates(p, rest, stock);
  const s = searchOf(p, kinds, baysOf(p, [stock]), random, meter, false);
  let full = -1;
  let free = p.room[stock]!;
  kinds.forEach((kind, i) => {
    if (kind === full || p.area[kind]! > free * (1 + 1e-9)) return;
    if (layInBay(s, i, 0)) free -= p.area[kind]!;
    else full = kind;
  });
  return { stock, laid: laidIn(s, 0) };
}

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
  const order = [...quantity.keys()].sort((a, b) => p.hullArea[b]! - p.hullArea[a]! || a - b);
  for (const stock of tries) {
    const tried = fillOne(p, { order, quantity }, stock, random, meter);
    if (tried.laid.length === sheet.laid.length) return tried;
  }
  return sheet;
}

/** A first layout: sheet after sheet, each of the stock that is cheapest and takes anything, largest shapes first.
 * @param quantity of each kind */
export function fillSheets(p: Prepared, quantity: readonly number[], random: Random, meter: Meter): SheetLayout {
  const order = quantity.map((_, k) => k).sort((a, b) => p.hullArea[b]! - p.hullArea[a]! || a - b);
  const rest: Rest = { order, quantity: [...quantity] };
  const used = p.problem.stocks.map(() => 0);
  const sheets: LaidSheet[] = [];
  while (rest.quantity.some(q => q > 0)) {
    let sheet: LaidSheet | undefined;
    for (const stock of stocksByPrice(p, used)) {
      const tried = fillOne(p, rest, stock, random, meter);
      if (tried.laid.length === 0) continue;
      sheet = tried;
      break;
    }
    if (!sheet) break;
    used[sheet.stock]!++;
    for (const l of sheet.laid) rest.quantity[l.kind]!--;
    sheets.push(sheet);
  }
  const last = sheets.pop();
  if (last) sheets.push(cheaper(p, last, used, random, meter));
  return { sheets, left: rest.order.flatMap(k => Array.from({ length: rest.quantity[k]! }, () => k)) };
}
