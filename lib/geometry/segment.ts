import type { Mm, Radians } from '../units/length.js';
import type { Outline, Polyline, Vertex } from './outline.js';
import { distance, type Point } from './point.js';

export interface LineSegment {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** A circular arc of at most a half turn, with the carrier worked out from its bulge. */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly center: Point;
  readonly radius: Mm;
  /** angle of `from` seen from the centre */
  readonly start: Radians;
  /** signed, positive anticlockwise, |sweep| <= pi */
  readonly sweep: Radians;
}

export type Segment = LineSegment | ArcSegment;

/** A bulge under this is a line: its sagitta is under a 1e-15 part of the chord, below rounding, and its centre would lie nowhere. */
const FLAT = 1e-15;

/** The edge from a vertex to the next point. */
export function segmentFrom(from: Vertex, to: Point): Segment {
  if (Math.abs(from.bulge) < FLAT) return { kind: 'line', from, to };
  const b = from.bulge;
  const chord = distance(from, to);
  const radius = (chord * (1 + b * b)) / (4 * Math.abs(b));
  // signed distance from the chord's midpoint to the centre, to the left of travel for an anticlockwise arc
  const apothem = (1 - b * b) / (4 * b);
  const center = {
    x: (from.x + to.x) / 2 - (to.y - from.y) * apothem,
    y: (from.y + to.y) / 2 + (to.x - from.x) * apothem,
  };
  const start = Math.atan2(from.y - center.y, from.x - center.x);
  return { kind: 'arc', from, to, center, radius, start, sweep: 4 * Math.atan(b) };
}

/** The edges of an outline, in order; edge i starts at vertex i. */
export const segments = (outline: Outline): Segment[] =>
  outline.map((v, i) => segmentFrom(v, outline[(i + 1) % outline.length]!));

/** The edges of an open run: one fewer than its vertices. */
export const polylineSegments = (line: Polyline): Segment[] =>
  line.slice(0, -1).map((v, i) => segmentFrom(v, line[i + 1]!));

/** The point a share 0..1 of the way along a segment. */
export function pointOn(s: Segment, share: number): Point {
  if (s.kind === 'line')
    return { x: s.from.x + (s.to.x - s.from.x) * share, y: s.from.y + (s.to.y - s.from.y) * share };
  const a = s.start + s.sweep * share;
  return { x: s.center.x + s.radius * Math.cos(a), y: s.center.y + s.radius * Math.sin(a) };
}
