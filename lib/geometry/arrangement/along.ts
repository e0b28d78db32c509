import type { Edges } from './edges.js';

/** Sorts the vertices at[first] up to at[end], all on edge i, into the order of its travel. `keys` is working space. */
export function sortAlong(
  e: Edges,
  i: number,
  at: Int32Array,
  first: number,
  end: number,
  xs: readonly number[],
  ys: readonly number[],
  keys: number[],
): void {
  const n = end - first;
  for (let k = 0; k < n; k++) keys[k] = placeOn(e, i, xs[at[first + k]!]!, ys[at[first + k]!]!);
  if (n > 32) {
    const order = Array.from({ length: n }, (_, k) => k).sort((p, q) => keys[p]! - keys[q]! || p - q);
    const sorted = order.map(k => at[first + k]!);
    at.set(sorted, first);
    return;
  }
  for (let k = 1; k < n; k++) {
    const key = keys[k]!;
    const v = at[first + k]!;
    let slot = k;
    while (slot > 0 && keys[slot - 1]! > key) {
      keys[slot] = keys[slot - 1]!;
      at[first + slot] = at[first + slot - 1]!;
      slot--;
    }
    keys[slot] = key;
    at[first + slot] = v;
  }
}

/** A number that rises along an edge; for an arc evenly enough from just before its start to just past a half turn. */
function placeOn(e: Edges, i: number, x: number, y: number): number {
  const x0 = e.x0[i]!;
  const y0 = e.y0[i]!;
  const turn = e.turn[i]!;
  if (turn === 0) return (x - x0) * (e.x1[i]! - x0) + (y - y0) * (e.y1[i]! - y0);
  const cx = e.cx[i]!;
  const cy = e.cy[i]!;
  const c = (x0 - cx) * (x - cx) + (y0 - cy) * (y - cy);
  const s = turn * ((x0 - cx) * (y - cy) - (y0 - cy) * (x - cx));
  const share = c / (Math.abs(c) + Math.abs(s));
  if (s >= 0) return 1 - share;
  return c > 0 ? share - 1 : 3 + share;
}

/** The point half way from one point to another along the carrier of edge i, in the sense of `turn`: from the two points if they are
 * near each other (the arc is near its chord), from the centre if they are far apart. */
export function middleOf(
  e: Edges,
  i: number,
  turn: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): readonly [number, number] {
  const mx = (x0 + x1) / 2;
  const my = (y0 + y1) / 2;
  if (turn === 0) return [mx, my];
  const r = e.r[i]!;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const nx = (turn * dy) / chord;
  const ny = (-turn * dx) / chord;
  if (chord > r) return [e.cx[i]! + nx * r, e.cy[i]! + ny * r];
  const sagitta = (chord * chord) / 4 / (r + Math.sqrt(r * r - (chord * chord) / 4));
  return [mx + nx * sagitta, my + ny * sagitta];
}

/** The bulge from one point to another along the carrier of edge i in the sense of `turn`, for at most a half turn: half the chord over
 * radius and apothem. Negative apothems, past a half turn, are for the caller to look at first. */
export function bulgeBetween(
  e: Edges,
  i: number,
  turn: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): { readonly bulge: number; readonly apothem: number } {
  const cx = e.cx[i]!;
  const cy = e.cy[i]!;
  const chord = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
  const apothem = (turn * ((x0 - cx) * (y1 - cy) - (y0 - cy) * (x1 - cx))) / chord;
  return { bulge: turn * Math.min(1, chord / 2 / (e.r[i]! + apothem)), apothem };
}
