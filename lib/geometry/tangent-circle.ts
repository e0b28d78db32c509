import type { Mm } from '../units/length.js';
import { curvature, endDirection, startDirection } from './along.js';
import { add, cross, dot, type Point, scale, subtract } from './point.js';
import type { Segment } from './segment.js';

const leftOf = (u: Point): Point => ({ x: -u.y, y: u.x });

/** An edge's carrier seen from the corner: a line, or a circle, by its direction and curvature there. */
export interface Ray {
  readonly along: Point;
  readonly curvature: number;
}

/** The carriers of the edges into and out of a corner, both in their direction of travel. */
export const raysAt = (before: Segment, after: Segment): readonly [Ray, Ray] => [
  { along: endDirection(before), curvature: curvature(before) },
  { along: startDirection(after), curvature: curvature(after) },
];

/** Signed distance of a point p (from the corner) to the left of a carrier and its unit gradient: the form without the centre, good for
 * any curvature down to a line's. */
function leftDistance(ray: Ray, p: Point): { readonly value: number; readonly gradient: Point } {
  const n = leftOf(ray.along);
  const k = ray.curvature;
  const toCenter = subtract(n, scale(p, k)); // (centre - p) in units of the radius
  const reach = Math.hypot(toCenter.x, toCenter.y);
  return { value: (2 * dot(p, n) - k * dot(p, p)) / (1 + reach), gradient: scale(toCenter, 1 / reach) };
}

/** The point of a carrier nearest to p, both seen from the corner. */
export const footOn = (ray: Ray, p: Point): Point => {
  const d = leftDistance(ray, p);
  return subtract(p, scale(d.gradient, d.value));
};

/** A curvature that turns less than this over the circle's own size is a line to begin with. */
const NEARLY_STRAIGHT = 1e-4;

/** The locus of centres at a distance to the left of a carrier: a line or a circle; undefined where the carrier's circle is no larger. */
type Locus = { readonly through: Point; readonly along: Point } | { readonly center: Point; readonly radius: Mm };

function locus(ray: Ray, left: number): Locus | undefined {
  const n = leftOf(ray.along);
  if (Math.abs(ray.curvature * left) < NEARLY_STRAIGHT) return { through: scale(n, left), along: ray.along };
  const reach = Math.sign(ray.curvature) * (1 / ray.curvature - left);
  return reach > 0 ? { center: scale(n, 1 / ray.curvature), radius: reach } : undefined;
}

function meetings(a: Locus, b: Locus): Point[] {
  if ('along' in a) return 'along' in b ? lineWithLine(a, b) : lineWithCircle(a, b);
  return 'along' in b ? lineWithCircle(b, a) : circleWithCircle(a, b);
}

type Line = Extract<Locus, { along: Point }>;
type Circle = Extract<Locus, { center: Point }>;

function lineWithLine(a: Line, b: Line): Point[] {
  const k = cross(a.along, b.along);
  return k === 0 ? [] : [add(a.through, scale(a.along, cross(subtract(b.through, a.through), b.along) / k))];
}

function lineWithCircle(line: Line, circle: Circle): Point[] {
  const v = subtract(circle.center, line.through);
  const far = Math.abs(cross(line.along, v));
  if (far > circle.radius) return [];
  const middle = dot(line.along, v);
  const half = Math.sqrt((circle.radius - far) * (circle.radius + far));
  return [middle - half, middle + half].map(t => add(line.through, scale(line.along, t)));
}

function circleWithCircle(a: Circle, b: Circle): Point[] {
  const v = subtract(b.center, a.center);
  const d = Math.hypot(v.x, v.y);
  if (!(d > 0)) return [];
  const u = scale(v, 1 / d);
  const along = (d + ((a.radius - b.radius) * (a.radius + b.radius)) / d) / 2;
  if (Math.abs(along) > a.radius) return [];
  const half = Math.sqrt((a.radius - along) * (a.radius + along));
  const foot = add(a.center, scale(u, along));
  return [half, -half].map(h => add(foot, scale(leftOf(u), h)));
}

/** Newton's method on the two distances: from a near guess, three steps reach rounding. */
function polish(a: Ray, b: Ray, left: number, guess: Point): Point {
  let p = guess;
  for (let k = 0; k < 4; k++) {
    const da = leftDistance(a, p);
    const db = leftDistance(b, p);
    const det = cross(da.gradient, db.gradient);
    if (Math.abs(det) < 1e-12) return p; // the loci touch: the guess is as good as it gets
    const ea = left - da.value;
    const eb = left - db.value;
    p = add(p, {
      x: (ea * db.gradient.y - eb * da.gradient.y) / det,
      y: (eb * da.gradient.x - ea * db.gradient.x) / det,
    });
  }
  return p;
}

/** Centres, seen from the corner, of the circles of a radius that touch both carriers on one hand (1 left, -1 right of travel). None to two.
 * Source: CRC Concise Encyclopedia of Mathematics, "Circle-Line Intersection", "Circle-Circle Intersection". */
export function tangentCenters(a: Ray, b: Ray, hand: 1 | -1, radius: Mm): Point[] {
  const left = hand * radius;
  const la = locus(a, left);
  const lb = locus(b, left);
  return la && lb ? meetings(la, lb).map(guess => polish(a, b, left, guess)) : [];
}
