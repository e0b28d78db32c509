import type { Box } from '../measure.js';

/** Calls `visit` once for every two boxes that come within the tolerance of each other, the earlier box first.
 * A sweep along x; what the sweep line is passing through waits in strips across y, so that only neighbours are looked at. */
export function closePairs(boxes: readonly Box[], tolerance: number, visit: (i: number, j: number) => void): void {
  const strips = stripsFor(boxes);
  const waiting: number[][] = Array.from({ length: strips.count }, () => []);
  const stripAt = (y: number): number =>
    Math.min(strips.count - 1, Math.max(0, Math.floor((y - strips.from) / strips.height)));
  for (const i of byLeftEdge(boxes)) {
    const e = boxes[i]!;
    const left = e.minX - tolerance;
    const low = e.minY - tolerance;
    const high = e.maxY + tolerance;
    const last = stripAt(high);
    for (let s = stripAt(low); s <= last; s++) {
      const list = waiting[s]!;
      let kept = 0;
      for (let k = 0; k < list.length; k++) {
        const j = list[k]!;
        const o = boxes[j]!;
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

/** Strips about twice as high as the boxes are on average. */
function stripsFor(boxes: readonly Box[]): { readonly from: number; readonly height: number; readonly count: number } {
  let from = Infinity;
  let to = -Infinity;
  let heights = 0;
  for (const e of boxes) {
    from = Math.min(from, e.minY);
    to = Math.max(to, e.maxY);
    heights += e.maxY - e.minY;
  }
  const mean = (2 * heights) / boxes.length;
  const count = Math.max(1, Math.min(Math.ceil(boxes.length / 8), Math.floor((to - from) / mean) || 1));
  return { from, height: (to - from) / count || 1, count };
}

/** Edges in the order of their left ends: dealt into as many columns as there are boxes, then put right within the columns. */
function byLeftEdge(boxes: readonly Box[]): Uint32Array {
  const n = boxes.length;
  let from = Infinity;
  let to = -Infinity;
  for (const e of boxes) {
    from = Math.min(from, e.minX);
    to = Math.max(to, e.minX);
  }
  const perMm = to > from ? (n - 1) / (to - from) : 0;
  const first = new Uint32Array(n + 1);
  for (const e of boxes) first[Math.floor((e.minX - from) * perMm) + 1]!++;
  let most = 0;
  for (let c = 0; c < n; c++) {
    most = Math.max(most, first[c + 1]!);
    first[c + 1]! += first[c]!;
  }
  const order = new Uint32Array(n);
  for (let i = 0; i < n; i++) order[first[Math.floor((boxes[i]!.minX - from) * perMm)]!++] = i;
  if (most > 64) return order.sort((i, j) => boxes[i]!.minX - boxes[j]!.minX || i - j);
  for (let k = 1; k < n; k++) {
    const i = order[k]!;
    const left = boxes[i]!.minX;
    let slot = k;
    while (slot > 0 && boxes[order[slot - 1]!]!.minX > left) {
      order[slot] = order[slot - 1]!;
      slot--;
    }
    order[slot] = i;
  }
  return order;
}
