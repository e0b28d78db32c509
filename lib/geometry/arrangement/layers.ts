import { middleOf, sortAlong } from './along.js';
import type { Edge } from './edge.js';
import type { Cuts, Slices } from './slices.js';
import type { Vertices } from './vertices.js';

/** The slices of all edges, the weight of one added to another that lies along the same curve between the same vertices. */
export function layEqual(
  edges: readonly Edge[],
  tails: Int32Array,
  heads: Int32Array,
  cuts: Cuts,
  vertices: Vertices,
  tolerance: number,
): Slices {
  const { xs, ys } = vertices;
  const layers = layering(vertices, edges.length + cuts.at.length, tolerance);
  const keys: number[] = [];
  for (let i = 0; i < edges.length; i++) {
    const first = cuts.first[i]!;
    const end = cuts.first[i + 1]!;
    if (end - first > 1) sortAlong(edges[i]!, cuts.at, first, end, xs, ys, keys);
    let from = tails[i]!;
    for (let k = first; k < end; k++) {
      const to = cuts.at[k]!;
      if (to !== from) layers.add(from, to, edges[i]!);
      from = to;
    }
    if (from !== heads[i]) layers.add(from, heads[i]!, edges[i]!);
  }
  return layers.finish();
}

/** Collects slices; those with a common lower vertex are in one chain, so that an equal one is soon found. */
function layering({ xs, ys }: Vertices, most: number, tolerance: number) {
  const tail = new Int32Array(most);
  const head = new Int32Array(most);
  const weight = new Float64Array(most);
  const edge: Edge[] = [];
  const chain = new Int32Array(xs.length).fill(-1);
  const next = new Int32Array(most);

  const sameCurve = (k: number, from: number, to: number, e: Edge): boolean => {
    const other = edge[k]!;
    if (e.turn === 0 && other.turn === 0) return true;
    const [ax, ay] = middleOf(e, xs[from]!, ys[from]!, xs[to]!, ys[to]!);
    const [bx, by] = middleOf(other, xs[tail[k]!]!, ys[tail[k]!]!, xs[head[k]!]!, ys[head[k]!]!);
    return Math.abs(ax - bx) <= 2 * tolerance && Math.abs(ay - by) <= 2 * tolerance;
  };

  const add = (from: number, to: number, e: Edge): void => {
    const low = Math.min(from, to);
    for (let k = chain[low]!; k >= 0; k = next[k]!) {
      if (tail[k]! + head[k]! !== from + to || !sameCurve(k, from, to, e)) continue;
      weight[k]! += tail[k] === from ? e.weight : -e.weight;
      return;
    }
    const count = edge.length;
    tail[count] = from;
    head[count] = to;
    weight[count] = e.weight;
    next[count] = chain[low]!;
    chain[low] = count;
    edge.push(e);
  };

  /** Drops slices whose weights cancelled: the winding is the same on both sides. */
  const finish = (): Slices => {
    let count = 0;
    for (let i = 0; i < edge.length; i++) {
      if (weight[i] === 0) continue;
      tail[count] = tail[i]!;
      head[count] = head[i]!;
      weight[count] = weight[i]!;
      edge[count++] = edge[i]!;
    }
    edge.length = count;
    return { xs, ys, count, tail, head, edge, weight };
  };
  return { add, finish };
}
