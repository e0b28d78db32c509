import type { EllipseArc } from '../geometry/curve.js';
import type { Point } from '../geometry/point.js';

/** An affine map of the plane, as SVG writes it: (x, y) becomes (a x + c y + e, b x + d y + f). */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** The map that does `inner` first, then `outer`. */
export const after = (outer: Affine, inner: Affine): Affine => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
});

export const placed = (m: Affine, p: Point): Point => ({
  x: m.a * p.x + m.c * p.y + m.e,
  y: m.b * p.x + m.d * p.y + m.f,
});

/** Lengths of images of directions differ by less than this share: a circle stays one. */
const ALIKE = 1e-12;

/** An arc of an ellipse under a map that flattens nothing. The images of its half axes are conjugate half diameters; the new axes are found
 * from them by the angle at which the ellipse's radius is greatest: tan 2t = 2 u·v / (u² - v²). */
export function placedEllipse(m: Affine, arc: EllipseArc): EllipseArc {
  const linear = (x: number, y: number): Point => ({ x: m.a * x + m.c * y, y: m.b * x + m.d * y });
  const u = linear(arc.axis.x, arc.axis.y);
  const v = linear(-arc.axis.y * arc.ratio, arc.axis.x * arc.ratio);
  const [uu, vv, uv] = [u.x * u.x + u.y * u.y, v.x * v.x + v.y * v.y, u.x * v.x + u.y * v.y];
  const round = Math.abs(uu - vv) + Math.abs(uv) <= ALIKE * uu;
  const t = round ? 0 : Math.atan2(2 * uv, uu - vv) / 2;
  const [c, s] = [Math.cos(t), Math.sin(t)];
  const axis = { x: c * u.x + s * v.x, y: c * u.y + s * v.y };
  const other = { x: c * v.x - s * u.x, y: c * v.y - s * u.y };
  const across = (axis.x * other.y - axis.y * other.x) / (axis.x * axis.x + axis.y * axis.y);
  const ratio = round ? Math.sign(across) : across;
  return { center: placed(m, arc.center), axis, ratio, start: arc.start - t, sweep: arc.sweep };
}
