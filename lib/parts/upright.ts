import { refuse, requireRange } from '../findings/unusable.js';
import { arcVertices, circle, type Outline, reverse, vertex } from '../geometry/outline.js';
import { angleOf, ORIGIN, type Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { type Bore, seatPockets, throughBore } from './hub-disc.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A board that stands parallel to a wheel and carries its axle. Lengths mm. */
export interface UprightOptions extends PieceOptions {
  /** one of a pair, or the only one */
  readonly kind: 'cheek' | 'post';
  /** width at the bottom */
  readonly base: Mm;
  /** from the axle down to the bottom */
  readonly down: Mm;
  /** how far the sides run straight up from the bottom, below the axle by more than `head` */
  readonly skirt: Mm;
  /** radius of the round head about the axle */
  readonly head: Mm;
  readonly bore: Bore;
}

/** Bottom and skirt, then tangents from the skirt's corners to the head. A tangent from a point at a distance d touches a circle of
 * radius r at acos(r / d) from the line to the point. Source: plane trigonometry. */
function outline({ base, down, skirt, head }: UprightOptions): Outline {
  const corner: Point = { x: base / 2, y: skirt - down };
  const touch = angleOf(corner) + Math.acos(head / Math.hypot(corner.x, corner.y));
  const end = Math.PI - touch;
  return [
    vertex({ x: -base / 2, y: -down }),
    vertex({ x: base / 2, y: -down }),
    vertex(corner),
    ...arcVertices(ORIGIN, head, touch, end - touch),
    vertex({ x: head * Math.cos(end), y: head * Math.sin(end) }),
    vertex({ x: -corner.x, y: corner.y }),
  ];
}

/** A cheek or a post: straight foot, sides drawn in to a round head about the axle at the origin; floor down, grain upright.
 * @throws Unusable naming the option; also when the skirt reaches up to the head, or the bore leaves no wood in it */
export function upright(o: UprightOptions): Part {
  requireRange('base', o.base, 1, 20_000);
  requireRange('head', o.head, 1, 10_000);
  requireRange('skirt', o.skirt, 0.1, o.down);
  if (!(o.down - o.skirt > o.head)) refuse('skirt', `${o.skirt} mm`, `less than ${o.down - o.head} mm, below the head`);
  if (o.bore.kind !== 'none') requireRange('bore', o.bore.diameter, 0.1, 2 * o.head - 0.5);
  const hole = throughBore(o.bore);
  const region = { outer: outline(o), openings: hole > 0 ? [reverse(circle(hole / 2))] : [] };
  const part = piece(o.kind, o.kind === 'post' ? 'Post' : 'Cheek', o, { region, features: seatPockets(o.bore) });
  return (o.grained ?? true) ? { ...part, grain: Math.PI / 2 } : part;
}
