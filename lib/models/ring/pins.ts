import type { Mm, Radians } from '../../units/length.js';
import {
  type Arc,
  arcsBetween,
  holds,
  middleOf,
  PIN_SIZES,
  PIN_WALL,
  type PinPair,
  pinPairs,
} from '../registration.js';
import type { RingOptions } from '../ring-options.js';
import { relative } from '../seams.js';
import { extentOf, type RingLayout, type RingPiece } from './layout.js';

/** Registration of a ring built up from layers. */
export interface RingPins {
  /** mm */
  readonly diameter: Mm;
  /** pairs of pins across the ring's band */
  readonly pairs: readonly PinPair[];
  /** pieces that have no stretch wide enough for a pin */
  readonly unpinned: number;
}

/** Angle from a crossing's middle line to its wall, at a radius. */
export const wallAngle = (width: Mm, radius: Mm): Radians => Math.asin(Math.min(1, width / 2 / radius));

/** What a piece covers for sure: a loose one ends at walls, which are widest apart, by angle, at the inner edge. */
function stretch(o: RingOptions, piece: RingPiece): Arc {
  const right = wallAngle(piece.walls.right, o.inner);
  const left = wallAngle(piece.walls.left, o.inner);
  return { from: piece.from + right, sweep: piece.sweep - right - left };
}

/** A stretch no pin may stand in, either side of an angle. */
interface Barred {
  readonly at: Radians;
  readonly from: Radians;
  readonly to: Radians;
}

/** Stretches of the ring clear of every seam and wall, wide enough for a pin: between crossings, or within one (through what crosses).
 * @param reach how far from its line each seam is taken up, mm */
function clearStretches(o: RingOptions, layout: RingLayout, margin: Radians, reach: Mm): Arc[] {
  const barred: Barred[] = [
    ...(o.crossings ?? []).flatMap(c =>
      c.at.map(at => ({ at, from: wallAngle(c.width, o.outer), to: wallAngle(c.width, o.inner) })),
    ),
    ...layout.seams.flat().map(at => ({ at, from: 0, to: Math.asin(Math.min(1, reach / o.inner)) })),
  ];
  const lines = barred.flatMap(b => [b.at - b.to, b.at - b.from, b.at + b.from, b.at + b.to]);
  const inside = (a: Arc): boolean =>
    barred.some(b => {
      const apart = Math.abs(relative(middleOf(a), b.at));
      return apart > b.from && apart < b.to;
    });
  const extent = extentOf(o);
  const ends = o.arc ? [extent.from, extent.from + extent.sweep] : [];
  const ring = lines.length + ends.length === 0 ? [0] : [...lines, ...ends];
  return arcsBetween(ring).filter(a => a.sweep > 2 * margin && !inside(a) && (!o.arc || holds(extent, middleOf(a))));
}

/** Pins of one diameter: a pair in the widest clear stretch of every piece. @param reach see above, mm */
export function pinsOf(o: RingOptions, layout: RingLayout, diameter: Mm, reach: Mm): RingPins {
  const pieces = layout.pieces.map(piece => stretch(o, piece));
  const margin = (diameter / 2 + PIN_WALL) / o.inner;
  const pairs = pinPairs(pieces, clearStretches(o, layout, margin, reach), margin);
  const unpinned = pieces.filter(piece => !pairs.some(pair => holds(piece, pair.angle))).length;
  return { diameter, pairs, unpinned };
}

/** Pins to choose from for a ring, thick to thin: at most a fifth of its band, so that each leaves its own width of wood on either side. */
export function pinSizes(o: RingOptions, most: Mm = Infinity): readonly Mm[] {
  const sizes = PIN_SIZES.filter(d => d <= (o.outer - o.inner) / 5 && d <= most);
  return sizes.length > 0 ? sizes : PIN_SIZES.slice(-1);
}

/** The largest pins that find room in every piece of a ring of several layers; none in a ring of one. */
export function ringPins(o: RingOptions, layout: RingLayout, reach: Mm): RingPins {
  if (layout.layers.length === 1) return { diameter: PIN_SIZES[0]!, pairs: [], unpinned: 0 };
  const tried = pinSizes(o).map(d => pinsOf(o, layout, d, reach));
  return tried.find(p => p.unpinned === 0) ?? tried.at(-1)!;
}
