import { middleOf } from './along.js';
import { fromCarrier } from './carrier.js';
import type { Edges } from './edges.js';
import type { Slices } from './slices.js';
import type { Run } from './trace.js';

/** A stretch of a boundary on one carrier and of one tag: from one point to the next along the carrier of an edge, in the sense of `turn`. mm. */
export interface Piece {
  /** the row of the edge */
  readonly edge: number;
  readonly turn: number;
  /** its tag by its place in edges.mates; 0: none */
  readonly mate: number;
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
  return {
    edge,
    turn: back && turn !== 0 ? -turn : turn,
    mate: slices.mate[i]!,
    x0: xs[from]!,
    y0: ys[from]!,
    x1: xs[to]!,
    y1: ys[to]!,
  };
}

const size = (e: Edges, i: number): number => Math.max(e.maxX[i]! - e.minX[i]!, e.maxY[i]! - e.minY[i]!);

/** Whether slice b, after slice a of a stretch on a carrier, goes on along it: of carrier and b's own edge the longer one is trusted, and the
 * slice of the shorter one must follow it. Slices, not whole stretches: an arc of more than a half turn is not known by its ends. */
function continues(e: Edges, carrier: number, a: Piece, b: Piece, tolerance: number): boolean {
  if (a.turn !== b.turn || a.mate !== b.mate) return false;
  if (carrier === b.edge) return true;
  if (a.turn === 0 && (a.x1 - a.x0) * (b.x1 - b.x0) + (a.y1 - a.y0) * (b.y1 - b.y0) < 0) return false;
  const trusted = size(e, carrier) >= size(e, b.edge);
  const long = trusted ? carrier : b.edge;
  const short = trusted ? b.edge : carrier;
  const slice = trusted ? b : a;
  const near = (x: number, y: number): boolean => fromCarrier(e, long, x, y) <= 2 * tolerance;
  if (!near(slice.x0, slice.y0) || !near(slice.x1, slice.y1)) return false;
  if (a.turn === 0) return near(e.x0[short]!, e.y0[short]!) && near(e.x1[short]!, e.y1[short]!);
  return near(...middleOf(e, slice.edge, slice.turn, slice.x0, slice.y0, slice.x1, slice.y1));
}

/** A stretch with the slice after it, on the longer of their two edges. */
const join = (e: Edges, a: Piece, b: Piece): Piece => ({
  edge: size(e, a.edge) >= size(e, b.edge) ? a.edge : b.edge,
  turn: a.turn,
  mate: a.mate,
  x0: a.x0,
  y0: a.y0,
  x1: b.x1,
  y1: b.y1,
});

/** The stretches of a loop, collinear and co-circular neighbours of one tag made one. A loop on one circle comes back as a single piece with equal ends. */
export function mergedPieces(slices: Slices, loop: readonly Run[], tolerance: number): Piece[] {
  const { edges } = slices;
  const single = loop.map(run => pieceOf(slices, run));
  const n = single.length;
  const breakAt = single.findIndex((p, i) => {
    const before = single[i > 0 ? i - 1 : n - 1]!;
    return !continues(edges, before.edge, before, p, tolerance);
  });
  const merged: Piece[] = [];
  let before = single[0]!;
  for (let k = 0; k < n; k++) {
    const p = single[(Math.max(0, breakAt) + k) % n]!;
    const last = merged[merged.length - 1];
    if (last && (breakAt < 0 || continues(edges, last.edge, before, p, tolerance))) {
      merged[merged.length - 1] = join(edges, last, p);
    } else merged.push(p);
    before = p;
  }
  return merged;
}
