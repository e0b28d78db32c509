import type { Prepared, Problem } from './prepared.js';
import { type Effort, type Rounds, scheduleOf, startOf } from './rounds.js';
import { betterSheets, type LaidSheet, laidArea, type SheetLayout } from './sheets.js';
import { preparedOf, type Result, type Task } from './task.js';

/** The last of the effort presses the least filled sheet to its left end, so that its right end is left whole. */
const EMPTY = 0.85;

const FEW = 300;

const leastFilled = (p: Prepared, sheets: readonly LaidSheet[]): LaidSheet | undefined => {
  const least = Math.min(...sheets.map(s => laidArea(p, s.laid)));
  return sheets.findLast(s => laidArea(p, s.laid) <= least);
};

function pressTask(problem: Problem, sheet: LaidSheet, budget: Task['budget'], seed: number, stream: number): Task {
  const stock = problem.stocks[sheet.stock]!;
  const start = {
    length: stock.width,
    pose: Int32Array.from(sheet.laid, l => l.pose),
    x: Float64Array.from(sheet.laid, l => l.x),
    y: Float64Array.from(sheet.laid, l => l.y),
  };
  const shapes = sheet.laid.map(l => l.kind);
  return {
    kind: 'strip',
    problem,
    budget,
    shapes,
    strip: { phase: 'explore', searched: false, stock: sheet.stock, start, seed, stream },
  };
}

function pressed(sheet: LaidSheet, results: readonly Result[]): LaidSheet {
  let best: LaidSheet = sheet;
  let length = Infinity;
  for (const r of results) {
    if (r.kind !== 'strip' || r.layout.length >= length) continue;
    const { layout } = r;
    length = layout.length;
    best = {
      stock: sheet.stock,
      laid: sheet.laid.map((l, i) => ({ kind: l.kind, pose: layout.pose[i]!, x: layout.x[i]!, y: layout.y[i]! })),
    };
  }
  return best;
}

/** Fewest and cheapest sheets found for all shapes of a problem, the least filled pressed to its left end.
 * @param given makes a layout to better, if there is one; its time counts   @param seed whole number */
export function* searchSheets(
  problem: Problem,
  effort: Effort,
  seed: number,
  given: () => SheetLayout | undefined = () => undefined,
): Rounds<SheetLayout> {
  const p = preparedOf(problem);
  const started = startOf(effort);
  const { searches, rounds, budget } = scheduleOf(effort, started, 0, EMPTY);
  // of very many shapes the given layout is made sooner
  let best = given();
  const few = !best || problem.stocks.length > 1 || problem.kinds.reduce((sum, k) => sum + k.quantity, 0) <= FEW;
  let stream = 0;
  for (let round = 0; round < rounds; round++) {
    const tasks = Array.from({ length: searches }, (): Task => {
      const start: { start?: SheetLayout } = best ? { start: best } : {};
      return {
        kind: 'sheets',
        problem,
        budget: budget(round),
        seed,
        stream: stream++,
        fresh: few,
        ...start,
      };
    });
    const results = yield { tasks, best, share: (EMPTY * round) / rounds };
    for (const r of results) if (r.kind === 'sheets' && (!best || betterSheets(p, r.layout, best))) best = r.layout;
  }
  if (!best) throw new RangeError('a search without results');
  const last = leastFilled(p, best.sheets);
  if (!last) return best;
  const pressing = scheduleOf(effort, started, EMPTY, 1);
  const tasks = Array.from({ length: pressing.searches }, () =>
    pressTask(problem, last, pressing.budget(0), seed, stream++),
  );
  const results = yield { tasks, best, share: EMPTY };
  const done = pressed(last, results);
  return { left: best.left, sheets: [...best.sheets.filter(s => s !== last), done] };
}
