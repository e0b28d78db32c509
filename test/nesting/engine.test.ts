import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depth } from '../../lib/nesting/engine/clash.js';
import type { Ring } from '../../lib/nesting/engine/polygon.js';
import type { Kind } from '../../lib/nesting/engine/poses.js';
import { type Problem, prepare } from '../../lib/nesting/engine/prepared.js';
import { type Effort, inline, runNow, runWith } from '../../lib/nesting/engine/rounds.js';
import { searchSheets } from '../../lib/nesting/engine/search-sheets.js';
import { searchStrip } from '../../lib/nesting/engine/search-strip.js';
import type { Runner } from '../../lib/nesting/engine/task.js';
import { runTask } from '../../lib/nesting/engine/task.js';
import { near } from '../close.js';

const box = (w: number, h: number): Ring => [
  { x: 0, y: 0 },
  { x: w, y: 0 },
  { x: w, y: h },
  { x: 0, y: h },
];
const still = [{ angle: 0, mirrored: false }];
const quarters = [0, 1, 2, 3].map(k => ({ angle: (k * Math.PI) / 2, mirrored: false }));
const kind = (outline: Ring, quantity: number, turns = still): Kind => ({
  shape: { outline, openings: [] },
  quantity,
  turns,
});
const strip = (kinds: readonly Kind[], height: number): Problem => ({
  kinds,
  stocks: [{ width: 1e4, height, forbidden: [], price: 1 }],
});

// the least way apart of two upright boxes is the smaller of their overlaps in x and y
test('how deep two boxes overlap is the shorter way out; touching is no overlap', () => {
  const { tables, touch } = prepare(strip([kind(box(10, 6), 1), kind(box(4, 8), 1)], 100));
  fc.assert(
    fc.property(
      fc.double({ min: -15, max: 15, noNaN: true }),
      fc.double({ min: -15, max: 15, noNaN: true }),
      (x, y) => {
        const across = Math.min(10 - x, x + 4);
        const along = Math.min(6 - y, y + 8);
        const want = across > 0 && along > 0 ? Math.min(across, along) : 0;
        near(depth(tables, 0, 1, x, y, touch), want > touch ? want : 0, 1e-9);
        near(depth(tables, 1, 0, -x, -y, touch), want > touch ? want : 0, 1e-9);
      },
    ),
  );
  expect(depth(tables, 0, 1, 10, 0, touch)).toBe(0);
});

test('boxes that fill a strip without a gap are found to: 12 of 10 x 5 in a strip 15 high are 40 long', () => {
  const layout = runNow(searchStrip(strip([kind(box(10, 5), 12)], 15), { kind: 'steps', steps: 20 }, 1));
  near(layout.length, 40, 1e-6);
});

const mixed: Problem = {
  kinds: [
    kind(box(40, 25), 7, quarters),
    kind(
      [
        { x: 0, y: 0 },
        { x: 50, y: 0 },
        { x: 10, y: 35 },
      ],
      9,
      quarters,
    ),
    kind(
      [
        { x: 0, y: 0 },
        { x: 45, y: 0 },
        { x: 45, y: 12 },
        { x: 12, y: 12 },
        { x: 12, y: 45 },
        { x: 0, y: 45 },
      ],
      8,
      quarters,
    ),
  ],
  stocks: [{ width: 120, height: 100, forbidden: [], price: 1 }],
};

/** Runs tasks in so many lanes that take turns, the last first: what threads may do to their order. */
const lanes =
  (many: number): Runner =>
  async tasks => {
    const results = new Array<ReturnType<typeof runTask>>(tasks.length);
    for (let lane = many - 1; lane >= 0; lane--)
      for (let k = lane; k < tasks.length; k += many) results[k] = runTask(structuredClone(tasks[k]!));
    return results;
  };

test('the same seed and steps have the same layout in one lane, two or four, and of copied tasks', async () => {
  const effort: Effort = { kind: 'steps', steps: 100 };
  const [strips, sheets] = [
    (seed: number) => searchStrip(strip(mixed.kinds, 100), effort, seed),
    (seed: number) => searchSheets(mixed, effort, seed),
  ] as const;
  const one = await runWith(strips(1), inline());
  for (const many of [2, 4]) expect(await runWith(strips(1), lanes(many))).toEqual(one);
  const bins = await runWith(sheets(1), inline());
  for (const many of [2, 4]) expect(await runWith(sheets(1), lanes(many))).toEqual(bins);
});

test('another seed, another search', () => {
  const few: Effort = { kind: 'steps', steps: 3 };
  const run = (seed: number) => runNow(searchStrip(strip(mixed.kinds, 100), few, seed));
  expect(run(1)).toEqual(run(1));
  expect(run(2)).not.toEqual(run(1));
});

test('a search that is stopped answers with the best so far', async () => {
  let seen: unknown;
  const stopped = new Promise<void>(resolve => {
    setTimeout(resolve, 1);
  });
  const slow: Runner = async tasks => {
    const results = tasks.map(t => runTask(t));
    await new Promise(resolve => setTimeout(resolve, seen === undefined ? 0 : 10_000));
    return results;
  };
  const progress = (best: unknown): void => {
    seen = best;
  };
  const watch = { stopped, progress };
  const layout = await runWith(searchStrip(strip(mixed.kinds, 100), { kind: 'steps', steps: 100 }, 1), slow, watch);
  expect(layout).toBe(seen);
});

// largest first, each as low as it goes, leaves 3 sheets; two hold all: 4 boxes of half a sheet's width by two thirds, 4 by a third
test('a sheet is emptied into the others where that can be', () => {
  const problem: Problem = {
    kinds: [kind(box(50, 66), 4), kind(box(50, 33), 4)],
    stocks: [{ width: 100, height: 100, forbidden: [], price: 1 }],
  };
  const layout = runNow(searchSheets(problem, { kind: 'steps', steps: 40 }, 1));
  expect(layout.sheets).toHaveLength(2);
  expect(layout.left).toEqual([]);
});
