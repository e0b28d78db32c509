import { baysOf, searchOf } from './build-search.js';
import { laidIn } from './fill-sheet.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import { put, type Search } from './search.js';
import { type SeparateOptions, separate, toolsOf } from './separate.js';
import type { Laid, LaidSheet } from './sheets.js';

/** Rounds of one try at most, as a multiple of its patience: a try that only creeps on costs more than another. */
const ROUNDS = 3;
const TRIALS = { anywhere: 12, near: 8, corners: 16 };

/** Puts a shape anywhere in any bay it may lie in. @returns whether there is one */
export function throwIn(s: Search, i: number): boolean {
  const kind = s.kind[i]!;
  const from = s.posesFrom[kind]!;
  const many = s.posesFrom[kind + 1]! - from;
  const start = Math.floor(s.random() * many * s.bays.length);
  for (let k = 0; k < many * s.bays.length; k++) {
    const pick = (start + k) % (many * s.bays.length);
    const pose = from + (pick % many);
    const b = Math.floor(pick / many);
    const bay = s.bays[b]!;
    if (s.allowed[pose * s.stocks + bay.stock] !== 1) continue;
    const x = bay.x + s.random() * (bay.width - s.tables.width[pose]!);
    const y = bay.y + s.random() * (bay.height - s.tables.height[pose]!);
    put(s, i, pose, Math.max(bay.x, x), Math.max(bay.y, y), b);
    return true;
  }
  return false;
}

/** Lays shapes that have no place yet on sheets together with what lies there, moving all of it about until nothing overlaps.
 * @returns the sheets in their order, undefined if no way was found */
export function squeezeIn(
  p: Prepared,
  sheets: readonly LaidSheet[],
  more: readonly number[],
  random: Random,
  meter: Meter,
  patience: number,
): LaidSheet[] | undefined {
  const bays = baysOf(
    p,
    sheets.map(sheet => sheet.stock),
  );
  const there = sheets.flatMap((sheet, b) => sheet.laid.map(l => ({ ...l, b })));
  const s = searchOf(p, [...there.map(l => l.kind), ...more], bays, random, meter);
  there.forEach((l, i) => {
    put(s, i, l.pose, bays[l.b]!.x + l.x, bays[l.b]!.y + l.y, l.b);
  });
  for (let i = there.length; i < s.movable; i++) if (!throwIn(s, i)) return undefined;
  const options: SeparateOptions = {
    trials: TRIALS,
    patience,
    strikes: 1,
    most: ROUNDS * patience,
    going: () => meter.spent() < 1,
  };
  if (!separate(s, toolsOf(s), options)) return undefined;
  return sheets.map((sheet, b) => ({ stock: sheet.stock, laid: laidIn(s, b) }));
}

/** What lies on a sheet but one shape. */
export const without = (laid: readonly Laid[], one: Laid): Laid[] => laid.filter(l => l !== one);
