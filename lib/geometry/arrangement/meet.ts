import { beyondCarrier, fromCarrier, isFlat, polished } from './carrier.js';
import type { Edges } from './edges.js';

/** Told of a point where edges a and b meet: it lies on a, on b, or on both (an end of one that lies on the other is told for the other). */
export type Meeting = (x: number, y: number, onA: boolean, onB: boolean) => void;

const inBox = (e: Edges, i: number, x: number, y: number, tolerance: number): boolean =>
  x >= e.minX[i]! - tolerance &&
  x <= e.maxX[i]! + tolerance &&
  y >= e.minY[i]! - tolerance &&
  y <= e.maxY[i]! + tolerance;

/** Whether a point on the carrier of an edge lies on the edge, its ends included, within the tolerance.
 * An arc of at most a half turn is the part of its circle across its chord and between the chord's ends. */
function within(e: Edges, i: number, x: number, y: number, tolerance: number): boolean {
  if (!inBox(e, i, x, y, tolerance)) return false;
  const dx = e.x1[i]! - e.x0[i]!;
  const dy = e.y1[i]! - e.y0[i]!;
  const px = x - e.x0[i]!;
  const py = y - e.y0[i]!;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const along = dx * px + dy * py;
  if (along < -tolerance * chord || along > (chord + tolerance) * chord) return false;
  return e.turn[i] === 0 || e.turn[i]! * (dx * py - dy * px) <= tolerance * chord;
}

const touches = (e: Edges, i: number, x: number, y: number, tolerance: number): boolean =>
  inBox(e, i, x, y, tolerance) && fromCarrier(e, i, x, y) <= tolerance && within(e, i, x, y, tolerance);

const endsAt = (e: Edges, i: number, x: number, y: number): boolean =>
  (e.x0[i] === x && e.y0[i] === y) || (e.x1[i] === x && e.y1[i] === y);

/** Which ends of two edges lie on the other: a set of these. */
const A_START = 1;
const A_END = 2;
const B_START = 4;
const B_END = 8;

/** Every point where two edges meet: ends lying on the other edge (so edges on one carrier are cut at each other's ends), then crossings. */
export function meet(e: Edges, a: number, b: number, tolerance: number, tell: Meeting): void {
  const ends =
    endMeets(e, b, e.x0[a]!, e.y0[a]!, A_START, tolerance, tell, false) |
    endMeets(e, b, e.x1[a]!, e.y1[a]!, A_END, tolerance, tell, false) |
    endMeets(e, a, e.x0[b]!, e.y0[b]!, B_START, tolerance, tell, true) |
    endMeets(e, a, e.x1[b]!, e.y1[b]!, B_END, tolerance, tell, true);
  if (e.turn[a] === 0 && e.turn[b] === 0) lineLine(e, a, b, ends, tolerance, tell);
  else if (e.turn[a] === 0) lineArc(e, a, b, ends, tolerance, tell);
  else if (e.turn[b] === 0) lineArc(e, b, a, ((ends & 3) << 2) | (ends >> 2), tolerance, tell);
  else arcArc(e, a, b, ends, tolerance, tell);
}

/** Whether the end of one edge lies on edge i; told, unless it ends that edge as well. */
function endMeets(
  e: Edges,
  i: number,
  x: number,
  y: number,
  end: number,
  tolerance: number,
  tell: Meeting,
  onA: boolean,
): number {
  if (endsAt(e, i, x, y)) return end;
  if (!touches(e, i, x, y, tolerance)) return 0;
  tell(x, y, onA, !onA);
  return end;
}

/** Tells a crossing of the carriers that lies on both edges, unless an end stands for it. */
function crossing(
  e: Edges,
  a: number,
  b: number,
  ends: number,
  x: number,
  y: number,
  tolerance: number,
  tell: Meeting,
): void {
  const flat = isFlat(e, a, tolerance) || isFlat(e, b, tolerance);
  const near = flat ? tolerance + e.r[a]! * 1e-9 + e.r[b]! * 1e-9 : tolerance;
  if (!within(e, a, x, y, near) || !within(e, b, x, y, near)) return;
  const [px, py] = flat ? polished(e, a, b, x, y) : [x, y];
  if (flat && !(within(e, a, px, py, tolerance) && within(e, b, px, py, tolerance))) return;
  if (ends !== 0 && standsFor(e, a, b, ends, px, py, tolerance)) return;
  tell(px, py, true, true);
}

/** Whether the edges run side by side, within the tolerance, from an end that lies on both to a crossing: at a tangent corner a crossing
 * comes out some way off the corner, by the root of a rounding, and means the same point. */
