import type { Edges } from './edges.js';

/** Signed distance of a point from an edge's carrier: from the line positive on the left, from the circle positive outside.
 * Reckoned from the edge's start, not from the centre, so that a very flat arc, whose centre is far away, keeps its digits:
 * |q - w|² - |w|² = q (q - 2 w), with q from the start to the point and w from the start to the centre. */
export function beyondCarrier(e: Edges, i: number, x: number, y: number): number {
  const qx = x - e.x0[i]!;
  const qy = y - e.y0[i]!;
  if (e.turn[i] === 0) {
    const dx = e.x1[i]! - e.x0[i]!;
    const dy = e.y1[i]! - e.y0[i]!;
    return (dx * qy - dy * qx) / Math.sqrt(dx * dx + dy * dy);
  }
  const wx = e.cx[i]! - e.x0[i]!;
  const wy = e.cy[i]! - e.y0[i]!;
  const away = Math.sqrt((qx - wx) * (qx - wx) + (qy - wy) * (qy - wy));
  return (qx * (qx - 2 * wx) + qy * (qy - 2 * wy)) / (e.r[i]! + away);
}

/** Distance of a point from an edge's carrier. */
export const fromCarrier = (e: Edges, i: number, x: number, y: number): number => Math.abs(beyondCarrier(e, i, x, y));

/** Whether an arc's radius is so large that roundings of its centre reach the tolerance. */
export const isFlat = (e: Edges, i: number, tolerance: number): boolean => e.r[i]! * (64 * Number.EPSILON) > tolerance;

/** A crossing of two carriers made exact by two steps of Newton's method; where they run side by side, as it was. */
export function polished(e: Edges, a: number, b: number, x: number, y: number): readonly [number, number] {
  let [px, py] = [x, y];
  for (let step = 0; step < 2; step++) {
    const [ax, ay] = away(e, a, px, py);
    const [bx, by] = away(e, b, px, py);
    const det = ax * by - ay * bx;
    if (Math.abs(det) < 1e-9) return [x, y];
    const fa = beyondCarrier(e, a, px, py);
    const fb = beyondCarrier(e, b, px, py);
    px -= (fa * by - fb * ay) / det;
    py -= (fb * ax - fa * bx) / det;
  }
  return [px, py];
}

/** The direction in which the distance from a carrier grows, of length 1. */
function away(e: Edges, i: number, x: number, y: number): readonly [number, number] {
  const line = e.turn[i] === 0;
  const vx = line ? e.y0[i]! - e.y1[i]! : x - e.cx[i]!;
  const vy = line ? e.x1[i]! - e.x0[i]! : y - e.cy[i]!;
  const length = Math.sqrt(vx * vx + vy * vy);
  return [vx / length, vy / length];
}
