import type { Slices } from './slices.js';

/** The slices at each vertex, anticlockwise. A half-edge is 2i (slice i leaving its tail) or 2i + 1 (slice i seen from its head);
 * those of vertex v are halves[first[v]] up to halves[first[v + 1]]. */
export interface Around {
  readonly first: Int32Array;
  readonly halves: Int32Array;
}

/** Half-edges that leave a vertex within such an angle of each other are compared further out as well. */
const SIDE_BY_SIDE = 1e-3;

/** The half-edges of every vertex in anticlockwise order, from anywhere. */
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
    if (first[v + 1]! - first[v]! <= 2) continue;
    const own = halves.subarray(first[v]!, first[v + 1]!);
    sortVertex(slices, own, keys);
    sortNeighbours(slices, own, keys);
  }
  return { first, halves };
}

/** Sorts by where each slice crosses a small circle round the vertex. A line, or an arc of at most a half turn, leaves such a circle once,
 * and slices meet only at their ends: so direction and curvature are one comparison, for any circle smaller than the shortest chord. */
function sortVertex(slices: Slices, own: Int32Array, keys: number[]): void {
  let shortest = Infinity;
  for (const h of own) shortest = Math.min(shortest, chordOf(slices, h >> 1));
  for (let k = 0; k < own.length; k++) {
    const h = own[k]!;
    const [x, y] = leaving(slices, h, shortest / 2);
    const key = diamond(x, y);
    let slot = k;
    while (slot > 0 && keys[slot - 1]! > key) {
      keys[slot] = keys[slot - 1]!;
      own[slot] = own[slot - 1]!;
      slot--;
    }
    keys[slot] = key;
    own[slot] = h;
  }
}

/** Half-edges that leave side by side are sorted again, each two by a circle as large as both allow: a short slice at the same vertex
 * must not decide their order where they are nearer to each other than the tolerance. */
function sortNeighbours(slices: Slices, own: Int32Array, keys: readonly number[]): void {
  const n = own.length;
  const gap = (k: number): number => (k > 0 ? keys[k]! - keys[k - 1]! : keys[0]! + 4 - keys[n - 1]!);
  let start = -1;
  let close = 0;
  for (let k = 0; k < n; k++) {
    if (gap(k) < SIDE_BY_SIDE) close++;
    else if (start < 0) start = k;
  }
  if (close === 0) return;
  const turned = Array.from(own, (_, k) => (Math.max(0, start) + k) % n);
  const sorted: number[] = [];
  let cluster = 0;
  for (const k of turned) {
    if (sorted.length > 0 && gap(k) >= SIDE_BY_SIDE) cluster = sorted.length;
    let slot = sorted.length;
    while (slot > cluster && before(slices, own[k]!, sorted[slot - 1]!)) slot--;
    sorted.splice(slot, 0, own[k]!);
  }
  own.set(sorted);
}

/** Whether one of two half-edges that leave side by side lies clockwise of the other. */
function before(slices: Slices, h: number, other: number): boolean {
  const radius = Math.min(chordOf(slices, h >> 1), chordOf(slices, other >> 1)) / 2;
  const [x, y] = leaving(slices, h, radius);
  const [ox, oy] = leaving(slices, other, radius);
  return x * oy - y * ox > 0;
}

/** Length of a slice's chord. */
export function chordOf(slices: Slices, i: number): number {
  const { xs, ys } = slices;
  const dx = xs[slices.head[i]!]! - xs[slices.tail[i]!]!;
  const dy = ys[slices.head[i]!]! - ys[slices.tail[i]!]!;
  return Math.sqrt(dx * dx + dy * dy);
}

/** The direction, of any length, in which a half-edge crosses a circle about its vertex. */
function leaving(slices: Slices, half: number, radius: number): readonly [number, number] {
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
  if (turn === 0) return [dx, dy];
  // from the tangent the arc turns by half the angle it has swept when it crosses the circle
  const sin = (turn * radius) / (2 * r[e]!);
  const cos = Math.sqrt(1 - sin * sin);
  const chord = Math.sqrt(dx * dx + dy * dy);
  if (chord > r[e]!) {
    const tx = -turn * (ys[v]! - cy[e]!);
    const ty = turn * (xs[v]! - cx[e]!);
    return [tx * cos - ty * sin, tx * sin + ty * cos];
  }
  // a short arc's tangent, from its chord: back by half its sweep
  const sinHalf = (turn * chord) / (2 * r[e]!);
  const cosHalf = Math.sqrt(1 - sinHalf * sinHalf);
  const tx = dx * cosHalf + dy * sinHalf;
  const ty = dy * cosHalf - dx * sinHalf;
  return [tx * cos - ty * sin, tx * sin + ty * cos];
}

/** Rises with the angle of a vector, -2 to 2 for -pi to pi: the way round a square instead of a circle. */
const diamond = (x: number, y: number): number => {
  const share = x / (Math.abs(x) + Math.abs(y));
  return y < 0 ? share - 1 : 1 - share;
};
