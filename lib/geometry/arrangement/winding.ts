import { type Around, chordOf, leaving } from './around.js';
import { sideOf, windingOf } from './ray.js';
import type { Slices } from './slices.js';
import { type Strips, stripAt, stripsOf } from './strips.js';

/** The weight of an edge of the second operand: both winding numbers travel in one number, first + SECOND * second. */
export const SECOND = 2 ** 24;

/** The two winding numbers packed in one. */
export function unpack(winding: number): readonly [number, number] {
  const second = Math.round(winding / SECOND);
  return [winding - second * SECOND, second];
}

/** The winding on the left of every slice, or the vertex where two ways of working it out disagree. */
export type Windings = { readonly left: Float64Array } | { readonly conflict: number };

/** Windings spread from slice to slice round the vertices of each connected piece; one ray a piece sets its level. */
export function windings(slices: Slices, around: Around): Windings {
  const n = slices.count;
  const left = new Float64Array(n).fill(Number.NaN);
  const piece = new Int32Array(n);
  const levels: number[] = [];
  const members: number[][] = [];
  for (let i = 0; i < n; i++) {
    if (!Number.isNaN(left[i]!)) continue;
    const spread = spreadFrom(slices, around, i, left);
    if ('conflict' in spread) return spread;
    for (const m of spread.members) piece[m] = members.length;
    members.push(spread.members);
  }
  const index = members.length > 1 ? stripsOf(slices, members.length) : undefined;
  members.forEach((own, p) => {
    const outside = leftmostOf(slices, around, own, left);
    const others = index ? windingAt(slices, index, piece, p, outside.x, outside.y) : 0;
    levels.push(others - outside.winding);
  });
  for (let i = 0; i < n; i++) left[i]! += levels[piece[i]!]!;
  return { left };
}

/** Gives every slice connected to the first its winding, taking the first's left to be 0. */
function spreadFrom(
  slices: Slices,
  around: Around,
  start: number,
  left: Float64Array,
): { members: number[] } | { conflict: number } {
  const { tail, head, weight } = slices;
  const { first, halves } = around;
  const members = [start];
  left[start] = 0;
  for (let m = 0; m < members.length; m++) {
    const i = members[m]!;
    for (let half = 2 * i; half <= 2 * i + 1; half++) {
      const v = half & 1 ? head[i]! : tail[i]!;
      const from = first[v]!;
      const to = first[v + 1]!;
      let k = from;
      while (halves[k] !== half) k++;
      // the winding just anticlockwise of a half-edge: the left of one leaving, the right of one arriving
      let winding = half & 1 ? left[i]! - weight[i]! : left[i]!;
      for (let step = from + 1; step < to; step++) {
        k = k + 1 < to ? k + 1 : from;
        const h = halves[k]!;
        const j = h >> 1;
        const leftOfJ = h & 1 ? winding : winding + weight[j]!;
        winding = h & 1 ? winding - weight[j]! : leftOfJ;
        if (Number.isNaN(left[j]!)) {
          left[j] = leftOfJ;
          members.push(j);
        } else if (left[j] !== leftOfJ) return { conflict: v };
      }
    }
  }
  return { members };
}

/** The leftmost point of a connected piece and the winding beyond it. */
function leftmostOf(slices: Slices, around: Around, own: readonly number[], left: Float64Array) {
  const { tail, head, xs, ys, edge, weight } = slices;
  let x = Infinity;
  let vertex = -1;
  let bulging = -1;
  for (const i of own) {
    for (const v of [tail[i]!, head[i]!]) {
      if (xs[v]! >= x) continue;
      x = xs[v]!;
      vertex = v;
    }
  }
  const { turn, cx, cy, r } = slices.edges;
  for (const i of own) {
    const e = edge[i]!;
    if (turn[e] === 0 || cx[e]! - r[e]! >= x) continue;
    const t = tail[i]!;
    const h = head[i]!;
    if (turn[e]! * sideOf(xs[t]!, ys[t]!, xs[h]!, ys[h]!, cx[e]! - r[e]!, cy[e]!) >= 0) continue;
    x = cx[e]! - r[e]!;
    bulging = i;
  }
  // at its leftmost point an anticlockwise arc has the outside on its right
  if (bulging >= 0) {
    const e = edge[bulging]!;
    return { x, y: cy[e]!, winding: turn[e]! > 0 ? left[bulging]! - weight[bulging]! : left[bulging]! };
  }
  const half = lastBefore(slices, around, vertex);
  const i = half >> 1;
  return { x, y: ys[vertex]!, winding: half & 1 ? left[i]! - weight[i]! : left[i]! };
}

/** The half-edge at a leftmost vertex that has the direction -x just anticlockwise of it: none leaves leftward, so the one of greatest angle. */
function lastBefore(slices: Slices, around: Around, v: number): number {
  const own = around.halves.subarray(around.first[v]!, around.first[v + 1]!);
  let shortest = Infinity;
  for (const h of own) shortest = Math.min(shortest, chordOf(slices, h >> 1));
  return own.reduce((a, b) => (leaving(slices, b, shortest / 2) > leaving(slices, a, shortest / 2) ? b : a));
}

/** Winding, about a point, of all slices but those of one piece. */
function windingAt(slices: Slices, index: Strips, piece: Int32Array, except: number, x: number, y: number): number {
  const { edges, tail, head, xs, ys, edge, weight } = slices;
  let winding = 0;
  const s = stripAt(index, y);
  for (let k = index.first[s]!; k < index.first[s + 1]!; k++) {
    const i = index.members[k]!;
    if (piece[i] === except) continue;
    const t = tail[i]!;
    const h = head[i]!;
    winding += weight[i]! * windingOf(edges, edge[i]!, xs[t]!, ys[t]!, xs[h]!, ys[h]!, x, y);
  }
  return winding;
}
