import type { Begun } from './fill-sheet.js';
import { fillSheets } from './fill-sheets.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import { betterSheets, type LaidSheet, leastSheets, type SheetLayout } from './sheets.js';

/** Tries at one sheet, of which the fullest is kept: for the very first layout and for all others. */
const FIRST_TRIES = 2;
const TRIES = 16;
/** Share of layouts of all shapes. */
const AFRESH = 0.6;
/** Share of sheets that are emptied wholly, not only beyond a cut. */
const WHOLLY = 0.4;

/** What is left of a sheet when all beyond a cut somewhere along or across it is taken away. */
function cutBack(p: Prepared, sheet: LaidSheet, random: Random): Begun {
  const { stock } = sheet;
  if (random() < WHOLLY) return { stock, laid: [], axis: 'x', from: 0 };
  const axis = random() < 0.5 ? 'x' : 'y';
  const { width, height } = p.problem.stocks[stock]!;
  const size = axis === 'x' ? p.tables.width : p.tables.height;
  const cut = random() * (axis === 'x' ? width : height);
  const laid = sheet.laid.filter(l => l[axis] + size[l.pose]! <= cut);
  return { stock, laid, axis, from: Math.max(0, ...laid.map(l => l[axis] + size[l.pose]!)) };
}

/** A layout whose last sheet is taken away, one or two others cut back, and these filled up again. */
function refill(p: Prepared, layout: SheetLayout, random: Random, meter: Meter): SheetLayout {
  const others = layout.sheets.slice(0, -1);
  const opened = new Set<LaidSheet>();
  for (let k = random() < 0.5 ? 1 : 2; k > 0 && others.length > 0; k--)
    opened.add(others[Math.floor(random() * others.length)]!);
  const begun = [...opened].map(sheet => cutBack(p, sheet, random));
  const quantity = p.problem.kinds.map(() => 0);
  for (const kind of layout.left) quantity[kind]!++;
  for (const sheet of [...opened, ...layout.sheets.slice(-1)]) for (const l of sheet.laid) quantity[l.kind]!++;
  for (const sheet of begun) for (const l of sheet.laid) quantity[l.kind]!--;
  const kept = others.filter(s => !opened.has(s));
  return fillSheets(p, quantity, TRIES, random, meter, kept, begun);
}

/** First layouts: of all shapes, or of some sheets of the best filled anew, as long as a share of the budget lasts.
 * @param given a layout to better, if there is one @returns the best, and one at least */
export function firstSheets(
  p: Prepared,
  random: Random,
  meter: Meter,
  share: number,
  given?: SheetLayout,
): SheetLayout {
  const quantity = p.problem.kinds.map(k => k.quantity);
  const first = fillSheets(p, quantity, FIRST_TRIES, random, meter);
  let best = given && !betterSheets(p, first, given) ? given : first;
  while (meter.spent() < share && best.sheets.length > leastSheets(p, best)) {
    const afresh = random() < AFRESH;
    const tried = afresh ? fillSheets(p, quantity, TRIES, random, meter) : refill(p, best, random, meter);
    if (!betterSheets(p, best, tried)) best = tried;
  }
  return best;
}
