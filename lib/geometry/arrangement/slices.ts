import type { Edge } from './edge.js';
import { meet } from './meet.js';
import { closePairs } from './pairs.js';
import { vertexMerger } from './vertices.js';

/** The pieces of edges between vertices; no two meet but at vertices, no two are the same curve. Slice i runs from vertex tail[i] to head[i]. */
export interface Slices {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly tail: readonly number[];
  readonly head: readonly number[];
  /** whose carrier it lies on */
  readonly edge: readonly Edge[];
  /** winding on its left less winding on its right: equal edges summed, opposite ones cancelled */
  readonly weight: readonly number[];
}

/** Cuts edges wherever they meet and lays equal pieces over each other. */
export function sliceEdges(edges: readonly Edge[], tolerance: number): Slices {
  const vertices = vertexMerger(tolerance, edges.length * 2);
  const tails = edges.map(e => vertices.at(e.x0, e.y0));
  const heads = edges.map(e => vertices.at(e.x1, e.y1));
  const cuts: (number[] | undefined)[] = new Array(edges.length);
  const cut = (i: number, v: number): void => {
    if (v === tails[i] || v === heads[i]) return;
    const list = cuts[i];
    if (!list) cuts[i] = [v];
    else if (!list.includes(v)) list.push(v);
  };
  closePairs(edges, tolerance, (i, j) =>
    meet(edges[i]!, edges[j]!, tolerance, (x, y, onA, onB) => {
      const v = vertices.at(x, y);
      if (onA) cut(i, v);
      if (onB) cut(j, v);
    }),
  );
  const { xs, ys } = vertices;
  const layer = layering(xs, ys, tolerance);
  edges.forEach((e, i) => {
    let from = tails[i]!;
    const list = cuts[i];
    for (const v of list ? inOrder(e, list, xs, ys) : []) {
      layer.add(from, v, e);
      from = v;
    }
    layer.add(from, heads[i]!, e);
  });
  return layer.finish();
}

/** Vertices on an edge in the order of its travel. Along an arc: 1 - cos of the angle from its start, made to grow evenly. */
function inOrder(e: Edge, list: number[], xs: readonly number[], ys: readonly number[]): number[] {
  if (list.length === 1) return list;
  const key = e.turn === 0 ? alongLine(e) : alongArc(e);
  return list
    .map(v => ({ v, at: key(xs[v]!, ys[v]!) }))
    .sort((p, q) => p.at - q.at)
    .map(p => p.v);
}

const alongLine =
  (e: Edge) =>
  (x: number, y: number): number =>
    (x - e.x0) * (e.x1 - e.x0) + (y - e.y0) * (e.y1 - e.y0);

/** Rises with the angle from the arc's start, from just before it to just past a half turn. */
const alongArc = (e: Edge) => {
  const ux = e.x0 - e.cx;
  const uy = e.y0 - e.cy;
  return (x: number, y: number): number => {
    const c = ux * (x - e.cx) + uy * (y - e.cy);
    const s = e.turn * (ux * (y - e.cy) - uy * (x - e.cx));
    const share = c / (Math.abs(c) + Math.abs(s));
    if (s >= 0) return 1 - share;
    return c > 0 ? share - 1 : 3 + share;
  };
};

/** Collects slices, adding the weight of one to another between the same vertices along the same curve. */
function layering(xs: readonly number[], ys: readonly number[], tolerance: number) {
  const tail: number[] = [];
  const head: number[] = [];
  const edge: Edge[] = [];
  const weight: number[] = [];
  const byEnds = new Map<number, number[]>();
  const middle = (i: number): readonly [number, number] =>
    sliceMiddle(edge[i]!, xs[tail[i]!]!, ys[tail[i]!]!, xs[head[i]!]!, ys[head[i]!]!);
  const same = (i: number, j: number): boolean => {
    const [xi, yi] = middle(i);
    const [xj, yj] = middle(j);
    return Math.hypot(xi - xj, yi - yj) <= 2 * tolerance;
  };
  const add = (from: number, to: number, e: Edge): void => {
    if (from === to) return;
    const i = tail.length;
    tail.push(from);
    head.push(to);
    edge.push(e);
    weight.push(e.weight);
    const key = from < to ? from * xs.length + to : to * xs.length + from;
    const others = byEnds.get(key);
    if (!others) {
      byEnds.set(key, [i]);
      return;
    }
    const twin = others.find(j => same(i, j));
    if (twin === undefined) others.push(i);
    else {
      weight[twin]! += tail[twin] === from ? e.weight : -e.weight;
      for (const list of [tail, head, edge, weight]) list.pop();
    }
  };
  const finish = (): Slices => {
    const live = weight.flatMap((w, i) => (w === 0 ? [] : [i]));
    return {
      xs,
      ys,
      tail: live.map(i => tail[i]!),
      head: live.map(i => head[i]!),
      edge: live.map(i => edge[i]!),
      weight: live.map(i => weight[i]!),
    };
  };
  return { add, finish };
}

/** The point half way along a slice: from its ends if it is short (their chord is near it), from its centre if it is long. */
export function sliceMiddle(e: Edge, x0: number, y0: number, x1: number, y1: number): readonly [number, number] {
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
