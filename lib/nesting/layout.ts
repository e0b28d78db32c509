import type { Mm } from '../units/length.js';
import { advance, emptyFront, type Front, type Spot, spots } from './front.js';
import type { Turned } from './turns.js';

/** Pieces that are alike: the ways one may lie, and how many there are. */
export interface Batch {
  readonly ways: readonly Turned[];
  readonly quantity: number;
  /** finished area, mm² */
  readonly area: number;
}

/** The usable part of a piece of stock, mm. */
export interface Room {
  readonly length: Mm;
  readonly width: Mm;
}

/** A piece laid down: `batch` is its index among the batches. */
export interface Laid {
  readonly batch: number;
  readonly way: Turned;
  readonly spot: Spot;
}

/** One piece of stock filled from its left end. */
export interface Filled {
  readonly laid: readonly Laid[];
  /** how far it is used, mm */
  readonly used: Mm;
}

interface Open {
  front: Front;
  laid: Laid[];
  used: Mm;
  /** batches that no longer fit */
  full: Set<number>;
}

/** Numbers a choice is ranked by, the first that differs decides; less is better. */
type Rank = readonly number[];
type Ranking = (way: Turned, spot: Spot) => Rank;

const SAME = 1e-6;

function better(a: Rank, b: Rank): boolean {
  for (let i = 0; i < a.length; i += 1) {
    const difference = a[i]! - b[i]!;
    if (Math.abs(difference) > SAME) return difference < 0;
  }
  return false;
}

const earliestEnd: Ranking = (way, s) => [s.x + way.silhouette.width, s.waste, s.y];
const leastWaste: Ranking = (way, s) => [s.waste, s.x + way.silhouette.width, s.y];

type Order = (a: Batch, b: Batch) => number;
const box = (b: Batch): readonly [Mm, Mm] => [b.ways[0]!.silhouette.width, b.ways[0]!.silhouette.height];
const largestFirst: Order = (a, b) => b.area - a.area;
const longestFirst: Order = (a, b) => Math.max(...box(b)) - Math.max(...box(a));
const widestFirst: Order = (a, b) => box(b)[1] - box(a)[1];

/** Which of the ways to lie are used: choosing anew for each piece can leave strips that one way for all would fill. */
type Lying = (w: Turned) => boolean;
const either: Lying = () => true;
const along: Lying = w => w.silhouette.width >= w.silhouette.height;
const across: Lying = w => w.silhouette.width <= w.silhouette.height;

interface Trial {
  readonly order: Order;
  readonly ranking: Ranking;
  readonly lying: Lying;
}

/** Trials, the most promising first; how many are made depends on the number of pieces alone, so that the result does too. */
const TRIALS: readonly Trial[] = [largestFirst, longestFirst, widestFirst].flatMap(order =>
  [either, along, across].flatMap(lying => [earliestEnd, leastWaste].map(ranking => ({ order, ranking, lying }))),
);
const EFFORT = 3000;
/** Once there cannot be fewer pieces of stock, this many trials are enough. */
const ENOUGH = 3;

/** The batch with only the ways of a trial; with all if none of them is. */
function restricted(batch: Batch, lying: Lying): Batch {
  const ways = batch.ways.filter(lying);
  return ways.length > 0 ? { ...batch, ways } : batch;
}

function choose(open: Open, batch: Batch, room: Room, ranking: Ranking): { way: Turned; spot: Spot } | undefined {
  let best: { way: Turned; spot: Spot; rank: Rank } | undefined;
  let end = room.length;
  for (const way of batch.ways)
    for (const spot of spots(open.front, way.silhouette, end, room.width)) {
      const rank = ranking(way, spot);
      if (!best || better(rank, best.rank)) best = { way, spot, rank };
      if (ranking === earliestEnd) end = Math.min(end, spot.x + way.silhouette.width + SAME);
    }
  return best;
}

function layOne(opens: Open[], batch: Batch, index: number, room: Room, ranking: Ranking): void {
  for (let i = 0; i <= opens.length; i += 1) {
    if (i === opens.length) opens.push({ front: emptyFront(room.width), laid: [], used: 0, full: new Set() });
    const open = opens[i]!;
    if (open.full.has(index)) continue;
    const choice = choose(open, batch, room, ranking);
    if (choice) {
      open.front = advance(open.front, choice.way.silhouette, choice.spot, open.laid.length);
      open.laid.push({ batch: index, way: choice.way, spot: choice.spot });
      open.used = Math.max(open.used, choice.spot.x + choice.way.silhouette.width);
      return;
    }
    if (open.laid.length === 0) throw new RangeError('a piece larger than the stock was to be laid on it');
    open.full.add(index);
  }
}

/** A trial made ready: batches with the ways it uses, and the order they are laid in. */
interface Prepared {
  readonly batches: readonly Batch[];
  readonly sequence: readonly number[];
  readonly ranking: Ranking;
  /** trials of one key lay out the same */
  readonly key: string;
}

function prepare(all: readonly Batch[], { order, ranking, lying }: Trial): Prepared {
  const batches = all.map(b => restricted(b, lying));
  const sequence = batches.map((_, i) => i).sort((a, b) => order(batches[a]!, batches[b]!) || a - b);
  const ways = batches.map((b, i) => b.ways.map(w => all[i]!.ways.indexOf(w)).join('+'));
  return { batches, sequence, ranking, key: [ranking === leastWaste, ...sequence, ...ways].join() };
}

function attempt({ batches, sequence, ranking }: Prepared, room: Room): Filled[] {
  const opens: Open[] = [];
  for (const index of sequence)
    for (let n = 0; n < batches[index]!.quantity; n += 1) layOne(opens, batches[index]!, index, room, ranking);
  return opens.map(o => ({ laid: o.laid, used: o.used }));
}

const effortOf = (filled: readonly Filled[]): Rank => [filled.length, filled.reduce((sum, f) => sum + f.used, 0)];

/** Lays all pieces on as few pieces of stock as it finds, each filled from its left end; several orders are tried and the best is kept.
 * The rooms of pieces never overlap. Same input, same layout: no clock, no chance.
 * @param batches each fits the room in at least one of its ways @throws RangeError if one does not
 * Limits: what lies behind the front is not filled up. */
export function layOut(batches: readonly Batch[], room: Room): Filled[] {
  const pieces = batches.reduce((sum, b) => sum + b.quantity, 0);
  const prepared = TRIALS.map(t => prepare(batches, t));
  const different = prepared.filter((t, i) => prepared.findIndex(other => other.key === t.key) === i);
  const most = Math.max(1, Math.floor(EFFORT / Math.max(1, pieces)));
  const least = Math.ceil(batches.reduce((sum, b) => sum + b.area * b.quantity, 0) / (room.length * room.width));
  let best: Filled[] | undefined;
  for (const [made, trial] of different.slice(0, most).entries()) {
    if (made >= ENOUGH && best?.length === least) break;
    const result = attempt(trial, room);
    if (!best || better(effortOf(result), effortOf(best))) best = result;
  }
  return best ?? [];
}
