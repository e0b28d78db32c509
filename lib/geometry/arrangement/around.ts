import type { Slices } from './slices.js';

/** The slices at each vertex, anticlockwise. A half-edge is 2i (slice i leaving its tail) or 2i + 1 (slice i seen from its head);
 * those of vertex v are halves[first[v]] up to halves[first[v + 1]]. */
export interface Around {
  readonly first: Int32Array;
  readonly halves: Int32Array;
}

/** The half-edges of every vertex in anticlockwise order; where there are more than two, from just past the direction -x. */
export function orderAround(slices: Slices): Around {
  const { tail, head, count } = slices;
  const vertices = slices.xs.length;
  const first = new Int32Array(vertices + 1);
  for (let i = 0; i < count; i++) {
    first[tail[i]! + 1]!++;
    first[head[i]! + 1]!++;
  }
  for (let v = 0; v < vertices; v++) first[v + 1]! += first[v]!;
  const halves = new Int32Array(2 * count);
  const fill = first.slice();
  for (let i = 0; i < count; i++) {
    halves[fill[tail[i]!]!++] = 2 * i;
    halves[fill[head[i]!]!++] = 2 * i + 1;
  }
  const keys: number[] = [];
  for (let v = 0; v < vertices; v++) {
    if (first[v + 1]! - first[v]! > 2) sortVertex(slices, halves, first[v]!, first[v + 1]!, keys);
  }
  return { first, halves };
}

/** Sorts by where each slice crosses a small circle round the vertex. A line, or an arc of at most a half turn, leaves such a circle once,
 * and slices meet only at their ends: so direction and curvature are one comparison, for any circle smaller than the shortest chord. */
function sortVertex(slices: Slices, halves: Int32Array, from: number, to: number, keys: number[]): void {
  let shortest = Infinity;
  for (let k = from; k < to; k++) shortest = Math.min(shortest, chordOf(slices, halves[k]! >> 1));
  for (let k = from; k < to; k++) {
    const h = halves[k]!;
    const key = leaving(slices, h, shortest / 2);
    let slot = k - from;
    while (slot > 0 && keys[slot - 1]! > key) {
      keys[slot] = keys[slot - 1]!;
      halves[from + slot] = halves[from + slot - 1]!;
      slot--;
    }
    keys[slot] = key;
    halves[from + slot] = h;
  }
}

/** Length of a slice's chord. */
export function chordOf(slices: Slices, i: number): number {
  const { xs, ys } = slices;
  const dx = xs[slices.head[i]!]! - xs[slices.tail[i]!]!;
  const dy = ys[slices.head[i]!]! - ys[slices.tail[i]!]!;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Where, seen from its vertex, a half-edge crosses a circle about it: a number from -2 to 2 that rises anticlockwise from -x. */
function leaving(slices: Slices, half: number, radius: number): number {
  const i = half >> 1;
  const { xs, ys } = slices;
  const forward = (half & 1) === 0;
  const v = forward ? slices.tail[i]! : slices.head[i]!;
  const o = forward ? slices.head[i]! : slices.tail[i]!;
  const dx = xs[o]! - xs[v]!;
  const dy = ys[o]! - ys[v]!;
  const e = slices.edge[i]!;
  const { cx, cy, r } = slices.edges;
  const turn = forward ? slices.edges.turn[e]! : -slices.edges.turn[e]!;
  if (turn === 0) return diamond(dx, dy);
  // from the tangent the arc turns by half the angle it has swept when it crosses the circle
  const sin = (turn * radius) / (2 * r[e]!);
  const cos = Math.sqrt(1 - sin * sin);
  const chord = Math.sqrt(dx * dx + dy * dy);
  if (chord > r[e]!) {
    const tx = -turn * (ys[v]! - cy[e]!);
    const ty = turn * (xs[v]! - cx[e]!);
    return diamond(tx * cos - ty * sin, tx * sin + ty * cos);
  }
  // a short arc's tangent, from its chord: back by half its sweep
  const sinHalf = (turn * chord) / (2 * r[e]!);
  const cosHalf = Math.sqrt(1 - sinHalf * sinHalf);
  const tx = dx * cosHalf + dy * sinHalf;
  const ty = dy * cosHalf - dx * sinHalf;
  return diamond(tx * cos - ty * sin, tx * sin + ty * cos);
}

/** Rises with the angle of a vector, -2 to 2 for -pi to pi: the way round a square instead of a circle. */
const diamond = (x: number, y: number): number => {
  const share = x / (Math.abs(x) + Math.abs(y));
  return y < 0 ? share - 1 : 1 - share;
};
