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
  /** whether the start was found by such a task: then it is as short as large steps make it */
  readonly searched: boolean;
  /** explore: shorten in larger steps and jolt what sticks; press: shorten the best in ever smaller steps */
  readonly phase: 'explore' | 'press';
  /** kind of stock that is the strip; its width is the length the strip may have at most */
  readonly stock: number;
  readonly seed: number;
  readonly stream: number;
}

/** Places looked at for one move. */
const TRIALS = { anywhere: 8, near: 8, corners: 16 };
/** Step by which the strip is made shorter: at first, and at last. */
const FIRST_STEP = 0.02;
const LAST_STEP = 0.001;
/** First step where a layout is given that was searched for already. */
const NEXT_STEP = 0.002;
const LAYOUTS_KEPT = 20;
/** Rounds without gain before a try is given up: after a gain, and the most after many failures. */
const PATIENCE = 40;
const LAST_PATIENCE = 160;

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

/** What exploring has come to: how far the strip is shortened at once, how long one try lasts, and layouts that failed. */
interface Progress {
  step: number;
  patience: number;
  readonly pool: Snapshot[];
}

/** After a try that failed: a smaller step from the best, or at the least step a kept layout with two large shapes swapped. */
function recover(s: Search, t: Tools, best: Best, state: Progress, length: number): boolean {
  if (state.step > LAST_STEP) {
    state.step = Math.max(LAST_STEP, state.step / 2);
    backTo(s, best);
    return shorten(s, best.length * (1 - state.step));
  }
  const kept = snapshot(s);
  store(s, kept, t.best.loss);
  state.pool.push(kept);
  state.pool.sort((a, b) => a.loss - b.loss);
  if (state.pool.length > LAYOUTS_KEPT) state.pool.pop();
  state.patience = Math.min(LAST_PATIENCE, state.patience * 1.15);
  s.bays[0]!.width = length;
  restore(s, pick(s, state.pool));
  swapLarge(s);
  return true;
}

/** Shortens and separates as long as it may go on, until the length is enough or a shape fills all of it. */
function explore(s: Search, t: Tools, best: Best, going: () => boolean, first: number, enough = 0): void {
  const state: Progress = { step: first, patience: PATIENCE, pool: [] };
  let open = shorten(s, best.length * (1 - state.step));
  while (open && best.length > enough && going()) {
    const length = s.bays[0]!.width;
    if (separate(s, t, { trials: TRIALS, patience: state.patience, strikes: 2, most: Infinity, going })) {
      keep(s, best);
      state.pool.length = 0;
      state.patience = PATIENCE;
      open = shorten(s, best.length * (1 - state.step)) || shorten(s, best.length * (1 - LAST_STEP));
    } else open = recover(s, t, best, state, length);
  }
}

/** Shortens the best layout by less and less, always from the best again. */
function press(s: Search, t: Tools, best: Best, meter: Meter): void {
  const going = (): boolean => meter.spent() < 1;
  while (going()) {
    backTo(s, best);
    if (!shorten(s, best.length * (1 - (0.0006 * (1 - meter.spent()) + 0.00001)))) return;
    if (separate(s, t, { trials: TRIALS, patience: PATIENCE, strikes: 2, most: Infinity, going })) keep(s, best);
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
  if (task.phase === 'explore')
    explore(s, tools, best, () => meter.spent() < 1, task.searched ? NEXT_STEP : FIRST_STEP);
  else press(s, tools, best, meter);
  return { length: best.length, pose: best.at.pose, x: best.at.x, y: best.at.y };
}

/** Presses what lies in the first bay together until it is no longer than `enough`, or as far as it goes meanwhile.
 * @returns the length; the shapes lie where they are then */
export function pressTo(s: Search, enough: number, going: () => boolean): number {
  const best: Best = { length: 0, at: snapshot(s) };
  keep(s, best);
  explore(s, toolsOf(s), best, going, FIRST_STEP, enough);
  backTo(s, best);
  return best.length;
}
