import type { Edges } from './edges.js';

/** Positive where a point lies to the left of the way from one point to another. A point on it counts as a hair higher, then further
 * right: the same for a chord as for its arc, so that winding numbers add up for points on a chord. */
export function sideOf(x0: number, y0: number, x1: number, y1: number, x: number, y: number): number {
  return (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) || x1 - x0 || y0 - y1;
}

/** A point on an arc's circle is not inside it: inside is by more than this share of its distance from the arc's start. */
const INSIDE = 1e-12;

/** What edge i, or the slice of it between two points, adds to the winding number of a point (x, y) not on it: 1 or -1 where its chord
 * crosses the ray from the point to +x (half open, so that a vertex counts once), and 1 or -1 where the point lies between arc and chord. */
export function windingOf(
  e: Edges,
  i: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x: number,
  y: number,
): number {
  const up = y0 <= y && y1 > y;
  const down = y1 <= y && y0 > y;
  const turn = e.turn[i]!;
  const inCircle = turn !== 0 && inside(e, i, x, y);
  if (!up && !down && !inCircle) return 0;
  const side = sideOf(x0, y0, x1, y1, x, y);
  const acrossChord = inCircle && turn * side < 0 ? turn : 0;
  if (up && side > 0) return 1 + acrossChord;
  return down && side < 0 ? acrossChord - 1 : acrossChord;
}

/** Whether a point is inside the circle of an arc, reckoned from the arc's start as in carrier.ts. */
function inside(e: Edges, i: number, x: number, y: number): boolean {
  const qx = x - e.x0[i]!;
  const qy = y - e.y0[i]!;
  const wx = e.cx[i]! - e.x0[i]!;
  const wy = e.cy[i]! - e.y0[i]!;
  return qx * (qx - 2 * wx) + qy * (qy - 2 * wy) < -2 * INSIDE * e.r[i]! * (Math.abs(qx) + Math.abs(qy));
}
