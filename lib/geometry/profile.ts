import { refuse } from '../findings/unusable.js';
import type { Radians } from '../units/length.js';
import { arcAlong, arcsThrough, biarcAlong, direction, jointAt } from './biarc.js';
import { type Polyline, reversePolyline, vertex } from './outline.js';
import { add, angleOf, cross, dot, type Point, scale, subtract } from './point.js';

/** Directions of travel at the ends, radians from +x, -pi/2 to pi/2; without them the ends follow their neighbours. */
export interface ProfileOptions {
  readonly startTangent?: Radians;
  readonly endTangent?: Radians;
}

const UPRIGHT: Radians = Math.PI / 2;
/** A line shorter than this share of the arcs' tangents has no direction worth its digits. */
const LINE_LEFT = 1e-6;

function requireProfile(points: readonly Point[], options: ProfileOptions): void {
  if (points.length < 2) refuse('points', `${points.length} points`, 'two or more');
  points.forEach((p, i) => {
    if (!Number.isFinite(p.x) || !Number.isFinite(p.y))
      refuse(`points[${i}]`, `(${p.x}, ${p.y})`, 'finite coordinates');
    const before = points[i - 1];
    if (before && !(p.x > before.x)) refuse(`points[${i}].x`, p.x, `above the point before it, ${before.x}`);
  });
  for (const [name, t] of Object.entries(options))
    if (t !== undefined && !(Math.abs(t) <= UPRIGHT)) refuse(name, `${t} rad`, `${-UPRIGHT} to ${UPRIGHT} rad`);
}

/** An angle held within what keeps the run monotone beside chords of angles a and b: level where they rise and fall, else at most
 * twice the flatter one. With both end angles in 0..2 c of a chord's angle c, the biarc's joint, at 2 c less their mean, is level or rises. */
function limited(angle: Radians, a: Radians, b: Radians): Radians {
  if (a * b <= 0) return 0;
  const most = Math.min(UPRIGHT, 2 * Math.min(Math.abs(a), Math.abs(b)));
  return Math.sign(a) * Math.min(most, Math.max(0, angle * Math.sign(a)));
}

/** Directions at the points: of the circle through each and its two neighbours, held monotone; at an end, of the circle through the
 * end point that already has its neighbour's direction. */
function tangents(points: readonly Point[], options: ProfileOptions): Radians[] {
  const chords = points.slice(1).map((p, i) => angleOf(subtract(p, points[i]!)));
  const inner = chords.slice(1).map((after, i) => {
    const before = chords[i]!;
    return limited(before + after - angleOf(subtract(points[i + 2]!, points[i]!)), before, after);
  });
  const first = chords[0]!;
  const last = chords.at(-1)!;
  const mirrored = (chord: Radians, neighbour: Radians | undefined): Radians =>
    limited(2 * chord - (neighbour ?? chord), chord, chord);
  const start = options.startTangent ?? mirrored(first, inner[0] ?? options.endTangent);
  const end = options.endTangent ?? mirrored(last, inner.at(-1) ?? options.startTangent);
  return [start, ...inner, end];
}

/** A line between two arcs, its direction t given: v = d (t0 + t1) + l t, each joint a tangent length d along t from its tangent's tip.
 * Undefined where no line is left between the arcs (l <= 2 d). */
function arcLineArc(from: Point, t0: Point, t: Point, to: Point, t1: Point): Polyline | undefined {
  const v = subtract(to, from);
  const both = add(t0, t1);
  const d = cross(v, t) / cross(both, t);
  const l = dot(v, t) - d * dot(both, t);
  if (!(d > 0 && l > 2 * d * (1 + LINE_LEFT))) return undefined;
  const enter = add(from, scale(add(t0, t), d));
  const leave = subtract(to, scale(add(t1, t), d));
  const arrive = reversePolyline([...arcAlong(to, scale(t1, -1), leave), vertex(leave)]);
  return [...arcAlong(from, t0, enter), vertex(enter), ...arrive];
}

/** One span of the profile: a biarc, its joint held between level and upright; where no such joint is, arc, line, arc at that limit. */
function span(from: Point, a0: Radians, to: Point, a1: Radians): Polyline {
  const chord = angleOf(subtract(to, from));
  const t0 = direction(a0);
  const t1 = direction(a1);
  const rises = Math.sign(chord);
  const middle = 2 * chord - (a0 + a1) / 2; // the biarc's direction at its joint
  const held = rises * Math.min(UPRIGHT, Math.max(0, middle * rises));
  const monotone = rises !== 0 && a0 * rises >= 0 && a1 * rises >= 0;
  if (!monotone || held === middle) return biarcAlong(from, t0, to, t1);
  const at = jointAt(from, to, a0 - chord, a1 - chord, held - chord);
  if (at) return arcsThrough(from, t0, at, to, t1);
  return arcLineArc(from, t0, direction(held), to, t1) ?? biarcAlong(from, t0, to, t1);
}

/** A smooth run of true arcs and lines through points: a turned handle's half width over its length, say.
 * Tangent-continuous (1e-9 rad), every point a vertex, |bulge| <= 1. Between two points it rises where they rise, falls where they fall, and
 * is level at local extremes, so it never passes the points' own extremes; steeper than upright it never runs. That holds with end
 * directions left out or agreeing with the rise of the first and last span.
 * @param points mm, two or more, x strictly increasing
 * @returns a polyline from the first point to the last: one arc a span where that suffices, else two, or arc, line, arc
 * @throws Unusable naming the point or option
 * Source: monotone limits on directions after the idea of Fritsch and Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer.
 * Anal. 17 (1980) 238-246, worked out anew for biarcs; directions from circles through three points, Meek and Walton 1992 (see biarc). */
export function smoothProfile(points: readonly Point[], options: ProfileOptions = {}): Polyline {
  requireProfile(points, options);
  const along = tangents(points, options);
  const spans = points.slice(1).map((p, i) => span(points[i]!, along[i]!, p, along[i + 1]!));
  return [...spans.flatMap(s => s.slice(0, -1)), vertex(points.at(-1)!)];
}
