import { middleOf } from './along.js';
import type { Edges } from './edges.js';
import { fromCarrier } from './meet.js';
import type { Slices } from './slices.js';
import type { Run } from './trace.js';

/** A stretch of a boundary on one carrier: from one point to the next along the carrier of an edge, in the sense of `turn`. mm. */
export interface Piece {
  /** the row of the edge */
  readonly edge: number;
  readonly turn: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

function pieceOf(slices: Slices, run: Run): Piece {
  const i = run >> 1;
  const back = (run & 1) === 1;
  const from = back ? slices.head[i]! : slices.tail[i]!;
  const to = back ? slices.tail[i]! : slices.head[i]!;
  const edge = slices.edge[i]!;
  const turn = slices.edges.turn[edge]!;
  const { xs, ys } = slices;
  return { edge, turn: back && turn !== 0 ? -turn : turn, x0: xs[from]!, y0: ys[from]!, x1: xs[to]!, y1: ys[to]! };
}

const size = (e: Edges, i: number): number => Math.max(e.maxX[i]! - e.minX[i]!, e.maxY[i]! - e.minY[i]!);

/** Whether two stretches, one after the other, go on along one carrier: the shorter edge's carrier follows the longer's over its stretch. */
function continues(e: Edges, a: Piece, b: Piece, tolerance: number): boolean {
  if (a.turn !== b.turn) return false;
  if (a.edge === b.edge) return true;
  if (a.turn === 0 && (a.x1 - a.x0) * (b.x1 - b.x0) + (a.y1 - a.y0) * (b.y1 - b.y0) < 0) return false;
  const [long, short] = size(e, a.edge) >= size(e, b.edge) ? [a, b] : [b, a];
  const near = (x: number, y: number): boolean => fromCarrier(e, long.edge, x, y) <= 2 * tolerance;
  if (!near(short.x0, short.y0) || !near(short.x1, short.y1)) return false;
  if (a.turn === 0) {
    const s = short.edge;
    return near(e.x0[s]!, e.y0[s]!) && near(e.x1[s]!, e.y1[s]!);
  }
  return near(...middleOf(e, short.edge, short.turn, short.x0, short.y0, short.x1, short.y1));
}

const join = (e: Edges, a: Piece, b: Piece): Piece => ({
  edge: size(e, a.edge) >= size(e, b.edge) ? a.edge : b.edge,
  turn: a.turn,
  x0: a.x0,
  y0: a.y0,
  x1: b.x1,
  y1: b.y1,
});

/** The stretches of a loop, collinear and co-circular neighbours made one. A loop on one circle comes back as a single piece with equal ends. */
export function mergedPieces(slices: Slices, loop: readonly Run[], tolerance: number): Piece[] {
  const { edges } = slices;
  const pieces = loop.map(run => pieceOf(slices, run));
  const n = pieces.length;
  const breakAt = pieces.findIndex((p, i) => !continues(edges, pieces[i > 0 ? i - 1 : n - 1]!, p, tolerance));
  const merged: Piece[] = [];
  for (let k = 0; k < n; k++) {
    const p = pieces[(Math.max(0, breakAt) + k) % n]!;
    const last = merged[merged.length - 1];
    if (last && (breakAt < 0 || continues(edges, last, p, tolerance))) merged[merged.length - 1] = join(edges, last, p);
    else merged.push(p);
  }
  return merged;
}
