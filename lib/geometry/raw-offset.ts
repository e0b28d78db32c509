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

/** An edge and its offset to the right; the offset of an arc that shrinks to nothing is its centre. */
interface Shifted {
  readonly edge: Edge;
  /** the offset's ends, at right angles from the edge's ends, whether or not it shrank to nothing */
  readonly sx: number;
  readonly sy: number;
  readonly ex: number;
  readonly ey: number;
  /** directions of travel at the edge's ends, of length 1 */
  readonly tx0: number;
  readonly ty0: number;
  readonly tx1: number;
  readonly ty1: number;
  readonly collapsed: boolean;
}

/** Appends the closed curve that winds once round everything within `by` to the right of an outline: the outline itself, a slab beside
 * each edge and a sector at each corner that opens to the right, with their common sides already cancelled. Winding 0 is what stays clear.
 * Source: winding numbers of raw offset curves, Chen and McMains, "Polygon Offsetting by Computing Winding Numbers", 2005; arcs are ours. */
export function addRawOffset(edges: Edge[], outline: Outline, by: Mm, join: Join, tolerance: Mm): void {
  const source: Edge[] = [];
  addOutline(source, outline, 1, tolerance);
  const shifted = source.map(e => shift(e, by, tolerance));
  const add = segmentAdder(edges, tolerance);
  shifted.forEach((s, i) => {
    addShiftedEdge(edges, s, by);
    addCorner(edges, add, s, shifted[(i + 1) % shifted.length]!, by, join, tolerance);
  });
}

type AddLine = (x0: number, y0: number, x1: number, y1: number) => void;

const segmentAdder =
  (edges: Edge[], tolerance: number): AddLine =>
  (x0, y0, x1, y1) => {
    if (Math.abs(x1 - x0) > tolerance || Math.abs(y1 - y0) > tolerance) edges.push(lineEdge(x0, y0, x1, y1, 1));
  };

function shift(e: Edge, by: number, tolerance: number): Shifted {
  if (e.turn === 0) {
    const dx = e.x1 - e.x0;
    const dy = e.y1 - e.y0;
    const length = Math.sqrt(dx * dx + dy * dy);
    const tx = dx / length;
    const ty = dy / length;
    const nx = ty * by;
    const ny = -tx * by;
    return {
      edge: e,
      sx: e.x0 + nx,
      sy: e.y0 + ny,
      ex: e.x1 + nx,
      ey: e.y1 + ny,
      tx0: tx,
      ty0: ty,
      tx1: tx,
      ty1: ty,
      collapsed: false,
    };
  }
  // to the right of an anticlockwise arc is away from its centre
  const ux0 = (e.x0 - e.cx) / e.r;
  const uy0 = (e.y0 - e.cy) / e.r;
  const ux1 = (e.x1 - e.cx) / e.r;
  const uy1 = (e.y1 - e.cy) / e.r;
  const out = e.turn * by;
  return {
    edge: e,
    sx: e.x0 + ux0 * out,
    sy: e.y0 + uy0 * out,
    ex: e.x1 + ux1 * out,
    ey: e.y1 + uy1 * out,
    tx0: -uy0 * e.turn,
    ty0: ux0 * e.turn,
    tx1: -uy1 * e.turn,
    ty1: ux1 * e.turn,
    collapsed: e.r + out <= tolerance,
  };
}

function addShiftedEdge(edges: Edge[], s: Shifted, by: number): void {
  const e = s.edge;
  if (e.turn === 0) edges.push(lineEdge(s.sx, s.sy, s.ex, s.ey, 1));
  else if (!s.collapsed) edges.push(arcEdge(s.sx, s.sy, s.ex, s.ey, e.turn, e.cx, e.cy, e.r + e.turn * by, 1));
}

/** From the end of one offset edge to the start of the next, about their common vertex. */
function addCorner(
  edges: Edge[],
  add: AddLine,
  a: Shifted,
  b: Shifted,
  by: number,
  join: Join,
  tolerance: number,
): void {
  const vx = a.edge.x1;
  const vy = a.edge.y1;
  const [fromX, fromY] = a.collapsed ? [a.edge.cx, a.edge.cy] : [a.ex, a.ey];
  const [toX, toY] = b.collapsed ? [b.edge.cx, b.edge.cy] : [b.sx, b.sy];
  const cos = a.tx1 * b.tx0 + a.ty1 * b.ty0;
  const sin = a.tx1 * b.ty0 - a.ty1 * b.tx0;
  const gap = Math.hypot(b.sx - a.ex, b.sy - a.ey);
  if (gap <= tolerance && cos > 0) {
    add(fromX, fromY, a.ex, a.ey);
    add(a.ex, a.ey, toX, toY);
  } else if (sin > 0 || (join.kind === 'round' && cos < TURNS_BACK)) {
    // where the path turns straight back, rounding decides which way: all round the corner is near enough to belong, so the arc is right
    add(fromX, fromY, a.ex, a.ey);
    if (join.kind === 'mitre') addMitre(add, a, b, vx, vy, cos, join.limit);
    else addSector(edges, a, b, vx, vy, by, cos);
    add(b.sx, b.sy, toX, toY);
  } else {
    add(fromX, fromY, vx, vy);
    add(vx, vy, toX, toY);
  }
}

/** The arc about a corner from one offset edge to the next, anticlockwise; in two parts where it is about a half turn or more. */
function addSector(edges: Edge[], a: Shifted, b: Shifted, x: number, y: number, by: number, cos: number): void {
  if (cos < TURNS_BACK) {
    const mx = x + a.tx1 * by;
    const my = y + a.ty1 * by;
    edges.push(arcEdge(a.ex, a.ey, mx, my, 1, x, y, by, 1), arcEdge(mx, my, b.sx, b.sy, 1, x, y, by, 1));
  } else edges.push(arcEdge(a.ex, a.ey, b.sx, b.sy, 1, x, y, by, 1));
}

/** The two offset edges run on straight until they meet, or cut off square where that is too far out. */
function addMitre(add: AddLine, a: Shifted, b: Shifted, x: number, y: number, cos: number, limit: number): void {
  // the mitre's length over the offset is 1 / cos of half the turn
  const half = (1 + cos) / 2;
  if (half * limit * limit < 1) {
    add(a.ex, a.ey, b.sx, b.sy);
    return;
  }
  const mx = x + (a.ex + b.sx - 2 * x) / (2 * half);
  const my = y + (a.ey + b.sy - 2 * y) / (2 * half);
  add(a.ex, a.ey, mx, my);
  add(mx, my, b.sx, b.sy);
}
