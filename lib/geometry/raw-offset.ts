import type { Mm } from '../units/length.js';
import { addOutline, arcEdge, type Edge, lineEdge } from './arrangement/edge.js';
import type { Outline } from './outline.js';
import { TURNS_BACK } from './tolerance.js';

/** How the outside of a corner is closed. */
export interface Join {
  readonly kind: 'round' | 'mitre';
  /** a mitre longer than this many offsets from its corner is cut off square */
  readonly limit: number;
}

/** An edge of the source, its ends moved at right angles to the right, and its directions of travel there. */
interface Shifted {
  readonly edge: Edge;
  readonly sx: number;
  readonly sy: number;
  readonly ex: number;
  readonly ey: number;
  readonly tx0: number;
  readonly ty0: number;
  readonly tx1: number;
  readonly ty1: number;
}

/** Appends the closed curve of an outline's edges moved by `by` to the right, joined at the corners: by arcs about those that open to
 * the right, by straight lines across those that close. Its winding about a point is at least the number of pieces in which a disc of
 * radius `by` there meets what lies left of the outline: above 0 exactly within `by` of it. That holds while no disc swallows a whole
 * opening, so openings that may be swallowed are left out before (see offset.ts).
 * Source: convolution of tracings, Guibas, Ramshaw and Stolfi, "A Kinetic Framework for Computational Geometry", FOCS 1983; winding
 * numbers of raw offset curves, Chen and McMains, "Polygon Offsetting by Computing Winding Numbers", 2005. Both cut a closing corner by
 * the arc run backwards; its chord adds only points within `by` of the corner. */
export function addRawOffset(edges: Edge[], outline: Outline, by: Mm, join: Join, tolerance: Mm): void {
  const source: Edge[] = [];
  addOutline(source, outline, 1, tolerance);
  const first = shift(source[0]!, by);
  let s = first;
  for (let i = 1; i <= source.length; i++) {
    const next = i < source.length ? shift(source[i]!, by) : first;
    addShiftedEdge(edges, s, by, tolerance);
    addCorner(edges, s, next, by, join, tolerance);
    s = next;
  }
}

function addLine(edges: Edge[], x0: number, y0: number, x1: number, y1: number, tolerance: number): void {
  if (Math.abs(x1 - x0) > tolerance || Math.abs(y1 - y0) > tolerance) edges.push(lineEdge(x0, y0, x1, y1, 1));
}

function shift(e: Edge, by: number): Shifted {
  if (e.turn === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    const length = Math.sqrt(dx * dx + dy * dy);
    const tx = dx / length;
    const ty = dy / length;
    const nx = ty * by;
    const ny = -tx * by;
    const [sx, sy, ex, ey] = [e.x0 + nx, e.y0 + ny, e.x1 + nx, e.y1 + ny];
    return { edge: e, sx, sy, ex, ey, tx0: tx, ty0: ty, tx1: tx, ty1: ty };
  }
  const ux0 = (e.x0 - e.cx) / e.r;
  const uy0 = (e.y0 - e.cy) / e.r;
  const ux1 = (e.x1 - e.cx) / e.r;
  const uy1 = (e.y1 - e.cy) / e.r;
  // to the right of an anticlockwise arc is away from its centre
  const out = e.turn * by;
  const [sx, sy, ex, ey] = [e.x0 + ux0 * out, e.y0 + uy0 * out, e.x1 + ux1 * out, e.y1 + uy1 * out];
  return { edge: e, sx, sy, ex, ey, tx0: -uy0 * e.turn, ty0: ux0 * e.turn, tx1: -uy1 * e.turn, ty1: ux1 * e.turn };
}

/** The edge moved. A clockwise arc of a radius below `by` turns inside out: as at a closing corner, the straight line takes its place. */
function addShiftedEdge(edges: Edge[], s: Shifted, by: number, tolerance: number): void {
  const e = s.edge;
  const r = e.r + e.turn * by;
  if (e.turn === 0 || r <= tolerance) addLine(edges, s.sx, s.sy, s.ex, s.ey, tolerance);
  else edges.push(arcEdge(s.sx, s.sy, s.ex, s.ey, e.turn, e.cx, e.cy, r, 1));
}

/** From the end of one moved edge to the start of the next, about their common corner. */
function addCorner(edges: Edge[], a: Shifted, b: Shifted, by: number, join: Join, tolerance: number): void {
  const x = a.edge.x1;
  const y = a.edge.y1;
  const cos = a.tx1 * b.tx0 + a.ty1 * b.ty0;
  const sin = a.tx1 * b.ty0 - a.ty1 * b.tx0;
  const gap = Math.abs(b.sx - a.ex) + Math.abs(b.sy - a.ey);
  if (gap <= tolerance && cos > 0) return;
  if (join.kind === 'mitre' && sin > 0) addMitre(edges, a, b, x, y, cos, join.limit, tolerance);
  // where the path turns straight back, rounding decides which way: all round the corner is near enough to belong, so the arc is right
  else if (join.kind === 'round' && cos < TURNS_BACK) {
    const mx = x + a.tx1 * by;
    const my = y + a.ty1 * by;
    edges.push(arcEdge(a.ex, a.ey, mx, my, 1, x, y, by, 1), arcEdge(mx, my, b.sx, b.sy, 1, x, y, by, 1));
  } else if (sin > 0) edges.push(arcEdge(a.ex, a.ey, b.sx, b.sy, 1, x, y, by, 1));
  else addLine(edges, a.ex, a.ey, b.sx, b.sy, tolerance);
}

/** The two moved edges run on straight until they meet, or are cut off square where that is too far out. */
function addMitre(
  edges: Edge[],
  a: Shifted,
  b: Shifted,
  x: number,
  y: number,
  cos: number,
  limit: number,
  tolerance: number,
): void {
  // the mitre's length over the offset is 1 / cos of half the turn
  const half = (1 + cos) / 2;
  if (half * limit * limit < 1) {
    addLine(edges, a.ex, a.ey, b.sx, b.sy, tolerance);
    return;
  }
  const mx = x + (a.ex + b.sx - 2 * x) / (2 * half);
  const my = y + (a.ey + b.sy - 2 * y) / (2 * half);
  addLine(edges, a.ex, a.ey, mx, my, tolerance);
  addLine(edges, mx, my, b.sx, b.sy, tolerance);
}
