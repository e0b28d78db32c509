import { middleOf } from './along.js';
import type { Edge } from './edge.js';
import { fromCarrier } from './meet.js';
import type { Slices } from './slices.js';
import type { Run } from './trace.js';

/** A stretch of a boundary on one carrier: from one point to the next along the carrier of `edge`, in the sense of `turn`. mm. */
export interface Piece {
  readonly edge: Edge;
  readonly turn: -1 | 0 | 1;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

const pieceOf = (slices: Slices, run: Run): Piece => {
  const i = run >> 1;
  const back = (run & 1) === 1;
  const from = back ? slices.head[i]! : slices.tail[i]!;
  const to = back ? slices.tail[i]! : slices.head[i]!;
  const edge = slices.edge[i]!;
  const turn = back ? ((-edge.turn || 0) as -1 | 0 | 1) : edge.turn;
  return { edge, turn, x0: slices.xs[from]!, y0: slices.ys[from]!, x1: slices.xs[to]!, y1: slices.ys[to]! };
};

const size = (e: Edge): number => Math.max(e.maxX - e.minX, e.maxY - e.minY);

/** Whether two stretches, one after the other, go on along one carrier: the shorter edge's carrier follows the longer's over its stretch. */
function continues(a: Piece, b: Piece, tolerance: number): boolean {
  if (a.turn !== b.turn) return false;
  if (a.edge === b.edge) return true;
  if (a.turn === 0 && (a.x1 - a.x0) * (b.x1 - b.x0) + (a.y1 - a.y0) * (b.y1 - b.y0) < 0) return false;
  const [long, short] = size(a.edge) >= size(b.edge) ? [a, b] : [b, a];
  const near = (x: number, y: number): boolean => fromCarrier(long.edge, x, y) <= 2 * tolerance;
  if (!near(short.x0, short.y0) || !near(short.x1, short.y1)) return false;
  if (a.turn === 0) return near(short.edge.x0, short.edge.y0) && near(short.edge.x1, short.edge.y1);
  const e = { ...short.edge, turn: short.turn };
  const [mx, my] = middleOf(e, short.x0, short.y0, short.x1, short.y1);
  return near(mx, my);
}

const join = (a: Piece, b: Piece): Piece => ({
  edge: size(a.edge) >= size(b.edge) ? a.edge : b.edge,
  turn: a.turn,
  x0: a.x0,
  y0: a.y0,
  x1: b.x1,
  y1: b.y1,
});

/** The stretches of a loop, collinear and co-circular neighbours made one. A loop on one circle comes back as a single piece with equal ends. */
export function mergedPieces(slices: Slices, loop: readonly Run[], tolerance: number): Piece[] {
  const pieces = loop.map(run => pieceOf(slices, run));
  const n = pieces.length;
  const breakAt = pieces.findIndex((p, i) => !continues(pieces[(i + n - 1) % n]!, p, tolerance));
  const turned = [...pieces.slice(Math.max(0, breakAt)), ...pieces.slice(0, Math.max(0, breakAt))];
  const merged: Piece[] = [];
  for (const p of turned) {
    const last = merged.at(-1);
    if (last && (breakAt < 0 || continues(last, p, tolerance))) merged[merged.length - 1] = join(last, p);
    else merged.push(p);
  }
  return merged;
}
