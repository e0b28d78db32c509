import type { Edge } from './edge.js';

/** Sorts the vertices at[first] up to at[end], all on one edge, into the order of its travel. `keys` is working space. */
export function sortAlong(
  e: Edge,
  at: Int32Array,
  first: number,
  end: number,
  xs: readonly number[],
  ys: readonly number[],
  keys: number[],
): void {
  const n = end - first;
  for (let k = 0; k < n; k++) keys[k] = placeOn(e, xs[at[first + k]!]!, ys[at[first + k]!]!);
  if (n > 32) {
    const order = Array.from({ length: n }, (_, k) => k).sort((p, q) => keys[p]! - keys[q]! || p - q);
    at.set(
      order.map(k => at[first + k]!),
      first,
    );
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
function placeOn(e: Edge, x: number, y: number): number {
  if (e.turn === 0) return (x - e.x0) * (e.x1 - e.x0) + (y - e.y0) * (e.y1 - e.y0);
  const ux = e.x0 - e.cx;
  const uy = e.y0 - e.cy;
  const c = ux * (x - e.cx) + uy * (y - e.cy);
  const s = e.turn * (ux * (y - e.cy) - uy * (x - e.cx));
  const share = c / (Math.abs(c) + Math.abs(s));
  if (s >= 0) return 1 - share;
  return c > 0 ? share - 1 : 3 + share;
}

/** The point half way along a slice of an edge from one point to another: from its ends if it is short (their chord is near it),
 * from its centre if it is long. */
export function middleOf(e: Edge, x0: number, y0: number, x1: number, y1: number): readonly [number, number] {
  const mx = (x0 + x1) / 2;
  const my = (y0 + y1) / 2;
  if (e.turn === 0) return [mx, my];
  const dx = x1 - x0;
  const dy = y1 - y0;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const nx = (e.turn * dy) / chord;
  const ny = (-e.turn * dx) / chord;
  if (chord > e.r) return [e.cx + nx * e.r, e.cy + ny * e.r];
  const sagitta = (chord * chord) / 4 / (e.r + Math.sqrt(e.r * e.r - (chord * chord) / 4));
  return [mx + nx * sagitta, my + ny * sagitta];
}
