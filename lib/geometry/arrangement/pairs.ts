import type { Edge } from './edge.js';

/** Calls `visit` once for every two edges whose boxes come within the tolerance of each other, the earlier edge first.
 * A sweep along x; what the sweep line is passing through waits in strips across y, so that only neighbours are looked at. */
export function closePairs(edges: readonly Edge[], tolerance: number, visit: (i: number, j: number) => void): void {
  const strips = stripsFor(edges);
  const waiting: number[][] = Array.from({ length: strips.count }, () => []);
  const stripAt = (y: number): number =>
    Math.min(strips.count - 1, Math.max(0, Math.floor((y - strips.from) / strips.height)));
  for (const i of byLeftEdge(edges)) {
    const e = edges[i]!;
    const left = e.minX - tolerance;
    const low = e.minY - tolerance;
    const high = e.maxY + tolerance;
    const last = stripAt(high);
    for (let s = stripAt(low); s <= last; s++) {
      const list = waiting[s]!;
      let kept = 0;
      for (let k = 0; k < list.length; k++) {
        const j = list[k]!;
        const o = edges[j]!;
        if (o.maxX < left) continue;
        list[kept++] = j;
        // a pair shares several strips: it is told in the first of them
        if (o.minY <= high && o.maxY >= low && s === stripAt(Math.max(low, o.minY - tolerance))) {
          visit(Math.min(i, j), Math.max(i, j));
        }
      }
      list.length = kept;
      list.push(i);
    }
  }
}

/** Strips about twice as high as the edges are on average. */
function stripsFor(edges: readonly Edge[]): { readonly from: number; readonly height: number; readonly count: number } {
  let from = Infinity;
  let to = -Infinity;
  let heights = 0;
  for (const e of edges) {
    from = Math.min(from, e.minY);
    to = Math.max(to, e.maxY);
    heights += e.maxY - e.minY;
  }
  const mean = (2 * heights) / edges.length;
  const count = Math.max(1, Math.min(Math.ceil(edges.length / 8), Math.floor((to - from) / mean) || 1));
  return { from, height: (to - from) / count || 1, count };
}

/** Edges in the order of their left ends. */
function byLeftEdge(edges: readonly Edge[]): Uint32Array {
  const order = new Uint32Array(edges.length);
  const lefts = new Float64Array(edges.length);
  for (let i = 0; i < order.length; i++) {
    order[i] = i;
    lefts[i] = edges[i]!.minX;
  }
  return order.sort((i, j) => lefts[i]! - lefts[j]! || i - j);
}
