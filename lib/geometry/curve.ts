import type { Radians } from '../units/length.js';
import { add, distance, dot, ORIGIN, type Point, scale, subtract } from './point.js';

/** A smooth curve run from t = 0 to t = 1. */
export interface Curve {
  readonly at: (t: number) => Point;
  /** direction of travel, any length above zero save where the curve itself stands still */
  readonly heading: (t: number) => Point;
}

const mix = (a: Point, b: Point, t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });

/** de Casteljau's scheme: the last two points before the final one. Source: Farin, Curves and Surfaces for CAGD, 5th ed., chapter 4. */
function lastPair(controls: readonly Point[], t: number): readonly [Point, Point] {
  let level = controls;
  while (level.length > 2) level = level.slice(1).map((p, i) => mix(level[i]!, p, t));
  return [level[0]!, level[1]!];
}

/** A Bézier curve of any degree from 1. Where controls at an end fall together its heading is that towards the first that does not. */
export function bezier(controls: readonly Point[]): Curve {
  const ahead = (from: Point, list: readonly Point[]): Point =>
    subtract(list.find(p => distance(p, from) > 0) ?? from, from);
  const [first, last] = [controls[0]!, controls.at(-1)!];
  const start = ahead(first, controls);
  const end = scale(ahead(last, [...controls].reverse()), -1);
  return {
    at: t => {
      if (t <= 0) return first;
      if (t >= 1) return last;
      const [a, b] = lastPair(controls, t);
      return mix(a, b, t);
    },
    heading: t => {
      if (t <= 0) return start;
      if (t >= 1) return end;
      const [a, b] = lastPair(controls, t);
      return subtract(b, a);
    },
  };
}

/** Part of an ellipse: centre, a vector to the end of one axis, the other axis a share of it (anticlockwise of it when positive),
 * from one eccentric angle over a signed sweep. */
export interface EllipseArc {
  readonly center: Point;
  /** from the centre to the end of an axis, mm */
  readonly axis: Point;
  /** the other half axis over this one, not 0; negative puts it clockwise */
  readonly ratio: number;
  readonly start: Radians;
  readonly sweep: Radians;
}

export function ellipseCurve(e: EllipseArc): Curve {
  const other = scale({ x: -e.axis.y, y: e.axis.x }, e.ratio);
  const along = (c: number, s: number): Point => add(scale(e.axis, c), scale(other, s));
  const angle = (t: number): Radians => e.start + e.sweep * t;
  return {
    at: t => add(e.center, along(Math.cos(angle(t)), Math.sin(angle(t)))),
    heading: t => scale(along(-Math.sin(angle(t)), Math.cos(angle(t))), Math.sign(e.sweep)),
  };
}

/** One of the curve's pieces for a parameter over all, each taking an equal share of it. */
export function joined(pieces: readonly Curve[]): Curve {
  const pick = (t: number): readonly [Curve, number] => {
    const i = Math.min(pieces.length - 1, Math.max(0, Math.floor(t * pieces.length)));
    return [pieces[i]!, t * pieces.length - i];
  };
  return {
    at: t => {
      const [piece, u] = pick(t);
      return piece.at(u);
    },
    heading: t => {
      const [piece, u] = pick(t);
      return piece.heading(u);
    },
  };
}

/** A smooth curve through points: cubic between neighbours, headings those of the circle through three neighbours, handles as long as a
 * circle's. On points of a circle it strays from that circle by under (turn between points)⁶ / 50,000 of the radius.
 * @param closed the last point runs on to the first */
export function through(points: readonly Point[], closed: boolean, startHeading?: Point, endHeading?: Point): Curve {
  const n = points.length;
  const at = (i: number): Point => points[((i % n) + n) % n]!;
  const headings = points.map((p, i) => {
    if (!closed && i === 0)
      return startHeading ?? mirroredHeading(p, at(1), n > 2 ? circleHeading(p, at(1), at(2)) : undefined);
    if (!closed && i === n - 1)
      return endHeading ?? mirroredHeading(at(i - 1), p, n > 2 ? circleHeading(at(i - 2), at(i - 1), p) : undefined);
    return circleHeading(at(i - 1), p, at(i + 1));
  });
  const spans = closed ? n : n - 1;
  return joined(
    Array.from({ length: spans }, (_, i) => {
      const [p, q] = [at(i), at(i + 1)];
      const [u, v] = [headings[i]!, headings[(i + 1) % n]!].map(h => handle(h, subtract(q, p)));
      return bezier([p, add(p, u!), subtract(q, v!), q]);
    }),
  );
}

/** The first control of a cubic arc from its heading and chord: 4/3 tan(angle / 2) radii, for a heading within a right angle of the chord. */
function handle(heading: Point, chord: Point): Point {
  const [h, c] = [Math.hypot(heading.x, heading.y), Math.hypot(chord.x, chord.y)];
  const cosine = Math.max(0, dot(heading, chord) / (h * c));
  return scale(heading, (2 * c) / (3 * (1 + cosine) * h));
}

/** Heading at the middle one of three points, of the circle through them. */
function circleHeading(a: Point, b: Point, c: Point): Point {
  const [u, v] = [subtract(b, a), subtract(c, b)];
  const [uu, vv] = [dot(u, u), dot(v, v)];
  // the secants' slopes, each weighted by the other's chord: exact on a circle
  return add(scale(u, vv), scale(v, uu));
}

/** Heading at the far end of a chord from the one at its near end, as a circle has it: mirrored in the chord. */
function mirroredHeading(p: Point, q: Point, near: Point | undefined): Point {
  const chord = subtract(q, p);
  if (!near) return chord;
  const k = (2 * dot(near, chord)) / dot(chord, chord);
  const m = subtract(scale(chord, k), near);
  return distance(m, ORIGIN) > 0 ? m : chord;
}
