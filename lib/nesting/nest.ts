import { refuse, requireRange } from '../findings/unusable.js';
import type { Motion } from '../geometry/motion.js';
import type { Mm } from '../units/length.js';
import { onCheaperPieces } from './cheaper-pieces.js';
import type { Prepared, Problem } from './engine/prepared.js';
import { type Effort, type Rounds, runNow, runWith, SHARED, type Watch } from './engine/rounds.js';
import { searchSheets } from './engine/search-sheets.js';
import type { Laid, LaidSheet, SheetLayout } from './engine/sheets.js';
import { preparedOf, type Runner } from './engine/task.js';
import type { NestLayout, NestPart, NestPlacement, NestStock } from './job.js';
import { nestedPiece, nestLayout, partsById } from './nest-layout.js';
import { kindOf, leastWidth } from './part-room.js';
import { plainStart } from './plain-start.js';
import { type Room, roomOf } from './stock-room.js';

export interface NestOptions {
  /** between finished outlines: cut and safety, mm, 0 or more */
  readonly gap: Mm;
  /** whole number; 1 unless given */
  readonly seed?: number;
  /** steps of fixed size; 10 unless given */
  readonly steps?: number;
}

/** A job made ready for the engine. */
export interface Job {
  readonly parts: readonly NestPart[];
  readonly stocks: readonly NestStock[];
  readonly rooms: readonly Room[];
  readonly problem: Problem;
  readonly gap: Mm;
}

const DEFAULT_STEPS = 10;

function requireJob(parts: readonly NestPart[], stocks: readonly NestStock[], options: NestOptions): void {
  requireRange('gap', options.gap, 0, 1000);
  if (stocks.length === 0) refuse('stock', 'empty', 'at least one kind');
  const names = stocks.map(s => s.name);
  for (const part of parts) {
    if (!(Number.isInteger(part.quantity) && part.quantity >= 0))
      refuse(`${part.id}.quantity`, part.quantity, 'a whole number, 0 or more');
    for (const name of part.stock ?? []) if (!names.includes(name)) refuse(`${part.id}.stock`, name, names.join(', '));
    if (typeof part.turns === 'object')
      requireRange(`${part.id}.turns.step`, part.turns.step, Math.PI / 180, 2 * Math.PI, 'radians');
  }
}

function jobOf(given: readonly NestPart[], all: readonly NestStock[], options: NestOptions): Job {
  requireJob(given, all, options);
  const made = all.map(stock => ({ stock, room: roomOf(stock, options.gap) }));
  const stocks = made.flatMap(m => (m.room ? [m.stock] : []));
  const rooms = made.flatMap(m => (m.room ? [m.room] : []));
  const parts = given.filter(p => p.quantity > 0);
  const smallest = leastWidth(parts, options.gap);
  const kinds = parts.map(p => kindOf(p, stocks, options.gap, smallest));
  return { parts, stocks, rooms, problem: { kinds, stocks: rooms.map(r => r.stock) }, gap: options.gap };
}

function motionOf(p: Prepared, room: Room, laid: Laid): Motion {
  const { turn, corner } = p.tables.poses[laid.pose]!;
  const x = room.corner.x + laid.x - corner.x;
  const y = room.corner.y + laid.y - corner.y;
  return { ...(turn.mirrored && { mirrored: true }), turn: turn.angle, x, y };
}

/** The engine's layout as pieces of stock, the fullest of each stock first: the last has the most left over. */
function layoutOf(job: Job, found: SheetLayout): NestLayout {
  const p = preparedOf(job.problem);
  const parts = partsById(job.parts);
  const numbers = new Map<number, number>();
  const full = (s: LaidSheet): number => s.laid.reduce((sum, l) => sum + p.area[l.kind]!, 0);
  const sorted = [...found.sheets].sort((a, b) => a.stock - b.stock || full(b) - full(a));
  const pieces = sorted.map(sheet => {
    const number = (numbers.get(sheet.stock) ?? 0) + 1;
    numbers.set(sheet.stock, number);
    const room = job.rooms[sheet.stock]!;
    const placements = sheet.laid.map(
      (l): NestPlacement => ({ part: job.parts[l.kind]!.id, motion: motionOf(p, room, l) }),
    );
    return nestedPiece(job.stocks[sheet.stock]!, number, placements, parts, job.gap);
  });
  const left = job.parts.map((part, k) => ({ part: part.id, quantity: found.left.filter(l => l === k).length }));
  return nestLayout(pieces, left, job.stocks);
}

/** A first layout, where the search is long enough to be stopped before its first round is over. */
function firstOf(job: Job, effort: Effort, seed: number): SheetLayout | undefined {
  const long = effort.kind === 'seconds' || effort.steps >= SHARED;
  return plainStart(job) ?? (long ? runNow(searchSheets(job.problem, { kind: 'steps', steps: 1 }, seed)) : undefined);
}

/** What fits nowhere from the start is left out of the search. */
function* search(job: Job, effort: Effort, seed: number): Rounds<SheetLayout> {
  if (job.parts.length === 0 || job.stocks.length === 0)
    return { sheets: [], left: job.problem.kinds.flatMap((k, i) => Array.from({ length: k.quantity }, () => i)) };
  return yield* searchSheets(job.problem, effort, seed, () => firstOf(job, effort, seed));
}

/** What is left for the last pieces is often little: it may go on cheaper ones. */
function bettered(job: Job, layout: NestLayout): NestLayout {
  if (job.stocks.length < 2) return layout;
  const few = { kind: 'steps', steps: 1 } as const;
  return onCheaperPieces(layout, job.parts, job.stocks, (parts, stocks) => {
    const part = jobOf(parts, stocks, { gap: job.gap });
    return layoutOf(part, runNow(search(part, few, 1)));
  });
}

/** Lays parts out on stock: fewest and cheapest pieces first, then the most left whole of the least filled. Finished outlines lie a gap
 * apart, and inside the stock (a board's trued edges) by its margin; parts may lie in openings of other parts. Sizes in mm.
 * The same input has the same layout: the effort is fixed, no clock, no chance but the seed's.
 * @throws Unusable for a quantity, gap or step out of range or a stock that is not there; GeometryFailure for outlines that cross */
export function nest(parts: readonly NestPart[], stock: readonly NestStock[], options: NestOptions): NestLayout {
  const job = jobOf(parts, stock, options);
  const effort = { kind: 'steps', steps: options.steps ?? DEFAULT_STEPS } as const;
  return bettered(job, layoutOf(job, runNow(search(job, effort, options.seed ?? 1))));
}

/** What a longer search is given. */
export interface LongNest {
  readonly gap: Mm;
  readonly seed?: number;
  readonly effort: Effort;
  /** runs the work, in threads where the host has them; `inline()` without */
  readonly run: Runner;
  readonly watch?: Watch<NestLayout>;
}

/** As `nest`, with more effort and in other threads: seconds, or steps, which have the same layout for any number of threads. */
export async function nestLong(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  options: LongNest,
): Promise<NestLayout> {
  const job = jobOf(parts, stock, options);
  const { progress, stopped } = options.watch ?? {};
  const watch: Watch<SheetLayout> = {
    ...(progress && { progress: (best, share) => progress(best && layoutOf(job, best), share) }),
    ...(stopped && { stopped }),
  };
  return bettered(
    job,
    layoutOf(job, await runWith(search(job, options.effort, options.seed ?? 1), options.run, watch)),
  );
}