function standsFor(e: Edges, a: number, b: number, ends: number, x: number, y: number, tolerance: number): boolean {
  const beside = (px: number, py: number): boolean => {
    if (e.turn[a] === 0) return fromCarrier(e, b, (px + x) / 2, (py + y) / 2) <= tolerance;
    const cx = e.cx[a]!;
    const cy = e.cy[a]!;
    const ux = px + x - 2 * cx;
    const uy = py + y - 2 * cy;
    const share = e.r[a]! / Math.sqrt(ux * ux + uy * uy);
    return fromCarrier(e, b, cx + ux * share, cy + uy * share) <= tolerance;
  };
  return (
    ((ends & A_START) !== 0 && beside(e.x0[a]!, e.y0[a]!)) ||
    ((ends & A_END) !== 0 && beside(e.x1[a]!, e.y1[a]!)) ||
    ((ends & B_START) !== 0 && beside(e.x0[b]!, e.y0[b]!)) ||
    ((ends & B_END) !== 0 && beside(e.x1[b]!, e.y1[b]!))
  );
}

function lineLine(e: Edges, a: number, b: number, ends: number, tolerance: number, tell: Meeting): void {
  const ax = e.x0[a]!;
  const ay = e.y0[a]!;
  const adx = e.x1[a]! - ax;
  const ady = e.y1[a]! - ay;
  const bdx = e.x1[b]! - e.x0[b]!;
  const bdy = e.y1[b]! - e.y0[b]!;
  const k = adx * bdy - ady * bdx;
  if (k === 0) return;
  const t = ((e.x0[b]! - ax) * bdy - (e.y0[b]! - ay) * bdx) / k;
  crossing(e, a, b, ends, ax + adx * t, ay + ady * t, tolerance, tell);
}

/** Where the line's distance from the circle is 0: t² + 2 b t + c = 0 along the line, both reckoned from the arc's start, so that a far
 * centre costs no digits; the second root from the product of the two. One root where the line cuts off less than the tolerance. */
function lineArc(e: Edges, l: number, c: number, ends: number, tolerance: number, tell: Meeting): void {
  const x = e.x0[l]!;
  const y = e.y0[l]!;
  const r = e.r[c]!;
  const dx = e.x1[l]! - x;
  const dy = e.y1[l]! - y;
  const length = Math.sqrt(dx * dx + dy * dy);
  const ux = dx / length;
  const uy = dy / length;
  const qx = x - e.x0[c]!;
  const qy = y - e.y0[c]!;
  const wx = e.cx[c]! - e.x0[c]!;
  const wy = e.cy[c]! - e.y0[c]!;
  const b = ux * (qx - wx) + uy * (qy - wy);
  const product = qx * (qx - 2 * wx) + qy * (qy - 2 * wy);
  const square = b * b - product;
  const cutOff = square / (r + Math.sqrt(Math.max(0, r * r - square)));
  if (cutOff < -tolerance) return;
  if (cutOff <= tolerance) {
    crossing(e, l, c, ends, x - ux * b, y - uy * b, tolerance, tell);
    return;
  }
  const far = b > 0 ? -b - Math.sqrt(square) : Math.sqrt(square) - b;
  const near = product / far;
  crossing(e, l, c, ends, x + ux * near, y + uy * near, tolerance, tell);
  crossing(e, l, c, ends, x + ux * far, y + uy * far, tolerance, tell);
}

/** Two points either side of the line of centres; the one between them where the circles overlap by less than the tolerance. Reckoned from
 * the smaller circle, and from how far beyond the larger one its centre is.
 * Source: the radical line of two circles, e.g. CRC Concise Encyclopedia of Mathematics, "Circle-Circle Intersection". */
function arcArc(e: Edges, a: number, b: number, ends: number, tolerance: number, tell: Meeting): void {
  const small = e.r[a]! <= e.r[b]! ? a : b;
  const large = small === a ? b : a;
  const r = e.r[small]!;
  const dx = e.cx[large]! - e.cx[small]!;
  const dy = e.cy[large]! - e.cy[small]!;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d <= tolerance) return; // one circle: cut at each other's ends, done already
  const beyond = beyondCarrier(e, large, e.cx[small]!, e.cy[small]!);
  const overlap = r - Math.abs(beyond);
  if (overlap < -tolerance) return;
  const ux = dx / d;
  const uy = dy / d;
  const touching = overlap <= tolerance;
  const across = (beyond * (d + e.r[large]!) + r * r) / (2 * d);
  const along = touching ? Math.sign(across) * r : across;
  const half = touching ? 0 : Math.sqrt(Math.max(0, (r - along) * (r + along)));
  const x = e.cx[small]! + ux * along;
  const y = e.cy[small]! + uy * along;
  crossing(e, a, b, ends, x - uy * half, y + ux * half, tolerance, tell);
  if (half > 0) crossing(e, a, b, ends, x + uy * half, y - ux * half, tolerance, tell);
}
