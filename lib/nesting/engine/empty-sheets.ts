import type { Meter } from './meter.js';
import { overfill } from './overfill.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import { squeezeIn, without } from './sheet-moves.js';
import { betterSheets, type Laid, type LaidSheet, laidArea, leastSheets, type SheetLayout } from './sheets.js';

/** Shapes moved about at once, at most: more make a round slow without making it likelier to succeed. */
const TOGETHER = 300;
const FIRST_PATIENCE = 10;
const LAST_PATIENCE = 150;
const LEAST_EFFORT = 200;

const freeArea = (p: Prepared, sheet: LaidSheet): number => p.room[sheet.stock]! - laidArea(p, sheet.laid);

const any = <T>(list: readonly T[], random: Random): T | undefined => list[Math.floor(random() * list.length)];

/** All sheets but one, with the shapes of that one squeezed in: those with most room take part. */
function dissolve(
  p: Prepared,
  sheets: readonly LaidSheet[],
  victim: LaidSheet,
  random: Random,
  meter: Meter,
  patience: number,
): LaidSheet[] | undefined {
  const others = sheets.filter(s => s !== victim);
  const byRoom = [...others].sort((a, b) => freeArea(p, b) - freeArea(p, a));
  const taking: LaidSheet[] = [];
  let count = victim.laid.length;
  for (const s of byRoom) {
    if (taking.length > 0 && count + s.laid.length > TOGETHER) break;
    taking.push(s);
    count += s.laid.length;
  }
  const free = taking.reduce((sum, s) => sum + freeArea(p, s), 0);
  if (laidArea(p, victim.laid) > free) return undefined;
  const done = squeezeIn(
    p,
    taking,
    victim.laid.map(l => l.kind),
    random,
    meter,
    patience,
  );
  return done && [...others.filter(s => !taking.includes(s)), ...done];
}

/** Moves one shape of a sheet to another sheet, or swaps it for a smaller one. */
function unload(
  p: Prepared,
  sheets: readonly LaidSheet[],
  victim: LaidSheet,
  random: Random,
  meter: Meter,
  patience: number,
): LaidSheet[] | undefined {
  const one = any(victim.laid, random)!;
  const other = any(
    sheets.filter(s => s !== victim),
    random,
  );
  if (!other) return undefined;
  const size = p.area[one.kind]!;
  if (size <= freeArea(p, other)) {
    const done = squeezeIn(p, [other], [one.kind], random, meter, patience);
    return done && replaced(sheets, victim, other, without(victim.laid, one), done[0]!.laid);
  }
  const smaller = other.laid.filter(l => p.area[l.kind]! < size && size - p.area[l.kind]! <= freeArea(p, other));
  const back = any(smaller, random);
  if (!back) return undefined;
  const there = squeezeIn(
    p,
    [{ stock: other.stock, laid: without(other.laid, back) }],
    [one.kind],
    random,
    meter,
    patience,
  );
  const here =
    there &&
    squeezeIn(p, [{ stock: victim.stock, laid: without(victim.laid, one) }], [back.kind], random, meter, patience);
  return here && replaced(sheets, victim, other, here[0]!.laid, there[0]!.laid);
}

function replaced(
  sheets: readonly LaidSheet[],
  victim: LaidSheet,
  other: LaidSheet,
  left: readonly Laid[],
  there: readonly Laid[],
): LaidSheet[] {
  return sheets
    .map(s => (s === victim ? { stock: s.stock, laid: left } : s === other ? { stock: s.stock, laid: there } : s))
    .filter(s => s.laid.length > 0);
}

/** Shapes that have no place yet are tried on the sheets there are. */
function takeLeft(
  p: Prepared,
  layout: SheetLayout,
  random: Random,
  meter: Meter,
  patience: number,
): SheetLayout | undefined {
  const [kind, ...left] = layout.left;
  const taking = layout.sheets.filter(s => kind !== undefined && freeArea(p, s) >= p.area[kind]!);
  const sheet = any(taking, random);
  if (kind === undefined || !sheet) return undefined;
  const done = squeezeIn(p, [sheet], [kind], random, meter, patience);
  return done && { left, sheets: layout.sheets.map(s => (s === sheet ? done[0]! : s)) };
}

/** The ways to empty a sheet, and what share of the effort each is to have: one try of the one costs far more than of another. */
const MOVES = [
  { move: unload, share: 0.6 },
  { move: dissolve, share: 0.2 },
  { move: overfill, share: 0.2 },
] as const;

/** Empties sheets one by one into the others as long as the budget lasts; the least filled first.
 * Done as soon as there are no more sheets than the area needs. */
export function emptySheets(p: Prepared, start: SheetLayout, random: Random, meter: Meter): SheetLayout {
  let best = start;
  let patience = FIRST_PATIENCE;
  const spent = MOVES.map(() => 0);
  while (meter.spent() < 1) {
    if (best.left.length === 0 && best.sheets.length <= leastSheets(p, best)) break;
    const least = Math.min(...best.sheets.map(s => laidArea(p, s.laid)));
    const victim = best.sheets.findLast(s => laidArea(p, s.laid) <= least)!;
    let tried: SheetLayout | undefined;
    if (best.left.length > 0) tried = takeLeft(p, best, random, meter, patience);
    else {
      const next = MOVES.reduce((a, { share }, b) => (spent[b]! / share < spent[a]! / MOVES[a]!.share ? b : a), 0);
      const before = meter.evaluations;
      const sheets = MOVES[next]!.move(p, best.sheets, victim, random, meter, patience);
      // a try that moves nothing costs nothing: it must not run for ever
      meter.evaluations += LEAST_EFFORT;
      spent[next]! += meter.evaluations - before;
      tried = sheets && { sheets, left: best.left };
    }
    if (tried && betterSheets(p, tried, best)) {
      best = tried;
      patience = FIRST_PATIENCE;
    } else if (tried && !betterSheets(p, best, tried)) best = tried;
    else patience = Math.min(LAST_PATIENCE, patience * 1.01);
    meter.evaluations += LEAST_EFFORT;
  }
  return best;
}
