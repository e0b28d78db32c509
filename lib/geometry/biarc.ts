import { refuse } from '../findings/unusable.js';
import type { Radians } from '../units/length.js';
import { spin } from './along.js';
import { type Polyline, reversePolyline, type Vertex, vertex } from './outline.js';
import { add, angleOf, cross, dot, type Point, scale, subtract } from './point.js';

/** Below this an angle is rounding, not a turn: a hundredth of the promised 1e-9 rad. */
const NO_TURN: Radians = 1e-11;
/** An arc turns less than this from one end to the other; beyond it the chord says nothing of the direction. */
const FULL_TURN = 2 * Math.PI - 1e-6;
/** In chords: an arc that swings out farther loses the digits of the points it joins. */
const FARTHEST = 1e4;

/** A unit vector at an angle. */
export const direction = (angle: Radians): Point => ({ x: Math.cos(angle), y: Math.sin(angle) });

/** The signed angle from one vector to another, -pi to pi. */
export const turnFrom = (a: Point, b: Point): Radians => Math.atan2(cross(a, b), dot(a, b));

/** The vertices of the arc that leaves `from` along `tangent` and ends at `to`, its end left out: one, or two halves past a half circle.
 * @param tangent any length but zero
 * @throws Unusable when the arc would have to turn a full circle (the chord runs back along the tangent) */
export function arcAlong(from: Point, tangent: Point, to: Point): Vertex[] {
  const chord = subtract(to, from);
  const half = turnFrom(tangent, chord);
  if (Math.abs(half) < NO_TURN) return [vertex(from)];
  if (2 * Math.abs(half) > FULL_TURN)
    refuse(
      'tangent',
      `${turnFrom({ x: 1, y: 0 }, tangent)} rad, straight back from the end point`,
      'any other direction',
    );
  if (Math.abs(half) <= Math.PI / 2) return [vertex(from, Math.tan(half / 2))];
  // the middle of the arc: half the turn along, at the chord's length / (2 cos(half / 2))
  const middle = add(from, spin(chord, -half / 2, 1 / (2 * Math.cos(half / 2))));
  const bulge = Math.tan(half / 4);
  return [vertex(from, bulge), vertex(middle, bulge)];
}

/** The joint of the biarc whose arcs both run at an angle m to the chord there, the ends at a and b: the arcs' chords stand at (a + m) / 2 and
 * (m + b) / 2, and the law of sines gives their lengths. Undefined where one of them would have to run backwards. */
export function jointAt(from: Point, to: Point, a: Radians, b: Radians, m: Radians): Point | undefined {
  const share = Math.sin((b + m) / 2) / Math.sin((b - a) / 2);
  const rest = Math.sin((a + m) / 2) / Math.sin((a - b) / 2);
  if (!(share > 0 && rest > 0 && share + rest < FARTHEST)) return undefined;
  const chord = subtract(to, from);
  return add(from, spin(chord, (a + m) / 2, share));
}

/** The arcs to and from a joint that lies on the biarc's locus. */
export const arcsThrough = (from: Point, t0: Point, at: Point, to: Point, t1: Point): Polyline => [
  ...arcAlong(from, t0, at),
  ...reversePolyline([...arcAlong(to, scale(t1, -1), at), vertex(at)]),
];

/** `biarc` with unit vectors for tangents. */
export function biarcAlong(from: Point, t0: Point, to: Point, t1: Point): Polyline {
  const chord = subtract(to, from);
  if (!(dot(chord, chord) > 0)) refuse('to', `(${to.x}, ${to.y})`, 'a point other than the start, finite');
  const a = turnFrom(chord, t0);
  const b = turnFrom(chord, t1);
  if (Math.abs(a + b) < NO_TURN) return [...arcAlong(from, t0, to), vertex(to)];
  // at the joint both run at -(a + b) / 2 to the chord, so the arcs' chords stand at equal angles (a - b) / 4 to it and are equally long
  const slant = (a - b) / 4;
  if (!(Math.cos(slant) > 0.5 / FARTHEST))
    refuse('toTangent', `${angleOf(t1)} rad, straight back as the start is`, 'any other direction');
  const rise = Math.tan(slant) / 2;
  const at = { x: (from.x + to.x) / 2 - rise * chord.y, y: (from.y + to.y) / 2 + rise * chord.x };
  return arcsThrough(from, t0, at, to, t1);
}

/** Two arcs (or lines) that leave one point and reach another along given directions and are tangent where they join.
 * One arc where one does it, a line where a line does it; an arc past a half circle comes as two, so |bulge| <= 1.
 * Of the one-parameter family of joints, the one on the chord's perpendicular bisector: both arcs have equal chords. Directions agree
 * to 1e-9 rad.
 * @param fromTangent @param toTangent directions of travel, radians from +x
 * @returns bulge vertices from `from` to `to`, 2 to 5 of them
 * @throws Unusable when the points coincide, or a direction runs straight back from the other point with no arc that turns round
 * Source: Bolton, "Biarc curves", Computer-Aided Design 7 (1975) 89-92; Meek and Walton, "Approximation of discrete data by G1 arc
 * splines", Computer-Aided Design 24 (1992) 301-306. */
export const biarc = (from: Point, fromTangent: Radians, to: Point, toTangent: Radians): Polyline =>
  biarcAlong(from, direction(fromTangent), to, direction(toTangent));
