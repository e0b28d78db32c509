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

const dot3 = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

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

/** The prop standing as it does in use, its front turned to the left, looked at from an angle above the floor.
 * @param turn of the one who looks, to the prop's right   @param elevation 0 to pi / 2 */
export function standingView(turn: Radians, elevation: Radians): View {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [ce, se] = [Math.cos(elevation), Math.sin(elevation)];
  return {
    right: { x: c, y: 0, z: -s },
    up: { x: -s * se, y: ce, z: -c * se },
    towards: { x: s * ce, y: se, z: c * ce },
  };
}

/** How a piece is seen: from a point of its part and a height over its back face to the picture, which is a sum of three vectors. */
export interface Seen {
  readonly origin: Point;
  /** what a step of 1 along the part's x, along its y, and up from its back face is on the picture */
  readonly x: Point;
  readonly y: Point;
  readonly h: Point;
  /** the view's directions in the part's frame; z is up from its back face */
  readonly view: View;
}

/** Directions of a part's frame in the prop: x, y, and up from its back face. */
function axesOf({ turn, stands }: Piece): readonly [Point3, Point3, Point3] {
  const x = { ...movePoint({ x: 1, y: 0 }, { turn, x: 0, y: 0 }), z: 0 };
  const y = { ...movePoint({ x: 0, y: 1 }, { turn, x: 0, y: 0 }), z: 0 };
  const z = { x: 0, y: 0, z: 1 };
  return stands ? [x, z, { x: -y.x, y: -y.y, z: 0 }] : [x, y, z];
}

/** How a piece is seen once it is moved from its place in the prop. */
export function seenPiece(view: View, piece: Piece, moved: Point3): Seen {
  const axes = axesOf(piece);
  const [x, y, h] = axes.map(a => seenAt(view, a)) as [Point, Point, Point];
  const inFrame = (d: Point3): Point3 => ({ x: dot3(d, axes[0]), y: dot3(d, axes[1]), z: dot3(d, axes[2]) });
  const origin = seenAt(view, { x: piece.x + moved.x, y: piece.y + moved.y, z: piece.z + moved.z });
  const frame = { right: inFrame(view.right), up: inFrame(view.up), towards: inFrame(view.towards) };
  return { origin, x, y, h, view: frame };
}

/** Digits past a hundredth of a mm would only make a picture's file longer. */
const rounded = (n: number): number => Math.round(n * 100) / 100;

/** Where points of a part at a height over its back face are seen. */
export const seenPoints = ({ origin, x, y, h }: Seen, points: readonly Point[], height: Mm): Point[] =>
  points.map(p => ({
    x: rounded(origin.x + p.x * x.x + p.y * y.x + height * h.x),
    y: rounded(origin.y + p.x * x.y + p.y * y.y + height * h.y),
  }));
