import { refuse } from '../findings/unusable.js';
import { distance, type Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import type { Reach } from './work.js';

// The short way through all tasks of a sheet: the nearest next one first, and as they are listed; then of both pieces of the way turned round (2-opt) or moved
// elsewhere (Or-opt) as long as that shortens it; the shorter one is kept. What must come before what is kept all along.
// Sources: Croes, "A method for solving traveling-salesman problems", Operations Research 6 (1958); Or, dissertation, Northwestern
// University (1976); both as in Johnson and McGeoch, "The traveling salesman problem: a case study in local optimization" (1997).

/** One stop of a tour: number of the task, and whether it is run the other way. */
export interface Stop {
  readonly task: number;
  readonly reversed: boolean;
}

/** Longest stretch of the way that is moved elsewhere, in stops. */
const MOVED = 3;
/** How many of the nearest other stops a stop is tried beside. */
const NEAR = 12;
/** Less than this is no gain but rounding, mm. */
const GAIN: Mm = 1e-6;

/** What is to be toured. */
export interface Tasks {
  readonly reaches: readonly Reach[];
  /** for each task the numbers of those that must come after it */
  readonly after: readonly (readonly number[])[];
  /** number of each task's tool: all of a lower one come first */
  readonly tools: readonly number[];
  readonly start: Point;
}

/** A tour being shortened, in place. */
interface Way extends Tasks {
  readonly order: number[];
  readonly reversed: boolean[];
  /** where each task stands in the order */
  readonly place: number[];
}

const entry = (w: Way, task: number): Point => (w.reversed[task] ? w.reaches[task]!.to : w.reaches[task]!.from);
const exit = (w: Way, task: number): Point => (w.reversed[task] ? w.reaches[task]!.from : w.reaches[task]!.to);

/** Where the tool is before the stop at a place, and where it goes after it; nowhere after the last. */
const before = (w: Way, at: number): Point => (at === 0 ? w.start : exit(w, w.order[at - 1]!));
const next = (w: Way, at: number): Point | undefined =>
  at + 1 < w.order.length ? entry(w, w.order[at + 1]!) : undefined;
const way = (from: Point, to: Point | undefined): Mm => (to ? distance(from, to) : 0);

/** Whether a stretch of the order is done with one tool. */
const oneTool = (w: Way, from: number, to: number): boolean => w.tools[w.order[from]!] === w.tools[w.order[to]!];

/** Whether a stretch of the order may be run backwards: nothing in it must come before another of it, and every line can be turned. */
function turnable(w: Way, from: number, to: number): boolean {
  if (!oneTool(w, from, to)) return false;
  for (let at = from; at <= to; at++) {
    const task = w.order[at]!;
    const { from: a, to: b, reversible } = w.reaches[task]!;
    if (!reversible && distance(a, b) > 0) return false;
    if (w.after[task]!.some(later => w.place[later]! >= from && w.place[later]! <= to)) return false;
  }
  return true;
}

function turn(w: Way, from: number, to: number): void {
  const run = w.order.slice(from, to + 1).reverse();
  run.forEach((task, i) => {
    w.order[from + i] = task;
    w.place[task] = from + i;
    w.reversed[task] = w.reaches[task]!.reversible && !w.reversed[task];
  });
}

/** Runs the stretch between two stops backwards where that is shorter. */
function tryTurn(w: Way, from: number, to: number): boolean {
  if (from >= to) return false;
  const [a, b] = [w.order[from]!, w.order[to]!];
  const old = way(before(w, from), entry(w, a)) + way(exit(w, b), next(w, to));
  const turned = way(before(w, from), exit(w, b)) + way(entry(w, a), next(w, to));
  if (turned > old - GAIN || !turnable(w, from, to)) return false;
  turn(w, from, to);
  return true;
}

/** Whether a stretch may jump over another: nothing in the one that comes first must come before anything in the other. */
function swappable(w: Way, first: readonly number[], secondFrom: number, secondTo: number): boolean {
  return first.every(task => w.after[task]!.every(t => w.place[t]! < secondFrom || w.place[t]! > secondTo));
}

/** Moves the stretch from..to behind the stop at place `behind` (-1: to the front) where that is shorter. */
function tryMove(w: Way, from: number, to: number, behind: number): boolean {
  if (behind >= from - 1 && behind <= to) return false;
  const [a, b] = [w.order[from]!, w.order[to]!];
  const left = behind < 0 ? w.start : exit(w, w.order[behind]!);
  const right = behind + 1 < w.order.length ? entry(w, w.order[behind + 1]!) : undefined;
  const old = way(before(w, from), entry(w, a)) + way(exit(w, b), next(w, to)) + way(left, right);
  const moved = way(before(w, from), next(w, to)) + way(left, entry(w, a)) + way(exit(w, b), right);
  if (moved > old - GAIN) return false;
  const [low, high] = behind < from ? [behind + 1, to] : [from, behind];
  if (!oneTool(w, low, high)) return false;
  const first = behind < from ? w.order.slice(low, from) : w.order.slice(from, to + 1);
  const second = behind < from ? ([from, to] as const) : ([to + 1, behind] as const);
  if (!swappable(w, first, ...second)) return false;
  const run = w.order.slice(from, to + 1);
  const rest = behind < from ? w.order.slice(low, from) : w.order.slice(to + 1, high + 1);
  const swapped = behind < from ? [...run, ...rest] : [...rest, ...run];
  swapped.forEach((task, i) => {
    w.order[low + i] = task;
    w.place[task] = low + i;
  });
  return true;
}

/** Puts a stop, with up to two that follow it, next to one near it. */
function tryNear(w: Way, task: number, near: number): boolean {
  const at = w.place[task]!;
  const there = w.place[near]!;
  if (tryTurn(w, Math.min(at, there) + 1, Math.max(at, there))) return true;
  if (tryTurn(w, Math.min(at, there), Math.max(at, there) - 1)) return true;
  for (let more = 0; more < MOVED && at + more < w.order.length; more++)
    if (tryMove(w, at, at + more, there) || tryMove(w, at, at + more, there - 1)) return true;
  return false;
}

interface Neighbour {
  readonly stop: number;
  readonly far: Mm;
}

/** For each stop the nearest others, the nearest first. */
function neighbours(reaches: readonly Reach[]): Neighbour[][] {
  return reaches.map((r, i) =>
    reaches
      .map((other, stop): Neighbour => {
        const far = Math.min(distance(r.to, other.from), distance(r.from, other.to), distance(r.from, other.from));
        return { stop, far };
      })
      .filter(({ stop }) => stop !== i)
      .sort((p, q) => p.far - q.far || p.stop - q.stop)
      .slice(0, NEAR),
  );
}

/** The longer of the ways to a stop and from it. */
function longestStep(w: Way, task: number): Mm {
  const at = w.place[task]!;
  return Math.max(way(before(w, at), entry(w, task)), way(exit(w, task), next(w, at)));
}

function shorten(w: Way, near: readonly (readonly Neighbour[])[]): void {
  for (let better = true; better; ) {
    better = false;
    for (const [task, others] of near.entries())
      for (const { stop, far } of others) {
        // nothing is gained beside a stop farther off than those it stands between now
        if (far >= longestStep(w, task)) break;
        while (tryNear(w, task, stop)) better = true;
      }
    const last = w.order.length - 1;
    for (let at = 0; at < last; at++) if (tryTurn(w, at, last) || tryTurn(w, 0, at)) better = true;
  }
}

/** How far a way goes on to the next task that nothing has to come before any more: the nearest first, or the first as listed. */
type Choice = (far: Mm, task: number) => number;
const NEAREST: Choice = far => far;
const AS_LISTED: Choice = (_, task) => task;

/** One free task after the other, the least by `choice` each time. */
function begin(tasks: Tasks, choice: Choice): Way {
  const { reaches, after, tools, start } = tasks;
  const w: Way = { ...tasks, order: [], reversed: reaches.map(() => false), place: [] };
  const waits = reaches.map(() => 0);
  for (const later of after.flat()) waits[later]!++;
  const open = new Set(reaches.keys());
  let at = start;
  while (open.size > 0) {
    let best = { task: -1, rank: Infinity, reversed: false };
    let tool = Infinity;
    for (const task of open) tool = Math.min(tool, tools[task]!);
    for (const task of open) {
      if (waits[task]! > 0 || tools[task] !== tool) continue;
      const { from, to, reversible } = reaches[task]!;
      const reversed = reversible && distance(at, to) < distance(at, from);
      const rank = choice(distance(at, reversed ? to : from), task);
      if (rank < best.rank) best = { task, rank, reversed };
    }
    if (best.task < 0) refuse('the order of tasks', 'a circle', 'no task before itself');
    open.delete(best.task);
    w.reversed[best.task] = best.reversed;
    w.place[best.task] = w.order.push(best.task) - 1;
    at = exit(w, best.task);
    for (const later of after[best.task]!) waits[later]!--;
  }
  return w;
}

const stopsOf = ({ order, reversed }: Way): Stop[] => order.map(task => ({ task, reversed: reversed[task]! }));

/** A short way through all stops, that ends wherever it does.
 * @throws Unusable where a stop would have to come before itself, or a tool's task before one of an earlier tool */
export function tour(tasks: Tasks): Stop[] {
  const near = tasks.reaches.length > 2 ? neighbours(tasks.reaches) : [];
  const shortened = (choice: Choice): Stop[] => {
    const w = begin(tasks, choice);
    shorten(w, near);
    return stopsOf(w);
  };
  const found = shortened(NEAREST);
  // rarely, the order of the list is the shorter one to begin with
  if (travel(tasks, found) <= travel(tasks, stopsOf(begin(tasks, AS_LISTED)))) return found;
  return shortened(AS_LISTED);
}

/** All stops as they are listed, but for what must come after others. @throws Unusable, as tour */
export const inTurn = (tasks: Tasks): Stop[] => stopsOf(begin(tasks, AS_LISTED));

/** How far the tool travels without cutting, from the start through all stops, mm. */
export function travel({ reaches, start }: Tasks, stops: readonly Stop[]): Mm {
  let at = start;
  let sum = 0;
  for (const { task, reversed } of stops) {
    const { from, to } = reaches[task]!;
    sum += distance(at, reversed ? to : from);
    at = reversed ? from : to;
  }
  return sum;
}
