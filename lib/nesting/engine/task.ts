import { emptySheets } from './empty-sheets.js';
import { firstSheets } from './first-sheets.js';
import { type Budget, type Clock, meterOf } from './meter.js';
import { type Prepared, type Problem, prepare } from './prepared.js';
import { seeded } from './random.js';
import type { SheetLayout } from './sheets.js';
import { runStrip, type StripLayout, type StripTask } from './strip.js';

/** Plain data that says all of one search, so that it can be run in any thread: the same task has the same result (if its budget is
 * not time). Poses are counted as `prepare` makes them of the problem. */
export type Task =
  | {
      readonly kind: 'strip';
      readonly problem: Problem;
      readonly budget: Budget;
      /** which kind each shape is */
      readonly shapes: readonly number[];
      readonly strip: StripTask;
    }
  | {
      readonly kind: 'sheets';
      readonly problem: Problem;
      readonly budget: Budget;
      /** where to go on */
      readonly start?: SheetLayout;
      /** whether first layouts are made, and one taken if it is better than the start */
      readonly fresh: boolean;
      readonly seed: number;
      readonly stream: number;
    };

export type Result =
  | { readonly kind: 'strip'; readonly layout: StripLayout; readonly evaluations: number }
  | { readonly kind: 'sheets'; readonly layout: SheetLayout; readonly evaluations: number };

/** Runs tasks that do not depend on each other; results in the tasks' order. */
export type Runner = (tasks: readonly Task[]) => Promise<readonly Result[]>;

/** Share of a task's budget that goes to first layouts. */
const FILLING = 0.4;

/** Problems worked out so far: rounds of one search share a problem, and the pairs it has met. */
const worked = new WeakMap<Problem, Prepared>();

/** A problem worked out, the same one each time it is asked for. */
export function preparedOf(problem: Problem): Prepared {
  const known = worked.get(problem);
  if (known) return known;
  const made = prepare(problem);
  worked.set(problem, made);
  return made;
}

/** Runs one task. @param clock needed for a budget of time */
export function runTask(task: Task, clock?: Clock): Result {
  const meter = meterOf(task.budget, clock);
  const prepared = preparedOf(task.problem);
  if (task.kind === 'strip') {
    const layout = runStrip(prepared, task.shapes, task.strip, meter);
    return { kind: 'strip', layout, evaluations: meter.evaluations };
  }
  const random = seeded(task.seed, task.stream);
  const { start } = task;
  const first = task.fresh || !start ? firstSheets(prepared, random, meter, FILLING, start) : start;
  const layout = emptySheets(prepared, first, random, meter);
  return { kind: 'sheets', layout, evaluations: meter.evaluations };
}
