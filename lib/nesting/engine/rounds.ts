import type { Budget, Clock } from './meter.js';
import { type Result, type Runner, runTask, type Task } from './task.js';

/** How much is spent: steps, the same on every machine and for any number of threads, or seconds on so many threads. */
export type Effort =
  | { readonly kind: 'steps'; readonly steps: number }
  | { readonly kind: 'seconds'; readonly seconds: number; readonly threads: number; readonly clock: Clock };

/** Overlaps worked out in a step. */
const STEP = 20_000;
/** From so many steps on, the work is shared among searches that go on from the best of them after each round. */
export const SHARED = 100;
const SEARCHES = 4;
const SHARED_ROUNDS = 5;

/** A round of a search: what to run next, what to answer if it is stopped before, and how far it is, 0 to 1. */
export interface Round<T> {
  readonly tasks: readonly Task[];
  readonly best: T | undefined;
  readonly share: number;
}

/** A search as rounds of tasks: it takes a round's results and yields the next, until it returns its answer. */
export type Rounds<T> = Generator<Round<T>, T, readonly Result[]>;

/** A share of an effort cut into rounds of searches that run beside each other. */
export interface Schedule {
  readonly searches: number;
  readonly rounds: number;
  /** what each search of the next round may spend; asked before each round */
  readonly budget: (round: number) => Budget;
}

/** @param from, to: the part of the whole effort the rounds may use, 0 to 1 */
export function scheduleOf(effort: Effort, started: number, from: number, to: number): Schedule {
  if (effort.kind === 'steps') {
    const shared = effort.steps >= SHARED;
    const searches = shared ? SEARCHES : 1;
    const rounds = shared ? Math.max(1, Math.round(SHARED_ROUNDS * (to - from))) : 1;
    const most = Math.max(1, (effort.steps * STEP * (to - from)) / (searches * rounds));
    return { searches, rounds, budget: () => ({ kind: 'evaluations', most }) };
  }
  const { seconds, threads, clock } = effort;
  // longer searches in longer rounds: each begins anew from the best, and has to find its way
  const rounds = Math.max(1, Math.round(Math.sqrt(seconds * (to - from)) / 2));
  const end = started + 1000 * seconds * to;
  const budget = (round: number): Budget => ({
    kind: 'milliseconds',
    most: Math.max(1, (end - clock()) / (rounds - round)),
  });
  return { searches: threads, rounds, budget };
}

export const startOf = (effort: Effort): number => (effort.kind === 'seconds' ? effort.clock() : 0);

/** Runs a search here and now, in one thread. */
export function runNow<T>(rounds: Rounds<T>, clock?: Clock): T {
  let next = rounds.next();
  while (!next.done) next = rounds.next(next.value.tasks.map(t => runTask(t, clock)));
  return next.value;
}

/** What may be said and asked while a search runs. */
export interface Watch<T> {
  /** before each round: the best so far and how much of the effort is spent, 0 to 1 */
  readonly progress?: (best: T | undefined, share: number) => void;
  /** settles when the search is to stop with the best it has */
  readonly stopped?: Promise<void>;
}

const STOPPED = Symbol('stopped');

/** Runs a search by a runner; stopped, it answers with the best so far (of nothing yet: it waits for the first round). */
export async function runWith<T>(rounds: Rounds<T>, run: Runner, watch: Watch<T> = {}): Promise<T> {
  const stop = watch.stopped?.then(() => STOPPED);
  let next = rounds.next();
  while (!next.done) {
    const { tasks, best, share } = next.value;
    watch.progress?.(best, share);
    const running = run(tasks);
    const results = await (stop && best !== undefined ? Promise.race([running, stop]) : running);
    if (typeof results === 'symbol') {
      running.catch(() => undefined);
      return best as T;
    }
    next = rounds.next(results);
  }
  return next.value;
}

/** Runs tasks one after the other in this thread. */
export const inline =
  (clock?: Clock): Runner =>
  async tasks =>
    tasks.map(t => runTask(t, clock));
