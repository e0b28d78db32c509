import { baysOf, searchOf } from './build-search.js';
import { layInBay } from './fill.js';
import { layLines } from './fill-lines.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import { put, type Search } from './search.js';
import { type Laid, type LaidSheet, laidArea } from './sheets.js';
import type { Axis } from './slide.js';

/** The second try at a sheet, and one in so many after it, is without lines: they are of no use where shapes are all different. */
const UNLINED = 8;

/** What lies in a bay, measured from its corner. */
export function laidIn(s: Search, b: number): Laid[] {
  const bay = s.bays[b]!;
  const from = b * s.count;
  const members = Array.from(s.members.subarray(from, from + s.filled[b]!)).filter(i => i < s.movable);
  return members
    .sort((i, j) => i - j)
    .map(i => ({ kind: s.kind[i]!, pose: s.pose[i]!, x: s.x[i]! - bay.x, y: s.y[i]! - bay.y }));
}

/** A sheet to be filled: what lies on it, and from where along an axis it is empty. */
export interface Begun extends LaidSheet {
  readonly axis: Axis;
  readonly from: number;
}

export const emptySheet = (stock: number): Begun => ({ stock, laid: [], axis: 'x', from: 0 });

/** Kinds in the order they are laid, and how many of each are still to be. */
export interface Rest {
  readonly order: readonly number[];
  readonly quantity: number[];
}

/** So many of each kind, the kinds of largest hull first. */
export const restOf = (p: Prepared, quantity: readonly number[]): Rest => ({
  order: quantity.map((_, k) => k).sort((a, b) => p.hullArea[b]! - p.hullArea[a]! || a - b),
  quantity: [...quantity],
});

/** As many shapes of each kind as could lie on a sheet of this room, and no more than there are. */
function candidates(p: Prepared, rest: Rest, room: number): number[] {
  return rest.order.flatMap(kind => {
    const most = Math.min(rest.quantity[kind]!, Math.floor(room / p.area[kind]!) + 1);
    return Array.from({ length: most }, () => kind);
  });
}

/** Fills a sheet: lines of like shapes first if so wanted, then kind by kind; a kind that finds no place once is not tried again. */
function fillOnce(p: Prepared, rest: Rest, begun: Begun, lined: boolean, random: Random, meter: Meter): LaidSheet {
  const { stock, laid } = begun;
  const more = candidates(p, rest, p.room[stock]! - laidArea(p, laid));
  const s = searchOf(p, [...laid.map(l => l.kind), ...more], baysOf(p, [stock]), random, meter, false);
  laid.forEach((l, i) => {
    put(s, i, l.pose, l.x, l.y, 0);
  });
  const waiting: number[][] = p.problem.kinds.map(() => []);
  more.forEach((kind, k) => {
    waiting[p.like[kind]!]!.push(laid.length + k);
  });
  if (lined) layLines(p, s, waiting, begun.axis, begun.from);
  let free = p.room[stock]! - laidArea(p, laidIn(s, 0));
  for (const kind of rest.order) {
    const mine = waiting[kind]!;
    while (mine.length > 0 && p.area[kind]! <= free * (1 + 1e-9) && layInBay(s, mine.at(-1)!, 0)) {
      mine.pop();
      free -= p.area[kind]!;
    }
  }
  return { stock, laid: laidIn(s, 0) };
}

/** The fullest of several tries at filling a sheet up. @param rest what there is to be laid @param tries 1 or more */
export function fillSheet(
  p: Prepared,
  rest: Rest,
  begun: Begun,
  tries: number,
  random: Random,
  meter: Meter,
): LaidSheet {
  let best = fillOnce(p, rest, begun, true, random, meter);
  for (let k = 1; k < tries && meter.spent() < 1; k++) {
    const sheet = fillOnce(p, rest, begun, k % UNLINED !== 1, random, meter);
    if (laidArea(p, sheet.laid) > laidArea(p, best.laid)) best = sheet;
  }
  return best;
}
