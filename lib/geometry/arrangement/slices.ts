import type { Edges } from './edges.js';
import { layEqual } from './layers.js';
import { meet } from './meet.js';
import { closePairs } from './pairs.js';
import { vertexMerger } from './vertices.js';

/** The pieces of edges between vertices; no two meet but at vertices, no two are the same curve. Slice i runs from vertex tail[i] to head[i]. */
export interface Slices {
  readonly edges: Edges;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly count: number;
  readonly tail: Int32Array;
  readonly head: Int32Array;
  /** the row of the edge whose carrier it lies on */
  readonly edge: Int32Array;
  /** winding on its left less winding on its right: equal edges summed, opposite ones cancelled */
  readonly weight: Float64Array;
  /** the tag of the first edge that lies here and has one, by its place in edges.mates; 0: none */
  readonly mate: Int32Array;
}

/** Cuts edges wherever they meet and lays equal pieces over each other. */
export function sliceEdges(edges: Edges, tolerance: number): Slices {
  const n = edges.count;
  const vertices = vertexMerger(tolerance, n * 2);
  const { x0, y0, x1, y1 } = edges;
  const tails = new Int32Array(n);
  const heads = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    const goesOn = i > 0 && x1[i - 1] === x0[i] && y1[i - 1] === y0[i];
    tails[i] = goesOn ? heads[i - 1]! : vertices.at(x0[i]!, y0[i]!);
    heads[i] = vertices.at(x1[i]!, y1[i]!);
  }
  const cutEdge: number[] = [];
  const cutVertex: number[] = [];
  const cut = (i: number, v: number): void => {
    if (v === tails[i] || v === heads[i]) return;
    cutEdge.push(i);
    cutVertex.push(v);
  };
  closePairs(edges, 0, n, tolerance, (i, j) =>
    meet(edges, i, j, tolerance, (x, y, onA, onB) => {
      const v = vertices.at(x, y);
      if (onA) cut(i, v);
      if (onB) cut(j, v);
    }),
  );
  return layEqual(edges, tails, heads, grouped(cutEdge, cutVertex, n), vertices, tolerance);
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
