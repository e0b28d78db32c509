import { refuse, requireRange } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { type ArcFit, fitArcs } from './arc-spline.js';
import type { Curve } from './curve.js';
import { vertex } from './outline.js';
import type { Point } from './point.js';

/** A B-spline, rational where it has weights: degree p, n control points, n + p + 1 knots that do not fall; it runs from knot p to knot n. */
export interface Spline {
  readonly degree: number;
  readonly controls: readonly Point[];
  readonly knots: readonly number[];
  /** one a control point, above 0; without them all 1 */
  readonly weights?: readonly number[];
}

const FINEST: Mm = 1e-7;
const COARSEST: Mm = 1e4;
const HIGHEST_DEGREE = 15;

function requireSpline({ degree, controls, knots, weights }: Spline): void {
  if (!Number.isInteger(degree) || degree < 1 || degree > HIGHEST_DEGREE)
    refuse('degree', degree, `1 to ${HIGHEST_DEGREE}, whole`);
  if (controls.length < degree + 1)
    refuse('controls', `${controls.length} points`, `${degree + 1} or more for degree ${degree}`);
  if (knots.length !== controls.length + degree + 1)
    refuse(
      'knots',
      `${knots.length} knots`,
      `${controls.length + degree + 1} for ${controls.length} controls of degree ${degree}`,
    );
  knots.forEach((u, i) => {
    if (!Number.isFinite(u) || (i > 0 && u < knots[i - 1]!))
      refuse(`knots[${i}]`, u, 'finite, not below the knot before it');
  });
  controls.forEach((p, i) => {
    if (!Number.isFinite(p.x) || !Number.isFinite(p.y))
      refuse(`controls[${i}]`, `(${p.x}, ${p.y})`, 'finite coordinates');
  });
  if (weights && weights.length !== controls.length)
    refuse('weights', `${weights.length} weights`, `${controls.length}, one a control`);
  weights?.forEach((w, i) => {
    if (!(w > 0 && w < 1e9)) refuse(`weights[${i}]`, w, 'above 0, below 1e9');
  });
  if (!(knots[controls.length]! > knots[degree]!)) refuse('knots', 'all in one place', 'a range from knot p to knot n');
}

/** A point with its weight: x and y times it. */
interface Weighted {
  readonly x: number;
  readonly y: number;
  readonly w: number;
}

const mix = (a: Weighted, b: Weighted, t: number): Weighted => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
  w: a.w + (b.w - a.w) * t,
});

/** The last two points of de Boor's scheme in knot span k, and the share between them.
 * Source: de Boor's algorithm, Farin, Curves and Surfaces for CAGD, 5th ed., chapter 8; rational form, Piegl and Tiller, The NURBS Book, chapter 4. */
function lastPair(
  spline: Spline,
  points: readonly Weighted[],
  k: number,
  u: number,
): { a: Weighted; b: Weighted; t: number } {
  const { degree: p, knots } = spline;
  let level = points.slice(k - p, k + 1);
  for (let r = 1; r < p; r++) {
    level = level.slice(1).map((d, i) => {
      const lo = knots[k - p + r + i]!;
      return mix(level[i]!, d, (u - lo) / (knots[k + 1 + i]! - lo));
    });
  }
  const lo = knots[k]!;
  return { a: level[0]!, b: level[1]!, t: (u - lo) / (knots[k + 1]! - lo) };
}

/** The spline between two of its knots as a curve of its own, run at an even pace of its parameter. */
function between(spline: Spline, points: readonly Weighted[], from: number, to: number): Curve {
  const { knots, degree, controls } = spline;
  const spanAt = (u: number): number => {
    let k = degree;
    // the last span with a length that starts at or before u, and before the end
    for (let i = degree; i < controls.length; i++)
      if (knots[i]! <= u && knots[i]! < to && knots[i + 1]! > knots[i]!) k = i;
    return k;
  };
  const pair = (t: number) => {
    const u = t >= 1 ? to : from + (to - from) * t;
    return lastPair(spline, points, spanAt(u), u);
  };
  return {
    at: t => {
      const { a, b, t: share } = pair(t);
      const q = mix(a, b, share);
      return { x: q.x / q.w, y: q.y / q.w };
    },
    // the direction of b/w seen from a/w: the tangent of a rational curve joins the last two points
    heading: t => {
      const { a, b } = pair(t);
      return { x: b.x / b.w - a.x / a.w, y: b.y / b.w - a.y / a.w };
    },
  };
}

/** Knots inside the spline's range where it may have a corner: as often there as the degree says. */
function corners({ degree, knots, controls }: Spline): number[] {
  const [first, last] = [knots[degree]!, knots[controls.length]!];
  const inside = [...new Set(knots.filter(u => u > first && u < last))];
  return inside.filter(u => knots.filter(v => v === u).length >= degree);
}

/** A B-spline or NURBS of any degree as arcs within a tolerance, tangent-continuous where it is; at knots as often there as its degree it may
 * turn a corner and the arcs then do. @param tolerance mm, 1e-7 to 10000
 * @throws Unusable naming the knot, control or weight; GeometryFailure as `fitArcs`. How few arcs: see `fitArcs`. */
export function arcsFromSpline(spline: Spline, tolerance: Mm): ArcFit {
  requireRange('tolerance', tolerance, FINEST, COARSEST);
  requireSpline(spline);
  const points = spline.controls.map((c, i) => {
    const w = spline.weights?.[i] ?? 1;
    return { x: c.x * w, y: c.y * w, w };
  });
  const stops = [spline.knots[spline.degree]!, ...corners(spline), spline.knots[spline.controls.length]!];
  const fits = stops.slice(1).map((to, i) => fitArcs(between(spline, points, stops[i]!, to), tolerance));
  const line = fits.flatMap(f => f.line.slice(0, -1));
  return { line: [...line, vertex(fits.at(-1)!.line.at(-1)!)], deviation: Math.max(...fits.map(f => f.deviation)) };
}
