import type { Slices } from './slices.js';

/** The slices at each vertex, anticlockwise. A half-edge is 2i (slice i leaving its tail) or 2i + 1 (slice i seen from its head);
 * those of vertex v are halves[first[v]] up to halves[first[v + 1]]. */
export interface Around {
  readonly first: Int32Array;
  readonly halves: Int32Array;
}

/** The half-edges of every vertex in anticlockwise order. */
export function orderAround(slices: Slices): Around {
  const { tail, head, xs } = slices;
  const first = new Int32Array(xs.length + 1);
  for (let i = 0; i < tail.length; i++) {
    first[tail[i]! + 1]!++;
    first[head[i]! + 1]!++;
  }
  for (let v = 0; v < xs.length; v++) first[v + 1]! += first[v]!;
  const halves = new Int32Array(2 * tail.length);
  const fill = first.slice();
  for (let i = 0; i < tail.length; i++) {
    halves[fill[tail[i]!]!++] = 2 * i;
    halves[fill[head[i]!]!++] = 2 * i + 1;
  }
  for (let v = 0; v < xs.length; v++) {
    const from = first[v]!;
    const to = first[v + 1]!;
    if (to - from > 2) sortVertex(slices, halves, from, to);
  }
  return { first, halves };
}

/** Sorts by where each slice crosses a small circle round the vertex. A line, or an arc of at most a half turn, leaves such a circle once,
 * and slices meet only at their ends: so direction and curvature are one comparison, for any circle smaller than the shortest chord. */
function sortVertex(slices: Slices, halves: Int32Array, from: number, to: number): void {
  let shortest = Infinity;
  for (let k = from; k < to; k++) shortest = Math.min(shortest, chordOf(slices, halves[k]! >> 1));
  const sorted = Array.from(halves.subarray(from, to), h => ({ h, angle: leaving(slices, h, shortest / 2) }));
  sorted.sort((a, b) => a.angle - b.angle || a.h - b.h);
  for (let k = from; k < to; k++) halves[k] = sorted[k - from]!.h;
}

/** Length of a slice's chord. */
export function chordOf(slices: Slices, i: number): number {
  const { xs, ys } = slices;
  const t = slices.tail[i]!;
  const h = slices.head[i]!;
  return Math.hypot(xs[h]! - xs[t]!, ys[h]! - ys[t]!);
}

/** The angle, seen from the vertex, at which a half-edge crosses a circle about it; -pi to pi. */
export function leaving(slices: Slices, half: number, radius: number): number {
  const i = half >> 1;
  const { xs, ys } = slices;
  const forward = (half & 1) === 0;
  const v = forward ? slices.tail[i]! : slices.head[i]!;
  const o = forward ? slices.head[i]! : slices.tail[i]!;
  const dx = xs[o]! - xs[v]!;
  const dy = ys[o]! - ys[v]!;
  const e = slices.edge[i]!;
  if (e.turn === 0) return Math.atan2(dy, dx);
  const turn = forward ? e.turn : -e.turn;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const away = Math.asin(Math.min(1, radius / (2 * e.r)));
  if (chord > e.r) return wrap(Math.atan2(turn * (xs[v]! - e.cx), -turn * (ys[v]! - e.cy)) + turn * away);
  return wrap(Math.atan2(dy, dx) - turn * (Math.asin(chord / (2 * e.r)) - away));
}

const wrap = (a: number): number => (a > Math.PI ? a - 2 * Math.PI : a <= -Math.PI ? a + 2 * Math.PI : a);
