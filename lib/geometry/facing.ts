import { add, distance, dot, type Point, scale, subtract } from './point.js';
import type { ArcSegment, LineSegment, Segment } from './segment.js';

const TURN = 2 * Math.PI;

/** Whether an angle lies on an arc; its ends count. */
function onArc(s: ArcSegment, p: Point): boolean {
  const angle = Math.atan2(p.y - s.center.y, p.x - s.center.x);
  const along = s.sweep > 0 ? angle - s.start : s.start - angle;
  return ((along % TURN) + TURN) % TURN <= Math.abs(s.sweep);
}

/** The point of an edge straight across from a point: undefined where that lies past the edge's ends. */
export function footOn(s: Segment, p: Point): Point | undefined {
  if (s.kind === 'line') {
    const chord = subtract(s.to, s.from);
    const share = dot(subtract(p, s.from), chord) / dot(chord, chord);
    return share >= 0 && share <= 1 ? add(s.from, scale(chord, share)) : undefined;
  }
  const out = subtract(p, s.center);
  const far = Math.hypot(out.x, out.y);
  return far > 0 && onArc(s, p) ? add(s.center, scale(out, s.radius / far)) : undefined;
}

/** A point of one edge and one of another. */
export type Pair = readonly [Point, Point];

const both = (p: Point | undefined, q: Point | undefined): Pair[] => (p && q ? [[p, q]] : []);

/** Across from the centre of the arc. */
function lineToArc(line: LineSegment, arc: ArcSegment): Pair[] {
  const p = footOn(line, arc.center);
  return both(p, p && footOn(arc, p));
}

/** On the line through both centres, either side of each. */
function arcToArc(a: ArcSegment, b: ArcSegment): Pair[] {
  const apart = distance(a.center, b.center);
  if (apart === 0) return [];
  const along = scale(subtract(b.center, a.center), 1 / apart);
  const on = (s: ArcSegment): Point[] =>
    [s.radius, -s.radius].map(r => add(s.center, scale(along, r))).filter(p => onArc(s, p));
  return on(a).flatMap(p => on(b).map((q): Pair => [p, q]));
}

function betweenEnds(a: Segment, b: Segment): Pair[] {
  if (a.kind === 'line' && b.kind === 'line') return [];
  if (a.kind === 'line') return lineToArc(a, b as ArcSegment);
  if (b.kind === 'line') return lineToArc(b, a).map(([p, q]): Pair => [q, p]);
  return arcToArc(a, b);
}

/** Every pair of points, one on each edge, between which two edges may be locally nearest: ends with ends, ends with what lies straight across
 * from them, and what lies across from each other between the ends. */
export const facing = (a: Segment, b: Segment): Pair[] => [
  ...[a.from, a.to].flatMap(p => [...both(p, footOn(b, p)), ...[b.from, b.to].map((q): Pair => [p, q])]),
  ...[b.from, b.to].flatMap(q => both(footOn(a, q), q)),
  ...betweenEnds(a, b),
];
