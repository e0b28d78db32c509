import type { Ring } from './polygon.js';
import type { Pose } from './poses.js';

/** For every pair of poses, where the second may not lie as seen from the first: one convex polygon for each pair of their convex
 * pieces, the Minkowski sum of the one and the other turned half round. A pair is worked out when it is first asked for. */
export interface Tables {
  readonly poses: readonly Pose[];
  readonly count: number;
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** how many convex pieces a pose has */
  readonly pieces: Float64Array;
  /** index in `data` of a pair, at first * count + second; -1 until it is made */
  readonly start: Int32Array;
  /** for each pair the number of its polygons; for each polygon the number of its edges, its box (min x, min y, max x, max y), then
   * for each edge, anticlockwise, the outward normal and how far out along it the edge lies */
  data: Float64Array;
  used: number;
}

/** Numbers before a polygon's edges: their count and its box. */
export const HEAD = 5;

export function tablesOf(poses: readonly Pose[]): Tables {
  const count = poses.length;
  return {
    poses,
    count,
    width: Float64Array.from(poses, p => p.width),
    height: Float64Array.from(poses, p => p.height),
    pieces: Float64Array.from(poses, p => p.pieces.length),
    start: new Int32Array(count * count).fill(-1),
    data: new Float64Array(4096),
    used: 0,
  };
}

function push(tables: Tables, value: number): void {
  if (tables.used === tables.data.length) {
    const larger = new Float64Array(2 * tables.used);
    larger.set(tables.data);
    tables.data = larger;
  }
  tables.data[tables.used++] = value;
}

interface Edge {
  readonly nx: number;
  readonly ny: number;
  readonly reach: number;
}

const support = (ring: Ring, nx: number, ny: number): number => Math.max(...ring.map(p => p.x * nx + p.y * ny));

/** Edges of a ⊕ (-b), by direction. Its corners are sums of corners, so nothing but the edges' directions is needed. */
function sumEdges(a: Ring, b: Ring): Edge[] {
  const normals = [...normalsOf(a, 1), ...normalsOf(b, -1)].sort((p, q) => p.angle - q.angle);
  const out: Edge[] = [];
  for (const { nx, ny } of normals) {
    const before = out.at(-1);
    if (before && parallel(before, nx, ny)) continue;
    out.push({ nx, ny, reach: support(a, nx, ny) + support(b, -nx, -ny) });
  }
  if (out.length > 1 && parallel(out[0]!, out.at(-1)!.nx, out.at(-1)!.ny)) out.pop();
  return out;
}

const parallel = (e: Edge, nx: number, ny: number): boolean =>
  Math.abs(e.nx * ny - e.ny * nx) < 1e-12 && e.nx * nx + e.ny * ny > 0;

const normalsOf = (ring: Ring, sign: number): { nx: number; ny: number; angle: number }[] =>
  ring.map((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const length = Math.sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y));
    const nx = (sign * (q.y - p.y)) / length;
    const ny = (sign * (p.x - q.x)) / length;
    return { nx, ny, angle: Math.atan2(ny, nx) };
  });

const least = (ring: Ring, axis: 'x' | 'y'): number => Math.min(...ring.map(p => p[axis]));
const most = (ring: Ring, axis: 'x' | 'y'): number => Math.max(...ring.map(p => p[axis]));

/** Works out a pair. @returns its index in `data` */
export function makePair(tables: Tables, first: number, second: number): number {
  const { poses, start, count } = tables;
  const at = tables.used;
  const one = poses[first]!.pieces;
  const two = poses[second]!.pieces;
  push(tables, one.length * two.length);
  for (const a of one)
    for (const b of two) {
      const edges = sumEdges(a, b);
      push(tables, edges.length);
      push(tables, least(a, 'x') - most(b, 'x'));
      push(tables, least(a, 'y') - most(b, 'y'));
      push(tables, most(a, 'x') - least(b, 'x'));
      push(tables, most(a, 'y') - least(b, 'y'));
      for (const e of edges) {
        push(tables, e.nx);
        push(tables, e.ny);
        push(tables, e.reach);
      }
    }
  start[first * count + second] = at;
  return at;
}
