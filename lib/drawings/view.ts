import { movePoint } from '../geometry/motion.js';
import type { Point } from '../geometry/point.js';
import type { Piece } from '../models/model.js';
import type { Mm, Radians } from '../units/length.js';

/** A point of space, or a direction: x and y as in the prop seen from the front, z to the front. */
export interface Point3 extends Point {
  readonly z: Mm;
}

/** An orthographic view: three directions of length 1, each square to the others; `towards` the one who looks. */
export interface View {
  readonly right: Point3;
  readonly up: Point3;
  readonly towards: Point3;
}

export const dot3 = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** Where a point is seen. */
export const seenAt = (view: View, p: Point3): Point => ({ x: dot3(view.right, p), y: dot3(view.up, p) });

/** From the right, the prop's front to the left: the view that stands to the right of the front view in third-angle projection
 * (ISO 5456-2). */
export const FROM_RIGHT: View = {
  right: { x: 0, y: 0, z: -1 },
  up: { x: 0, y: 1, z: 0 },
  towards: { x: 1, y: 0, z: 0 },
};

/** The prop lying on its back as on a bench, its front up: turned about its axis, then looked at from an angle above the bench. Lengths
 * along the axis are drawn cos(elevation) as long, circles about it as ellipses sin(elevation) as high as wide: an orthographic
 * axonometric projection (ISO 5456-3). @param turn anticlockwise from the front view   @param elevation 0 to pi / 2 */
export function benchView(turn: Radians, elevation: Radians): View {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [ce, se] = [Math.cos(elevation), Math.sin(elevation)];
  return {
    right: { x: c, y: -s, z: 0 },
    up: { x: s * se, y: c * se, z: ce },
    towards: { x: -s * ce, y: -c * ce, z: se },
  };
}

/** From a point of a part, at a height over its back face, to where it is in the assembled prop. */
export function inProp(piece: Piece): (p: Point, height: Mm) => Point3 {
  const { turn, x, y, z } = piece;
  const motion = { turn, x, y };
  if (!piece.stands) return (p, height) => ({ ...movePoint(p, motion), z: z + height });
  return (p, height) => ({ ...movePoint({ x: p.x, y: -height }, motion), z: z + p.y });
}
