import { middleOf, sortAlong } from './along.js';
import type { Edges } from './edges.js';
import type { Cuts, Slices } from './slices.js';
import type { Vertices } from './vertices.js';

/** The slices of all edges, the weight of one added to another that lies along the same curve between the same vertices; of their tags the
 * first stays. */
export function layEqual(
  edges: Edges,
  tails: Int32Array,
  heads: Int32Array,
  cuts: Cuts,
  vertices: Vertices,
  tolerance: number,
): Slices {
  const layers = layering(edges, vertices, edges.count + cuts.at.length, tolerance);
  const keys: number[] = [];
  for (let i = 0; i < edges.count; i++) {
    const first = cuts.first[i]!;
    const end = cuts.first[i + 1]!;
    if (end - first > 1) sortAlong(edges, i, cuts.at, first, end, vertices.xs, vertices.ys, keys);
    let from = tails[i]!;
    for (let k = first; k < end; k++) {
      const to = cuts.at[k]!;
      if (to !== from) layers.add(from, to, i);
      from = to;
    }
    if (from !== heads[i]) layers.add(from, heads[i]!, i);
  }
  return layers.finish();
}

/** Collects slices; those with a common lower vertex are in one chain, so that an equal one is soon found. */
function layering(edges: Edges, { xs, ys }: Vertices, most: number, tolerance: number) {
  const tail = new Int32Array(most);
  const head = new Int32Array(most);
  const edge = new Int32Array(most);
  const weight = new Float64Array(most);
  const mate = new Int32Array(most);
  const chain = new Int32Array(xs.length).fill(-1);
  const next = new Int32Array(most);
  let count = 0;

  const middle = (e: number, from: number, to: number): readonly [number, number] =>
    middleOf(edges, e, edges.turn[e]!, xs[from]!, ys[from]!, xs[to]!, ys[to]!);

  const sameCurve = (k: number, from: number, to: number, e: number): boolean => {
    if (edges.turn[e] === 0 && edges.turn[edge[k]!] === 0) return true;
    const [ax, ay] = middle(e, from, to);
    const [bx, by] = middle(edge[k]!, tail[k]!, head[k]!);
    return Math.abs(ax - bx) <= 2 * tolerance && Math.abs(ay - by) <= 2 * tolerance;
  };

  const add = (from: number, to: number, e: number): void => {
    const low = Math.min(from, to);
    for (let k = chain[low]!; k >= 0; k = next[k]!) {
      if (tail[k]! + head[k]! !== from + to || !sameCurve(k, from, to, e)) continue;
      weight[k]! += tail[k] === from ? edges.weight[e]! : -edges.weight[e]!;
      if (mate[k] === 0) mate[k] = edges.mate[e]!;
      return;
    }
    tail[count] = from;
    head[count] = to;
    edge[count] = e;
    weight[count] = edges.weight[e]!;
    mate[count] = edges.mate[e]!;
    next[count] = chain[low]!;
    chain[low] = count++;
  };

  /** Drops slices whose weights cancelled: the winding is the same on both sides. */
  const finish = (): Slices => {
    let kept = 0;
    for (let i = 0; i < count; i++) {
      if (weight[i] === 0) continue;
      tail[kept] = tail[i]!;
      head[kept] = head[i]!;
      weight[kept] = weight[i]!;
      mate[kept] = mate[i]!;
      edge[kept++] = edge[i]!;
    }
    return { edges, xs, ys, count: kept, tail, head, edge, weight, mate };
  };
  return { add, finish };
}
