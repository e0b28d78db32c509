import type { EllipseArc } from '../geometry/curve.js';
import { type Point, polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';

/** An arc as SVG path data give it: by its ends. */
export interface EndpointArc {
  readonly from: Point;
  readonly to: Point;
  readonly rx: Mm;
  readonly ry: Mm;
  /** of the x radius, anticlockwise in the frame of the points */
  readonly turn: Radians;
  readonly large: boolean;
  /** run anticlockwise in the frame of the points */
  readonly anticlockwise: boolean;
}

/** The same arc by its centre; radii too small for the ends are made just large enough. Undefined where it is a straight line: a radius of 0.
 * Source: W3C, SVG 2, implementation notes B.2.4 "Conversion from endpoint to center parameterization", B.2.5 "Correction of out-of-range radii". */
export function centered(arc: EndpointArc): EllipseArc | undefined {
  const [a, b] = [Math.abs(arc.rx), Math.abs(arc.ry)];
  if (!(a > 0 && b > 0)) return undefined;
  const [c, s] = [Math.cos(arc.turn), Math.sin(arc.turn)];
  // half the way from the end to the start, in the ellipse's own frame, in radii
  const hx = (arc.from.x - arc.to.x) / 2;
  const hy = (arc.from.y - arc.to.y) / 2;
  const u = (c * hx + s * hy) / a;
  const v = (c * hy - s * hx) / b;
  const reach = u * u + v * v;
  const grow = Math.max(1, Math.sqrt(reach));
  const far = reach < 1 ? Math.sqrt(1 / reach - 1) : 0;
  const side = arc.large !== arc.anticlockwise ? 1 : -1;
  // centre in the unit circle's frame, from the middle between the ends
  const [ku, kv] = [side * far * v, -side * far * u];
  const center = {
    x: (arc.from.x + arc.to.x) / 2 + c * a * ku - s * b * kv,
    y: (arc.from.y + arc.to.y) / 2 + s * a * ku + c * b * kv,
  };
  const start = Math.atan2((v - kv) / grow, (u - ku) / grow);
  const end = Math.atan2((-v - kv) / grow, (-u - ku) / grow);
  const sweep = swept(end - start, arc.anticlockwise);
  return { center, axis: polar(a * grow, arc.turn), ratio: b / a, start, sweep };
}

/** A turn of less than a full circle in the given direction. */
function swept(turn: Radians, anticlockwise: boolean): Radians {
  const full = 2 * Math.PI;
  const positive = ((turn % full) + full) % full;
  return anticlockwise ? positive : positive - full;
}
