import { searchOf } from './build-search.js';
import { layInBay } from './fill.js';
import { laidIn } from './fill-sheet.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import { put, type Search } from './search.js';
import { type Laid, type LaidSheet, laidArea } from './sheets.js';
import { pressTo } from './strip.js';

/** How full a sheet is to become, as a share of its room: more is not likely to go on it. */
const FULL = 0.78;
/** Share of the whole budget one sheet may take. */
const SLICE = 0.15;

/** The sheet with most room that is a plain rectangle. */
function roomiest(p: Prepared, sheets: readonly LaidSheet[], victim: LaidSheet, random: Random): LaidSheet | undefined {
  const plain = sheets.filter(s => s !== victim && p.problem.stocks[s.stock]!.forbidden.length === 0);
  const free = (s: LaidSheet): number => p.room[s.stock]! - laidArea(p, s.laid);
  const sorted = plain.sort((a, b) => free(b) - free(a));
  // mostly the roomiest, at times another
  return sorted[Math.floor(random() * random() * sorted.length)];
}

/** Shapes of a sheet, in random order, as many as fill another up. */
function taken(p: Prepared, victim: LaidSheet, other: LaidSheet, random: Random): Laid[] {
  let left = FULL * p.room[other.stock]! - laidArea(p, other.laid);
  const order = victim.laid.map(l => ({ l, key: random() })).sort((a, b) => a.key - b.key);
  return order.flatMap(({ l }) => {
    if (p.area[l.kind]! > left) return [];
    left -= p.area[l.kind]!;
    return [l];
  });
}

/** A sheet made longer, with more shapes laid right of what was there. */
function lengthened(
  p: Prepared,
  sheet: LaidSheet,
  more: readonly Laid[],
  random: Random,
  meter: Meter,
): Search | undefined {
  const { width, height } = p.problem.stocks[sheet.stock]!;
  const bay = { x: 0, y: 0, width: 3 * width, height, stock: sheet.stock };
  const s = searchOf(
    p,
    [...sheet.laid, ...more].map(l => l.kind),
    [bay],
    random,
    meter,
  );
  sheet.laid.forEach((l, i) => {
    put(s, i, l.pose, l.x, l.y, 0);
  });
  for (let i = sheet.laid.length; i < s.movable; i++) if (!layInBay(s, i, 0)) return undefined;
  return s;
}

/** Lays shapes of a sheet on another made longer for them, presses it together again, and takes back what still sticks out: a way to
 * bring scattered room together. @returns undefined where no sheet can take anything */
export function overfill(
  p: Prepared,
  sheets: readonly LaidSheet[],
  victim: LaidSheet,
  random: Random,
  meter: Meter,
): LaidSheet[] | undefined {
  const other = roomiest(p, sheets, victim, random);
  const more = other ? taken(p, victim, other, random) : [];
  const s = other && more.length > 0 ? lengthened(p, other, more, random, meter) : undefined;
  if (!other || !s) return undefined;
  const { width } = p.problem.stocks[other.stock]!;
  const end = Math.min(1, meter.spent() + SLICE);
  pressTo(s, width, () => meter.spent() < end);
  const all = laidIn(s, 0);
  const inside = (l: Laid): boolean => l.x + p.tables.width[l.pose]! <= width + p.touch;
  const back = all.filter(l => !inside(l));
  const rest = victim.laid.filter(l => !more.includes(l));
  const refilled = refill(p, victim, rest, back, random, meter);
  if (!refilled) return undefined;
  return sheets
    .map(q =>
      q === other
        ? { stock: q.stock, laid: all.filter(inside) }
        : q === victim
          ? { stock: q.stock, laid: refilled }
          : q,
    )
    .filter(q => q.laid.length > 0);
}

/** What sticks out goes back to the sheet that is being emptied, where there is room by now. */
function refill(
  p: Prepared,
  victim: LaidSheet,
  rest: readonly Laid[],
  back: readonly Laid[],
  random: Random,
  meter: Meter,
): readonly Laid[] | undefined {
  if (back.length === 0) return rest;
  const { width, height } = p.problem.stocks[victim.stock]!;
  const bay = { x: 0, y: 0, width, height, stock: victim.stock };
  const s = searchOf(
    p,
    [...rest, ...back].map(l => l.kind),
    [bay],
    random,
    meter,
    false,
  );
  rest.forEach((l, i) => {
    put(s, i, l.pose, l.x, l.y, 0);
  });
  for (let i = rest.length; i < s.movable; i++) if (!layInBay(s, i, 0)) return undefined;
  return laidIn(s, 0);
}
