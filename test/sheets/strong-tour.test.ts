import { expect, test } from 'vitest';
import { distance } from '../../lib/geometry/point.js';
import { precedence } from '../../lib/sheets/precedence.js';
import { tour, travel } from '../../lib/sheets/tour.js';
import { type Reach, reachOf, type Work } from '../../lib/sheets/work.js';
import { randomModels } from '../models/random-models.js';
import { finishedSheets } from './finished.js';

// A judge of its own: 2-opt and Or-opt over whole orders, every move tried and the order measured anew each time, from many random starts.

const HOME = { x: 0, y: 0 };
const STARTS = 20;

/** A small generator of its own; source: Park and Miller, "Random number generators", Communications of the ACM 31 (1988). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const measure = (reaches: readonly Reach[], order: readonly number[]): number => {
  let at = HOME;
  let sum = 0;
  for (const task of order) {
    sum += distance(at, reaches[task]!.from);
    at = reaches[task]!.to;
  }
  return sum;
};

function legal(order: readonly number[], after: readonly (readonly number[])[]): boolean {
  const place: number[] = [];
  order.forEach((task, i) => {
    place[task] = i;
  });
  return order.every(task => after[task]!.every(later => place[later]! > place[task]!));
}

/** Every order one move away. */
function* moves(order: readonly number[]): Generator<number[]> {
  const n = order.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++)
      yield [...order.slice(0, i), ...order.slice(i, j + 1).reverse(), ...order.slice(j + 1)];
  for (let i = 0; i < n; i++)
    for (let size = 1; size <= 3 && i + size <= n; size++) {
      const rest = [...order.slice(0, i), ...order.slice(i + size)];
      for (let k = 0; k <= rest.length; k++) yield [...rest.slice(0, k), ...order.slice(i, i + size), ...rest.slice(k)];
    }
}

function improved(reaches: readonly Reach[], after: readonly (readonly number[])[], start: readonly number[]): number {
  let order = start;
  let best = measure(reaches, order);
  for (let again = true; again; ) {
    again = false;
    for (const other of moves(order)) {
      const length = measure(reaches, other);
      if (length > best - 1e-6 || !legal(other, after)) continue;
      [order, best, again] = [other, length, true];
      break;
    }
  }
  return best;
}

function randomOrder(after: readonly (readonly number[])[], next: () => number): number[] {
  const waits = after.map((_, i) => after.filter(later => later.includes(i)).length);
  const order: number[] = [];
  while (order.length < after.length) {
    const free = waits.flatMap((w, i) => (w === 0 && !order.includes(i) ? [i] : []));
    const task = free[Math.floor(next() * free.length)]!;
    order.push(task);
    for (const later of after[task]!) waits[later]!--;
  }
  return order;
}

const profiles = (works: readonly Work[]): Work[] => works.filter(w => w.kind === 'inside' || w.kind === 'outside');

const SHEETS = [
  ['helm-wheel', 2],
  ['stand', 3],
  ['water-wheel', 4],
  ['cable-reel', 1],
  ['prize-wheel', 2],
] as const;

test('profiles of five sheets are at most a tenth longer than the best of many strong tours', () => {
  for (const [model, seed] of SHEETS) {
    const [finished] = finishedSheets(randomModels[model]!(seed, 'router'), {})
      .map(f => profiles(f.first.works).slice(0, 26))
      .sort((a, b) => b.length - a.length);
    const works = finished!;
    const reaches = works.map(reachOf);
    const after = precedence(works);
    const next = random(seed);
    const best = Math.min(...Array.from({ length: STARTS }, () => improved(reaches, after, randomOrder(after, next))));
    const tasks = { reaches, after, tools: works.map(() => 0), start: HOME };
    const found = travel(tasks, tour(tasks));
    expect(found / best, `${model}: ${found} against ${best} over ${works.length}`).toBeLessThanOrEqual(1.1);
  }
}, 120_000);
