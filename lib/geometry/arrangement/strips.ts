import type { Slices } from './slices.js';

/** Slices by the strips across y that they reach: those of strip s are members[first[s]] up to members[first[s + 1]]. */
export interface Strips {
  readonly from: number;
  readonly height: number;
  readonly first: Int32Array;
  readonly members: Int32Array;
}

/** The strip a height lies in. */
export const stripAt = (strips: Pick<Strips, 'from' | 'height' | 'first'>, y: number): number =>
  Math.max(0, Math.min(strips.first.length - 2, Math.floor((y - strips.from) / strips.height)));

/** An index for some rays along x: about as many strips as rays, so that neither building nor asking takes long. */
export function stripsOf(slices: Slices, rays: number): Strips {
  const { low, high, from, to } = heights(slices);
  const count = rays < 8 ? 1 : Math.min(rays, 1024);
  const first = new Int32Array(count + 1);
  const strips = { from, height: (to - from) / count || 1, first };
  for (let i = 0; i < slices.count; i++) {
    const last = stripAt(strips, high[i]!);
    for (let s = stripAt(strips, low[i]!); s <= last; s++) first[s + 1]!++;
  }
  for (let s = 0; s < count; s++) first[s + 1]! += first[s]!;
  const members = new Int32Array(first[count]!);
  const fill = first.slice();
  for (let i = 0; i < slices.count; i++) {
    const last = stripAt(strips, high[i]!);
    for (let s = stripAt(strips, low[i]!); s <= last; s++) members[fill[s]!++] = i;
  }
  return { ...strips, members };
}

/** How low and how high each slice reaches: for an arc the box of its whole edge will do. */
function heights(slices: Slices) {
  const { count, tail, head, ys, edge } = slices;
  const { turn, minY, maxY } = slices.edges;
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  let from = Infinity;
  let to = -Infinity;
  for (let i = 0; i < count; i++) {
    const e = edge[i]!;
    const y0 = ys[tail[i]!]!;
    const y1 = ys[head[i]!]!;
    low[i] = turn[e] === 0 ? Math.min(y0, y1) : Math.min(minY[e]!, y0, y1);
    high[i] = turn[e] === 0 ? Math.max(y0, y1) : Math.max(maxY[e]!, y0, y1);
    from = Math.min(from, low[i]!);
    to = Math.max(to, high[i]!);
  }
  return { low, high, from, to };
}
