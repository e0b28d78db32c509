import type { Edge } from './edge.js';
import { layEqual } from './layers.js';
import { meet } from './meet.js';
import { closePairs } from './pairs.js';
import { vertexMerger } from './vertices.js';

/** The pieces of edges between vertices; no two meet but at vertices, no two are the same curve. Slice i runs from vertex tail[i] to head[i]. */
export interface Slices {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly count: number;
  readonly tail: Int32Array;
  readonly head: Int32Array;
  /** whose carrier it lies on */
  readonly edge: readonly Edge[];
  /** winding on its left less winding on its right: equal edges summed, opposite ones cancelled */
  readonly weight: Float64Array;
}

/** Cuts edges wherever they meet and lays equal pieces over each other. */
export function sliceEdges(edges: readonly Edge[], tolerance: number): Slices {
  const vertices = vertexMerger(tolerance, edges.length * 2);
  const n = edges.length;
  const tails = new Int32Array(n);
  const heads = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    const e = edges[i]!;
    const before = edges[i - 1];
    const goesOn = before && before.x1 === e.x0 && before.y1 === e.y0;
    tails[i] = goesOn ? heads[i - 1]! : vertices.at(e.x0, e.y0);
    heads[i] = vertices.at(e.x1, e.y1);
  }
  const cutEdge: number[] = [];
  const cutVertex: number[] = [];
  const cut = (i: number, v: number): void => {
    if (v === tails[i] || v === heads[i]) return;
    cutEdge.push(i);
    cutVertex.push(v);
  };
  closePairs(edges, tolerance, (i, j) =>
    meet(edges[i]!, edges[j]!, tolerance, (x, y, onA, onB) => {
      const v = vertices.at(x, y);
      if (onA) cut(i, v);
      if (onB) cut(j, v);
    }),
  );
  const cuts = grouped(cutEdge, cutVertex, n);
  return layEqual(edges, tails, heads, cuts, vertices, tolerance);
}

/** The vertices that cut each edge: those of edge i are at[first[i]] up to at[first[i + 1]], in no order, some of them twice. */
export interface Cuts {
  readonly first: Int32Array;
  readonly at: Int32Array;
}

function grouped(edge: readonly number[], vertex: readonly number[], edges: number): Cuts {
  const first = new Int32Array(edges + 1);
  for (const i of edge) first[i + 1]!++;
  for (let i = 0; i < edges; i++) first[i + 1]! += first[i]!;
  const at = new Int32Array(edge.length);
  const fill = first.slice();
  for (let k = 0; k < edge.length; k++) at[fill[edge[k]!]!++] = vertex[k]!;
  return { first, at };
}
