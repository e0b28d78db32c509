import { searchOf } from './build-search.js';
import { layInBay } from './fill.js';
import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import { seeded } from './random.js';
import { put, type Search } from './search.js';
import { restore, type Snapshot, separate, snapshot, store, type Tools, toolsOf } from './separate.js';
import { largestFirst, shorten, swapLarge, usedLength } from './strip-moves.js';

/** A layout on a strip. */
export interface StripLayout {
  readonly length: number;
  readonly pose: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** One search on a strip, complete in itself: the same task gives the same layout wherever and whenever it is run. */
export interface StripTask {
  readonly start?: StripLayout;
  /** explore: shorten in larger steps and jolt what sticks; press: shorten the best in ever smaller steps */
  readonly phase: 'explore' | 'press';
  /** kind of stock that is the strip; its width is the length the strip may have at most */
  readonly stock: number;
  readonly seed: number;
  readonly stream: number;
}

/** Places looked at for one move. */
const TRIALS = { anywhere: 8, near: 8, corners: 16 };
/** First step by which the strip is made shorter, and the last. */
const FIRST_STEP = 0.02;
const LAST_STEP = 0.001;
const LAYOUTS_KEPT = 20;

/** A first layout: largest first, each as far left as it is found to go. */
function fillStrip(s: Search): void {
  for (const i of largestFirst(s)) if (!layInBay(s, i, 0)) throw new RangeError('a shape is higher than the strip');
}

interface Best {
  length: number;
  readonly at: Snapshot;
}

function keep(s: Search, best: Best): void {
  best.length = usedLength(s);
  s.bays[0]!.width = best.length;
  store(s, best.at, 0);
}

function backTo(s: Search, best: Best): void {
  s.bays[0]!.width = best.length;
  restore(s, best.at);
}

/** Less overlap likelier: a half normal deviate picks from the kept layouts. */
function pick(s: Search, pool: readonly Snapshot[]): Snapshot {
  const u = Math.max(1e-12, s.random());
  const normal = Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * s.random());
  return pool[Math.floor(Math.min(0.999, Math.abs(normal) / 4) * pool.length)]!;
}

/** Shortens and separates; where that fails, in smaller steps, and at the least step from a kept layout with two large shapes swapped. */
function explore(s: Search, t: Tools, best: Best, meter: Meter): void {
  const going = (): boolean => meter.spent() < 1;
  const pool: Snapshot[] = [];
  let step = FIRST_STEP;
  let patience = 40;
  shorten(s, best.length * (1 - step));
  while (going()) {
    const length = s.bays[0]!.width;
    if (separate(s, t, { trials: TRIALS, patience, strikes: 2, going })) {
      keep(s, best);
      pool.length = 0;
      patience = 40;
      shorten(s, best.length * (1 - step));
    } else if (step > LAST_STEP) {
      step = Math.max(LAST_STEP, step / 2);
      backTo(s, best);
      shorten(s, best.length * (1 - step));
    } else {
      const kept = snapshot(s);
      store(s, kept, t.best.loss);
      pool.push(kept);
      pool.sort((a, b) => a.loss - b.loss);
      if (pool.length > LAYOUTS_KEPT) pool.pop();
      patience = Math.min(160, patience * 1.15);
      s.bays[0]!.width = length;
      restore(s, pick(s, pool));
      swapLarge(s);
    }
  }
}

/** Shortens the best layout by less and less, always from the best again. */
function press(s: Search, t: Tools, best: Best, meter: Meter): void {
  const going = (): boolean => meter.spent() < 1;
  while (going()) {
    backTo(s, best);
    shorten(s, best.length * (1 - (0.0006 * (1 - meter.spent()) + 0.00001)));
    if (separate(s, t, { trials: TRIALS, patience: 40, strikes: 2, going })) keep(s, best);
  }
}

/** Runs a strip task. @param kinds which kind each shape is @throws RangeError if a shape is too high */
export function runStrip(prepared: Prepared, kinds: ArrayLike<number>, task: StripTask, meter: Meter): StripLayout {
  const { width, height } = prepared.problem.stocks[task.stock]!;
  const bay = { x: 0, y: 0, width, height, stock: task.stock };
  const s = searchOf(prepared, kinds, [bay], seeded(task.seed, task.stream), meter);
  const best: Best = { length: width, at: snapshot(s) };
  const { start } = task;
  if (start) for (let i = 0; i < s.movable; i++) put(s, i, start.pose[i]!, start.x[i]!, start.y[i]!, 0);
  else fillStrip(s);
  keep(s, best);
  const tools = toolsOf(s);
  if (task.phase === 'explore') explore(s, tools, best, meter);
  else press(s, tools, best, meter);
  return { length: best.length, pose: best.at.pose, x: best.at.x, y: best.at.y };
}
