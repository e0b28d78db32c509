import type { Edge } from './edge.js';

/** Calls `visit` once for every two edges whose boxes come within the tolerance of each other. A sweep along x over the boxes. */
export function closePairs(edges: readonly Edge[], tolerance: number, visit: (i: number, j: number) => void): void {
  const n = edges.length;
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => edges[i]!.minX - edges[j]!.minX || i - j);
  const active: number[] = [];
  for (const i of order) {
    const e = edges[i]!;
    const low = e.minY - tolerance;
    const high = e.maxY + tolerance;
    let kept = 0;
    for (let k = 0; k < active.length; k++) {
      const j = active[k]!;
      const o = edges[j]!;
      if (o.maxX < e.minX - tolerance) continue;
      active[kept++] = j;
      if (o.minY <= high && o.maxY >= low) visit(Math.min(i, j), Math.max(i, j));
    }
    active.length = kept;
    active.push(i);
  }
}
