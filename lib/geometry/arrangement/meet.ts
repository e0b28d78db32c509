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

/** Distance of a point from an edge's carrier. */
export function fromCarrier(e: Edges, i: number, x: number, y: number): number {
  if (e.turn[i] !== 0) {
    const ux = x - e.cx[i]!;
    const uy = y - e.cy[i]!;
    return Math.abs(Math.sqrt(ux * ux + uy * uy) - e.r[i]!);
  }
  const dx = e.x1[i]! - e.x0[i]!;
  const dy = e.y1[i]! - e.y0[i]!;
  return Math.abs(dx * (y - e.y0[i]!) - dy * (x - e.x0[i]!)) / Math.sqrt(dx * dx + dy * dy);
}

const touches = (e: Edges, i: number, x: number, y: number, tolerance: number): boolean =>
  inBox(e, i, x, y, tolerance) && fromCarrier(e, i, x, y) <= tolerance && within(e, i, x, y, tolerance);

const endsAt = (e: Edges, i: number, x: number, y: number): boolean =>
  (e.x0[i] === x && e.y0[i] === y) || (e.x1[i] === x && e.y1[i] === y);

/** Every point where two edges meet: ends lying on the other edge (so edges on one carrier are cut at each other's ends), then crossings. */
export function meet(e: Edges, a: number, b: number, tolerance: number, tell: Meeting): void {
  const ax0 = e.x0[a]!;
  const ay0 = e.y0[a]!;
  const ax1 = e.x1[a]!;
  const ay1 = e.y1[a]!;
  const bx0 = e.x0[b]!;
  const by0 = e.y0[b]!;
  const bx1 = e.x1[b]!;
  const by1 = e.y1[b]!;
  const sharedStart = endsAt(e, b, ax0, ay0);
  const sharedEnd = endsAt(e, b, ax1, ay1);
  if (!sharedStart && touches(e, b, ax0, ay0, tolerance)) tell(ax0, ay0, false, true);
  if (!sharedEnd && touches(e, b, ax1, ay1, tolerance)) tell(ax1, ay1, false, true);
  if (!endsAt(e, a, bx0, by0) && touches(e, a, bx0, by0, tolerance)) tell(bx0, by0, true, false);
  if (!endsAt(e, a, bx1, by1) && touches(e, a, bx1, by1, tolerance)) tell(bx1, by1, true, false);
  if (e.turn[a] === 0 && e.turn[b] === 0) {
    if (!sharedStart && !sharedEnd) lineLine(e, a, b, tolerance, tell);
  } else if (e.turn[a] === 0) lineArc(e, a, b, tolerance, tell);
  else if (e.turn[b] === 0) lineArc(e, b, a, tolerance, tell);
  else arcArc(e, a, b, tolerance, tell);
}

function crossing(e: Edges, a: number, b: number, x: number, y: number, tolerance: number, tell: Meeting): void {
  if (within(e, a, x, y, tolerance) && within(e, b, x, y, tolerance)) tell(x, y, true, true);
}

function lineLine(e: Edges, a: number, b: number, tolerance: number, tell: Meeting): void {
  const ax = e.x0[a]!;
  const ay = e.y0[a]!;
  const adx = e.x1[a]! - ax;
  const ady = e.y1[a]! - ay;
  const bdx = e.x1[b]! - e.x0[b]!;
  const bdy = e.y1[b]! - e.y0[b]!;
  const k = adx * bdy - ady * bdx;
  if (k === 0) return;
  const t = ((e.x0[b]! - ax) * bdy - (e.y0[b]! - ay) * bdx) / k;
  crossing(e, a, b, ax + adx * t, ay + ady * t, tolerance, tell);
}

/** The foot of the centre on the line, and half a chord to either side; one point where the line touches within the tolerance. */
function lineArc(e: Edges, l: number, c: number, tolerance: number, tell: Meeting): void {
  const x = e.x0[l]!;
  const y = e.y0[l]!;
  const r = e.r[c]!;
  const dx = e.x1[l]! - x;
  const dy = e.y1[l]! - y;
  const length = Math.sqrt(dx * dx + dy * dy);
  const ux = dx / length;
  const uy = dy / length;
  const px = e.cx[c]! - x;
  const py = e.cy[c]! - y;
  const far = Math.abs(ux * py - uy * px);
  if (far > r + tolerance) return;
  const along = ux * px + uy * py;
  const half = Math.sqrt(Math.max(0, (r - far) * (r + far)));
  crossing(e, l, c, x + ux * (along - half), y + uy * (along - half), tolerance, tell);
  if (half > 0) crossing(e, l, c, x + ux * (along + half), y + uy * (along + half), tolerance, tell);
}

/** Source: the radical line of two circles, e.g. CRC Concise Encyclopedia of Mathematics, "Circle-Circle Intersection". */
function arcArc(e: Edges, a: number, b: number, tolerance: number, tell: Meeting): void {
  const ra = e.r[a]!;
  const rb = e.r[b]!;
  const dx = e.cx[b]! - e.cx[a]!;
  const dy = e.cy[b]! - e.cy[a]!;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d > ra + rb + tolerance || d < Math.abs(ra - rb) - tolerance) return;
  if (d <= tolerance) return; // one circle: cut at each other's ends, done already
  const ux = dx / d;
  const uy = dy / d;
  const along = (d + ((ra - rb) * (ra + rb)) / d) / 2;
  const half = Math.sqrt(Math.max(0, (ra - along) * (ra + along)));
  const x = e.cx[a]! + ux * along;
  const y = e.cy[a]! + uy * along;
  crossing(e, a, b, x - uy * half, y + ux * half, tolerance, tell);
  if (half > 0) crossing(e, a, b, x + uy * half, y - ux * half, tolerance, tell);
}
