import type { Problem } from './prepared.js';
import { type Effort, type Rounds, scheduleOf, startOf } from './rounds.js';
import type { StripLayout } from './strip.js';
import type { Task } from './task.js';

const EXPLORE = 0.8;

/** Shortest strip found for all shapes of a problem whose only stock is the strip: its width is the length at most.
 * @param seed whole number */
export function* searchStrip(problem: Problem, effort: Effort, seed: number): Rounds<StripLayout> {
  const shapes = problem.kinds.flatMap((k, i) => Array.from({ length: k.quantity }, () => i));
  const started = startOf(effort);
  let best: StripLayout | undefined;
  let stream = 0;
  for (const [phase, from, to] of [
    ['explore', 0, EXPLORE],
    ['press', EXPLORE, 1],
  ] as const) {
    const { searches, rounds, budget } = scheduleOf(effort, started, from, to);
    for (let round = 0; round < rounds; round++) {
      const start: { start?: StripLayout } = best ? { start: best } : {};
      const tasks = Array.from({ length: searches }, (): Task => {
        const strip = { phase, stock: 0, searched: best !== undefined, seed, stream: stream++, ...start };
        return { kind: 'strip', problem, budget: budget(round), shapes, strip };
      });
      const results = yield { tasks, best, share: from + ((to - from) * round) / rounds };
      for (const r of results) if (r.kind === 'strip' && (!best || r.layout.length < best.length)) best = r.layout;
    }
  }
  if (!best) throw new RangeError('a search without results');
  return best;
}
