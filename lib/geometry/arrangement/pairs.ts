/** Upright boxes in columns. */
export interface Boxes {
  readonly minX: ArrayLike<number>;
  readonly minY: ArrayLike<number>;
  readonly maxX: ArrayLike<number>;
  readonly maxY: ArrayLike<number>;
}

/** Few enough boxes to hold each against each. */
const FEW = 24;

/** Calls `visit` once for every two of the boxes `from` up to `to` that come within the tolerance of each other, the earlier box first.
 * A sweep along x; what the sweep line is passing through waits in strips across y, so that only neighbours are looked at. */
export function closePairs(
  boxes: Boxes,
  from: number,
  to: number,
  tolerance: number,
  visit: (i: number, j: number) => void,
): void {
  const { minX, minY, maxX, maxY } = boxes;
  if (to - from <= FEW) {
    fewPairs(boxes, from, to, tolerance, visit);
    return;
  }
  const strips = stripsFor(boxes, from, to);
  const waiting: number[][] = Array.from({ length: strips.count }, () => []);
  const counts = new Int32Array(strips.count);
  const stripAt = (y: number): number =>
    Math.min(strips.count - 1, Math.max(0, Math.floor((y - strips.from) / strips.height)));
  for (const i of byLeftSide(minX, from, to)) {
    const left = minX[i]! - tolerance;
    const low = minY[i]! - tolerance;
    const high = maxY[i]! + tolerance;
    const last = stripAt(high);
    for (let s = stripAt(low); s <= last; s++) {
      const list = waiting[s]!;
      let kept = 0;
      for (let k = 0; k < counts[s]!; k++) {
        const j = list[k]!;
        if (maxX[j]! < left) continue;
        list[kept++] = j;
        // a pair shares several strips: it is told in the first of them
        if (minY[j]! <= high && maxY[j]! >= low && s === stripAt(Math.max(low, minY[j]! - tolerance))) {
          visit(Math.min(i, j), Math.max(i, j));
        }
      }
      list[kept] = i;
      counts[s] = kept + 1;
    }
  }
}

function fewPairs(
  { minX, minY, maxX, maxY }: Boxes,
  from: number,
  to: number,
  tolerance: number,
  visit: (i: number, j: number) => void,
): void {
  for (let i = from; i < to; i++) {
    const left = minX[i]! - tolerance;
    const right = maxX[i]! + tolerance;
    const low = minY[i]! - tolerance;
    const high = maxY[i]! + tolerance;
    for (let j = i + 1; j < to; j++) {
      if (minX[j]! <= right && maxX[j]! >= left && minY[j]! <= high && maxY[j]! >= low) visit(i, j);
    }
  }
}

/** Strips about twice as high as the boxes are on average. */
function stripsFor({ minY, maxY }: Boxes, first: number, end: number): { from: number; height: number; count: number } {
  let from = Infinity;
  let to = -Infinity;
  let heights = 0;
  for (let i = first; i < end; i++) {
    from = Math.min(from, minY[i]!);
    to = Math.max(to, maxY[i]!);
    heights += maxY[i]! - minY[i]!;
  }
  const boxes = end - first;
  const mean = (2 * heights) / boxes;
  const count = Math.max(1, Math.min(Math.ceil(boxes / 8), Math.floor((to - from) / mean) || 1));
  return { from, height: (to - from) / count || 1, count };
}

/** Boxes in the order of their left sides: dealt into as many columns as there are boxes, then put right within the columns. */
function byLeftSide(lefts: ArrayLike<number>, first: number, end: number): Uint32Array {
  let from = Infinity;
  let to = -Infinity;
  for (let i = first; i < end; i++) {
    from = Math.min(from, lefts[i]!);
    to = Math.max(to, lefts[i]!);
  }
  const n = end - first;
  const perMm = to > from ? (n - 1) / (to - from) : 0;
  const fill = new Uint32Array(n + 1);
  for (let i = first; i < end; i++) fill[Math.floor((lefts[i]! - from) * perMm) + 1]!++;
  let most = 0;
  for (let c = 0; c < n; c++) {
    most = Math.max(most, fill[c + 1]!);
    fill[c + 1]! += fill[c]!;
  }
  const order = new Uint32Array(n);
  for (let i = first; i < end; i++) order[fill[Math.floor((lefts[i]! - from) * perMm)]!++] = i;
  if (most > 64) return order.sort((i, j) => lefts[i]! - lefts[j]! || i - j);
  for (let k = 1; k < n; k++) {
    const i = order[k]!;
    const left = lefts[i]!;
    let slot = k;
    while (slot > 0 && lefts[order[slot - 1]!]! > left) {
      order[slot] = order[slot - 1]!;
      slot--;
    }
    order[slot] = i;
  }
  return order;
}
