import { refuse, requireRange } from '../findings/unusable.js';
import type { Mm, Radians } from '../units/length.js';
import { type ArcFit, fitArcs } from './arc-spline.js';
import { direction } from './biarc.js';
import { bezier, through } from './curve.js';
import { distance, type Point } from './point.js';

const FINEST: Mm = 1e-7;
const COARSEST: Mm = 1e4;

function requirePoints(name: string, points: readonly Point[], least: number): void {
  if (points.length < least) refuse(name, `${points.length} points`, `${least} or more`);
  points.forEach((p, i) => {
    if (!Number.isFinite(p.x) || !Number.isFinite(p.y))
      refuse(`${name}[${i}]`, `(${p.x}, ${p.y})`, 'finite coordinates');
  });
}

/** A Bézier curve of any degree as tangent-continuous arcs within a tolerance; a straight one as one line.
 * @param controls two or more, mm, not all in one place   @param tolerance mm, 1e-7 to 10000
 * @throws Unusable naming the value; GeometryFailure as `fitArcs`. How few arcs: see `fitArcs`.
 * Limits: at a cusp, or where the curve turns a radian or more within a fiftieth of the tolerance, the arcs have a corner.
 * Source: Bézier form, Farin, Curves and Surfaces for CAGD, 5th ed., chapter 4. */
export function arcsFromBezier(controls: readonly Point[], tolerance: Mm): ArcFit {
  requireRange('tolerance', tolerance, FINEST, COARSEST);
  requirePoints('controls', controls, 2);
  if (controls.every(p => distance(p, controls[0]!) === 0))
    refuse('controls', 'all in one place', 'a curve with a length');
  return fitArcs(bezier(controls), tolerance);
}

/** A cubic Bézier curve as arcs; see `arcsFromBezier`. */
export const arcsFromCubic = (p0: Point, p1: Point, p2: Point, p3: Point, tolerance: Mm): ArcFit =>
  arcsFromBezier([p0, p1, p2, p3], tolerance);

/** A quadratic Bézier curve as arcs; see `arcsFromBezier`. */
export const arcsFromQuadratic = (p0: Point, p1: Point, p2: Point, tolerance: Mm): ArcFit =>
  arcsFromBezier([p0, p1, p2], tolerance);

/** How a curve through points ends: closed on itself, or along given directions (radians); without them as its neighbours have it. */
export interface ThroughPoints {
  readonly closed?: boolean;
  readonly startTangent?: Radians;
  readonly endTangent?: Radians;
}

/** Tangent-continuous arcs near a smooth curve through points: for points traced or calculated, as few arcs as hold the tolerance rather than
 * an arc or two a point (`smoothProfile` keeps every point and never overshoots). The curve is cubic between points, its headings those of circles
 * through three of them; the deviation is from that curve, so at most so much from every point.
 * @param points two or more (three when closed), mm, neighbours apart; closed: the first not repeated   @param tolerance mm, 1e-7 to 10000
 * @returns closed: a line that ends where it starts
 * @throws Unusable naming the point; GeometryFailure as `fitArcs`. How few arcs: see `fitArcs`. */
export function arcsFromPoints(points: readonly Point[], tolerance: Mm, options: ThroughPoints = {}): ArcFit {
  requireRange('tolerance', tolerance, FINEST, COARSEST);
  const closed = options.closed ?? false;
  requirePoints('points', points, closed ? 3 : 2);
  points.forEach((p, i) => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined);
    if (next && distance(p, next) === 0) refuse(`points[${i}]`, `(${p.x}, ${p.y})`, 'a point apart from the next');
  });
  const ends = [options.startTangent, options.endTangent].map(t => (t === undefined ? undefined : direction(t)));
  return fitArcs(through(points, closed, ends[0], ends[1]), tolerance);
}
