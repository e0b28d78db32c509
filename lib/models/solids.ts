import { movePoint, mover } from '../geometry/motion.js';
import { distance, type Point } from '../geometry/point.js';
import { type Form, formOf } from '../parts/form.js';
import { isInside, type SpacePoint } from '../parts/inside.js';
import type { Mm } from '../units/length.js';
import type { Model, Piece } from './model.js';

/** A piece as a solid in its place. */
export interface Solid {
  readonly piece: Piece;
  readonly form: Form;
  /** its place among the pieces of its part, from 0 */
  readonly index: number;
  readonly low: Mm;
  readonly high: Mm;
  /** a circle round its plan */
  readonly middle: Point;
  readonly radius: Mm;
  /** a point of the prop as the piece's form has it, seen from the front */
  readonly inward: (p: Point) => Point;
}

/** The way back from where a piece lies. */
function inwardOf({ x, y, turn }: Piece): Solid['inward'] {
  const back = mover({ x: 0, y: 0, turn: -turn });
  return p => back({ x: p.x - x, y: p.y - y });
}

function solid(piece: Piece, form: Form, index: number): Solid {
  const { box, breaks } = form;
  return {
    piece,
    form,
    index,
    low: piece.z + breaks[0]!,
    high: piece.z + breaks.at(-1)!,
    middle: movePoint({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }, piece),
    radius: Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / 2,
    inward: inwardOf(piece),
  };
}

/** Every piece of a prop as a solid, in the order of its pieces; those of one part share their form.
 * @throws Unusable when a part's bevel is out of range */
export function solids(model: Model): Solid[] {
  const parts = new Map(model.parts.map(p => [p.id, p]));
  const forms = new Map<string, Form>();
  const counts = new Map<string, number>();
  return model.pieces.flatMap(piece => {
    const part = parts.get(piece.part);
    if (!part) return [];
    const stands = piece.stands ?? false;
    const key = `${part.id} ${stands}`;
    const form = forms.get(key) ?? formOf(part, stands);
    forms.set(key, form);
    const index = counts.get(part.id) ?? 0;
    counts.set(part.id, index + 1);
    return [solid(piece, form, index)];
  });
}

/** Whether two solids may come within a distance of each other as seen from the front: the circles they lie in do. */
export const beside = (a: Solid, b: Solid, within: Mm): boolean =>
  distance(a.middle, b.middle) <= a.radius + b.radius + within;

/** Whether two solids may come within a distance of each other: the heights and circles they lie in do. */
export const near = (a: Solid, b: Solid, within: Mm): boolean =>
  Math.max(a.low, b.low) - Math.min(a.high, b.high) <= within && beside(a, b, within);

/** Whether a point of the prop lies in a solid's wood (see isInside). */
export const holds = ({ form, piece, low, high, middle, radius, inward }: Solid, p: SpacePoint): boolean =>
  p.z > low && p.z < high && distance(middle, p) < radius && isInside(form, { ...inward(p), z: p.z - piece.z });

/** A piece as a finding names it. */
export const named = ({ form: { part }, index }: Solid): string =>
  part.quantity > 1 ? `${part.name} (${part.id}, piece ${index + 1} of ${part.quantity})` : `${part.name} (${part.id})`;
