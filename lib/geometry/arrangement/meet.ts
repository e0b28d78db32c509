import type { Edge } from './edge.js';

/** Told of a point where two edges meet: it lies on `a`, on `b`, or on both (a point of one that ends the other lies on both). */
export type Meeting = (x: number, y: number, onA: boolean, onB: boolean) => void;

/** Whether a point on the carrier of an edge lies on the edge, its ends included, within the tolerance.
 * An arc of at most a half turn is the part of its circle across its chord and between the chord's ends. */
export function within(e: Edge, x: number, y: number, tolerance: number): boolean {
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  const px = x - e.x0;
  const py = y - e.y0;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const along = dx * px + dy * py;
  if (along < -tolerance * chord || along > (chord + tolerance) * chord) return false;
  return e.turn === 0 || e.turn * (dx * py - dy * px) <= tolerance * chord;
}

/** Distance of a point from an edge's carrier. */
export function fromCarrier(e: Edge, x: number, y: number): number {
  if (e.turn !== 0) {
    const ux = x - e.cx;
    const uy = y - e.cy;
    return Math.abs(Math.sqrt(ux * ux + uy * uy) - e.r);
  }
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  return Math.abs(dx * (y - e.y0) - dy * (x - e.x0)) / Math.sqrt(dx * dx + dy * dy);
}

const inBox = (e: Edge, x: number, y: number, tolerance: number): boolean =>
  x >= e.minX - tolerance && x <= e.maxX + tolerance && y >= e.minY - tolerance && y <= e.maxY + tolerance;

const touches = (e: Edge, x: number, y: number, tolerance: number): boolean =>
  inBox(e, x, y, tolerance) && fromCarrier(e, x, y) <= tolerance && within(e, x, y, tolerance);

const endsAt = (e: Edge, x: number, y: number): boolean => (e.x0 === x && e.y0 === y) || (e.x1 === x && e.y1 === y);

/** Every point where two edges meet: ends lying on the other edge (so edges on one carrier are cut at each other's ends), then crossings. */
export function meet(a: Edge, b: Edge, tolerance: number, tell: Meeting): void {
  const sharedStart = endsAt(b, a.x0, a.y0);
  const sharedEnd = endsAt(b, a.x1, a.y1);
  if (!sharedStart && touches(b, a.x0, a.y0, tolerance)) tell(a.x0, a.y0, false, true);
  if (!sharedEnd && touches(b, a.x1, a.y1, tolerance)) tell(a.x1, a.y1, false, true);
  if (!endsAt(a, b.x0, b.y0) && touches(a, b.x0, b.y0, tolerance)) tell(b.x0, b.y0, true, false);
  if (!endsAt(a, b.x1, b.y1) && touches(a, b.x1, b.y1, tolerance)) tell(b.x1, b.y1, true, false);
  if (a.turn === 0 && b.turn === 0) {
    if (!sharedStart && !sharedEnd) lineLine(a, b, tolerance, tell);
  } else if (a.turn === 0) lineArc(a, b, tolerance, tell);
  else if (b.turn === 0) lineArc(b, a, tolerance, tell);
  else arcArc(a, b, tolerance, tell);
}

function crossing(a: Edge, b: Edge, x: number, y: number, tolerance: number, tell: Meeting): void {
  if (!inBox(a, x, y, tolerance) || !inBox(b, x, y, tolerance)) return;
  if (within(a, x, y, tolerance) && within(b, x, y, tolerance)) tell(x, y, true, true);
}

function lineLine(a: Edge, b: Edge, tolerance: number, tell: Meeting): void {
  const ax = a.x1 - a.x0;
  const ay = a.y1 - a.y0;
  const bx = b.x1 - b.x0;
  const by = b.y1 - b.y0;
  const k = ax * by - ay * bx;
  if (k === 0) return;
  const t = ((b.x0 - a.x0) * by - (b.y0 - a.y0) * bx) / k;
  crossing(a, b, a.x0 + ax * t, a.y0 + ay * t, tolerance, tell);
}

/** The foot of the centre on the line, and half a chord to either side; one point where the line touches within the tolerance. */
function lineArc(l: Edge, c: Edge, tolerance: number, tell: Meeting): void {
  const dx = l.x1 - l.x0;
  const dy = l.y1 - l.y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  const ux = dx / length;
  const uy = dy / length;
  const px = c.cx - l.x0;
  const py = c.cy - l.y0;
  const far = Math.abs(ux * py - uy * px);
  if (far > c.r + tolerance) return;
  const along = ux * px + uy * py;
  const half = Math.sqrt(Math.max(0, (c.r - far) * (c.r + far)));
  crossing(l, c, l.x0 + ux * (along - half), l.y0 + uy * (along - half), tolerance, tell);
  if (half > 0) crossing(l, c, l.x0 + ux * (along + half), l.y0 + uy * (along + half), tolerance, tell);
}

/** Source: the radical line of two circles, e.g. CRC Concise Encyclopedia of Mathematics, "Circle-Circle Intersection". */
function arcArc(a: Edge, b: Edge, tolerance: number, tell: Meeting): void {
  const dx = b.cx - a.cx;
  const dy = b.cy - a.cy;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d > a.r + b.r + tolerance || d < Math.abs(a.r - b.r) - tolerance) return;
  if (d <= tolerance) return; // one circle: cut at each other's ends, done already
  const ux = dx / d;
  const uy = dy / d;
  const along = (d + ((a.r - b.r) * (a.r + b.r)) / d) / 2;
  const half = Math.sqrt(Math.max(0, (a.r - along) * (a.r + along)));
  const x = a.cx + ux * along;
  const y = a.cy + uy * along;
  crossing(a, b, x - uy * half, y + ux * half, tolerance, tell);
  if (half > 0) crossing(a, b, x + uy * half, y - ux * half, tolerance, tell);
}
