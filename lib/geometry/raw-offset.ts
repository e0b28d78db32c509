import type { Mm } from '../units/length.js';
import { addArc, addLine, type Edges } from './arrangement/edges.js';
import { TURNS_BACK } from './tolerance.js';

/** How the outside of a corner is closed. */
export interface Join {
  readonly kind: 'round' | 'mitre';
  /** a corner whose mitre would be longer than this many offsets, measured from the corner, is rounded */
  readonly limit: number;
}

/** The ends of an edge moved at right angles to the right, its directions of travel there, its turn and its tag. */
interface Shifted {
  readonly sx: number;
  readonly sy: number;
  readonly ex: number;
  readonly ey: number;
  readonly tx0: number;
  readonly ty0: number;
  readonly tx1: number;
  readonly ty1: number;
  readonly turn: number;
  readonly mate: number;
}

/** A vertex gives at most this many edges: its moved edge and two for its corner. */
export const EDGES_PER_VERTEX = 3;

/** Appends the closed curve of an outline's edges moved by `by` to the right, joined at the corners: by arcs about those that open to
 * the right, by straight lines across those that close. Its winding about a point is at least the number of pieces in which a disc of
 * radius `by` there meets what lies left of the outline: above 0 exactly within `by` of it. That holds while no disc swallows a whole
 * opening, so openings that may be swallowed are left out before (see offset.ts).
 * The outline is the rows `from` up to `to` of the source; run `back`, its left and right change places.
 * Source: convolution of tracings, Guibas, Ramshaw and Stolfi, "A Kinetic Framework for Computational Geometry", FOCS 1983; winding
 * numbers of raw offset curves, Chen and McMains, "Polygon Offsetting by Computing Winding Numbers", 2005. Both cut a closing corner by
 * the arc run backwards; its chord adds only points within `by` of the corner. */
export function addRawOffset(
  edges: Edges,
  source: Edges,
  from: number,
  to: number,
  back: boolean,
  by: Mm,
  join: Join,
  tolerance: Mm,
): void {
  const row = (k: number): number => (back ? to - 1 - k : from + k);
  const first = shift(source, row(0), back, by);
  let s = first;
  for (let k = 0; k < to - from; k++) {
    const i = row(k);
    const next = from + k + 1 < to ? shift(source, row(k + 1), back, by) : first;
    addShifted(edges, source, i, s, by, tolerance);
    addCorner(
      edges,
      back ? source.x0[i]! : source.x1[i]!,
      back ? source.y0[i]! : source.y1[i]!,
      s,
      next,
      by,
      join,
      tolerance,
    );
    s = next;
  }
}

/** An edge's ends moved to the right. To the right of an anticlockwise arc is away from its centre. */
function shift(e: Edges, i: number, back: boolean, by: number): Shifted {
  const x0 = back ? e.x1[i]! : e.x0[i]!;
  const y0 = back ? e.y1[i]! : e.y0[i]!;
  const x1 = back ? e.x0[i]! : e.x1[i]!;
  const y1 = back ? e.y0[i]! : e.y1[i]!;
  const turn = back ? -e.turn[i]! : e.turn[i]!;
  let tx0 = x1 - x0;
  let ty0 = y1 - y0;
  let tx1 = tx0;
  let ty1 = ty0;
  let length = Math.sqrt(tx0 * tx0 + ty0 * ty0);
  if (turn !== 0) {
    length = e.r[i]! * turn;
    tx0 = e.cy[i]! - y0;
    ty0 = x0 - e.cx[i]!;
    tx1 = e.cy[i]! - y1;
    ty1 = x1 - e.cx[i]!;
  }
  tx0 /= length;
  ty0 /= length;
  tx1 /= length;
  ty1 /= length;
  const sx = x0 + ty0 * by;
  const sy = y0 - tx0 * by;
  const ex = x1 + ty1 * by;
  const ey = y1 - tx1 * by;
  return { sx, sy, ex, ey, tx0, ty0, tx1, ty1, turn, mate: e.mate[i]! };
}

function addGap(edges: Edges, x0: number, y0: number, x1: number, y1: number, tolerance: number, mate = 0): void {
  if (Math.abs(x1 - x0) > tolerance || Math.abs(y1 - y0) > tolerance) addLine(edges, x0, y0, x1, y1, 1, mate);
}

/** The edge moved, its tag with it. A clockwise arc of a radius below `by` turns inside out: as at a closing corner, the straight line takes its place, of no tag. */
function addShifted(edges: Edges, e: Edges, i: number, s: Shifted, by: number, tolerance: number): void {
  const { turn } = s;
  const r = e.r[i]! + turn * by;
  if (turn === 0 || r <= tolerance) addGap(edges, s.sx, s.sy, s.ex, s.ey, tolerance, straightMate(s));
  else addArc(edges, s.sx, s.sy, s.ex, s.ey, turn, e.cx[i]!, e.cy[i]!, r, 1, s.mate);
}

/** The tag of a straight line in an edge's direction: the edge's own if it is straight, or else the line is not on its carrier. */
const straightMate = (s: Shifted): number => (s.turn === 0 ? s.mate : 0);

/** From the end of one moved edge to the start of the next, about their common corner. */
function addCorner(
  edges: Edges,
  x: number,
  y: number,
  a: Shifted,
  b: Shifted,
  by: number,
  join: Join,
  tolerance: number,
): void {
  const cos = a.tx1 * b.tx0 + a.ty1 * b.ty0;
  const sin = a.tx1 * b.ty0 - a.ty1 * b.tx0;
  const gap = Math.abs(b.sx - a.ex) + Math.abs(b.sy - a.ey);
  if (gap <= tolerance && cos > 0) return;
  // the mitre's length over the offset is 1 / cos of half the turn; half the turn's cosine squared is (1 + cos) / 2
  if (join.kind === 'mitre' && sin > 0 && ((1 + cos) / 2) * join.limit * join.limit >= 1)
    addMitre(edges, x, y, a, b, cos, tolerance);
  // where the path turns straight back, rounding decides which way: all round the corner is near enough to belong, so the arc is right
  else if (cos < TURNS_BACK) {
    const mx = x + a.tx1 * by;
    const my = y + a.ty1 * by;
    addArc(edges, a.ex, a.ey, mx, my, 1, x, y, by, 1);
    addArc(edges, mx, my, b.sx, b.sy, 1, x, y, by, 1);
  } else if (sin > 0) addArc(edges, a.ex, a.ey, b.sx, b.sy, 1, x, y, by, 1);
  else addGap(edges, a.ex, a.ey, b.sx, b.sy, tolerance);
}

/** The two moved edges run on straight until they meet: beyond the arc, so what it winds round is wound round too. Each
 * bears its edge's tag where it lies on its carrier. */
function addMitre(edges: Edges, x: number, y: number, a: Shifted, b: Shifted, cos: number, tolerance: number): void {
  const half = (1 + cos) / 2;
  const mx = x + (a.ex + b.sx - 2 * x) / (2 * half);
  const my = y + (a.ey + b.sy - 2 * y) / (2 * half);
  addGap(edges, a.ex, a.ey, mx, my, tolerance, straightMate(a));
  addGap(edges, mx, my, b.sx, b.sy, tolerance, straightMate(b));
}
