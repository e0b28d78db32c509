import { depth } from './clash.js';
import { findSpot, type Placer, placer, type Trials } from './place.js';
import { shuffle } from './random.js';
import { put, type Search } from './search.js';

/** Where every movable shape lies. */
export interface Snapshot {
  readonly pose: Int32Array;
  readonly bay: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  loss: number;
}

export const snapshot = (s: Search): Snapshot => ({
  pose: new Int32Array(s.movable),
  bay: new Int32Array(s.movable),
  x: new Float64Array(s.movable),
  y: new Float64Array(s.movable),
  loss: Infinity,
});

export function store(s: Search, into: Snapshot, loss: number): void {
  const n = s.movable;
  into.pose.set(s.pose.subarray(0, n));
  into.bay.set(s.bay.subarray(0, n));
  into.x.set(s.x.subarray(0, n));
  into.y.set(s.y.subarray(0, n));
  into.loss = loss;
}

export function restore(s: Search, from: Snapshot): void {
  for (let i = 0; i < s.movable; i++) put(s, i, from.pose[i]!, from.x[i]!, from.y[i]!, from.bay[i]!);
}

/** Pairs that overlap, found anew after each round. */
export interface Overlaps {
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly depth: Float64Array;
  /** whether a shape is in one of the pairs */
  readonly clashing: Uint8Array;
  count: number;
  loss: number;
}

export const overlapList = (s: Search): Overlaps => {
  const most = s.count * s.count;
  return {
    first: new Int32Array(most),
    second: new Int32Array(most),
    depth: new Float64Array(most),
    clashing: new Uint8Array(s.count),
    count: 0,
    loss: 0,
  };
};

/** All pairs that overlap, and the sum of their overlaps by size. */
export function findOverlaps(s: Search, o: Overlaps): void {
  s.meter.evaluations += s.movable;
  o.count = 0;
  o.loss = 0;
  o.clashing.fill(0);
  for (let i = 0; i < s.movable; i++) {
    const first = s.bay[i]! * s.count;
    const end = first + s.filled[s.bay[i]!]!;
    for (let k = first; k < end; k++) {
      const j = s.members[k]!;
      if (j <= i || s.x[j]! >= s.right[i]! || s.right[j]! <= s.x[i]! || s.y[j]! >= s.top[i]! || s.top[j]! <= s.y[i]!)
        continue;
      const d = depth(s.tables, s.pose[i]!, s.pose[j]!, s.x[j]! - s.x[i]!, s.y[j]! - s.y[i]!, s.touch);
      if (d <= 0) continue;
      o.first[o.count] = i;
      o.second[o.count] = j;
      o.depth[o.count] = d;
      o.count++;
      o.loss += d * s.size[i * s.count + j]!;
      o.clashing[i] = 1;
      o.clashing[j] = 1;
    }
  }
}

/** Growth of the weight of the least and of the worst overlap of a round, and how others fall back. */
const LEAST_GROWTH = 1.2;
const MOST_GROWTH = 2;
const DECAY = 0.95;
const HEAVIEST = 1e9;

/** Makes what still overlaps dearer, the worst most, and lets the rest fall back. */
function reweigh(s: Search, o: Overlaps): void {
  const { weight, size, count } = s;
  let worst = 0;
  for (let k = 0; k < o.count; k++) worst = Math.max(worst, o.depth[k]! * size[o.first[k]! * count + o.second[k]!]!);
  for (let k = 0; k < weight.length; k++) {
    const lowest = size[k]!;
    const fallen = weight[k]! * DECAY;
    weight[k] = Math.max(fallen, lowest);
  }
  for (let k = 0; k < o.count; k++) {
    const at = o.first[k]! * count + o.second[k]!;
    const share = (o.depth[k]! * size[at]!) / worst;
    const grown = (weight[at]! / DECAY) * (LEAST_GROWTH + (MOST_GROWTH - LEAST_GROWTH) * share);
    weight[at] = Math.min(grown, HEAVIEST * size[at]!);
    weight[o.second[k]! * count + o.first[k]!] = weight[at]!;
  }
}

/** One move for every shape that overlaps another, in random order. */
function moveAll(s: Search, o: Overlaps, p: Placer, order: Int32Array, trials: Trials): void {
  let many = 0;
  for (let i = 0; i < s.movable; i++) if (o.clashing[i]) order[many++] = i;
  shuffle(order, many, s.random);
  for (let k = 0; k < many; k++) {
    const i = order[k]!;
    const spot = findSpot(s, p, i, trials);
    put(s, i, spot.pose, spot.x, spot.y, spot.bay);
  }
}

export const toolsOf = (s: Search): Tools => ({
  overlaps: overlapList(s),
  placer: placer(),
  order: new Int32Array(s.count),
  best: snapshot(s),
});

export interface SeparateOptions {
  readonly trials: Trials;
  /** rounds without gain before the best is taken up again, and how often that is done */
  readonly patience: number;
  readonly strikes: number;
  /** rounds in all */
  readonly most: number;
  /** whether to go on */
  readonly going: () => boolean;
}

export interface Tools {
  readonly overlaps: Overlaps;
  readonly placer: Placer;
  readonly order: Int32Array;
  readonly best: Snapshot;
}

/** Moves shapes until none overlap. @returns whether none do; the state is the best met */
export function separate(s: Search, t: Tools, options: SeparateOptions): boolean {
  const { overlaps, best } = t;
  s.weight.set(s.size);
  findOverlaps(s, overlaps);
  store(s, best, overlaps.loss);
  let rounds = 0;
  for (let strike = 0; strike < options.strikes; strike++) {
    const before = best.loss;
    for (
      let idle = 0;
      idle < options.patience && overlaps.count > 0 && rounds < options.most && options.going();
      idle++, rounds++
    ) {
      moveAll(s, overlaps, t.placer, t.order, options.trials);
      findOverlaps(s, overlaps);
      if (overlaps.loss < best.loss) {
        if (overlaps.loss < 0.98 * best.loss) idle = -1;
        store(s, best, overlaps.loss);
      }
      reweigh(s, overlaps);
    }
    if (overlaps.count === 0) return true;
    restore(s, best);
    findOverlaps(s, overlaps);
    if (rounds >= options.most || !options.going()) return false;
    if (best.loss < 0.98 * before) strike = -1;
  }
  return false;
}
