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
  pinsAt,
} from '../registration.js';
import type { RingOptions } from '../ring-options.js';
import { relative } from '../seams.js';
import type { LayerSeams } from './joined.js';
import { extentOf, type RingLayout, type RingPiece } from './layout.js';
import { type PinSpot, spotAt, spotsOn } from './spots.js';

/** Registration of a ring built up from layers. */
export interface RingPins {
  /** mm */
  readonly diameter: Mm;
  /** pairs of pins across the ring's band */
  readonly pairs: readonly PinPair[];
  /** single pins besides, never through what crosses the ring */
  readonly spots?: readonly PinSpot[];
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

/** What the seams of a layer bar to pins: all of their joint's reach. */
function seamsBarred(o: RingOptions, { seams, joined }: LayerSeams): Barred[] {
  const to = Math.asin(Math.min(1, joined.reach / o.inner));
  return seams.map(at => ({ at, from: 0, to }));
}

/** Stretches of the ring clear of every seam, slot and wall, wide enough for a pin: between crossings, or within one (through what crosses). */
function clearStretches(o: RingOptions, layers: readonly LayerSeams[], margin: Radians): Arc[] {
  const barred: Barred[] = [
    ...(o.crossings ?? []).flatMap(c =>
      c.at.map(at => ({ at, from: wallAngle(c.width, o.outer), to: wallAngle(c.width, o.inner) })),
    ),
    ...(o.slots ?? []).flatMap(c => c.at.map(at => ({ at, from: 0, to: wallAngle(c.width, o.inner) }))),
    ...layers.flatMap(l => seamsBarred(o, l)),
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

/** What each needs a pin of its own: a piece, but of a layer whose seams hold its felloes in line that layer as one, by either half of it. */
function needing(o: RingOptions, layout: RingLayout, layers: readonly LayerSeams[]): Arc[] {
  const locked = (piece: RingPiece): boolean => layers.some(l => l.layer === piece.layer && l.joined.locks);
  const own = layout.pieces.filter(piece => !locked(piece)).map(piece => stretch(o, piece));
  const { from, sweep } = extentOf(o);
  const halves = [0, 1].map(i => ({ from: from + (i * sweep) / 2, sweep: sweep / 2 }));
  return own.length < layout.pieces.length ? [...own, ...halves] : own;
}

/** Whether a pin that stands somewhere is one of a piece's. */
const on = (piece: Arc, spot: PinSpot): boolean => holds(piece, spot.angle);

/** Pins of one diameter: a pair in the widest clear stretch of every piece that needs one, else two where there is room for each. */
export function pinsOf(o: RingOptions, layout: RingLayout, diameter: Mm, layers: readonly LayerSeams[]): RingPins {
  const pieces = needing(o, layout, layers);
  const margin = (diameter / 2 + PIN_WALL) / o.inner;
  const pairs = pinPairs(pieces, clearStretches(o, layers, margin), margin);
  const taken = pairs.flatMap(p => pinsAt(o.inner, o.outer, Math.PI / 2 + p.angle, p.spread));
  const spots: PinSpot[] = [];
  let unpinned = 0;
  for (const piece of pieces.filter(p => !pairs.some(pair => holds(p, pair.angle)))) {
    if (spots.filter(spot => on(piece, spot)).length >= 2) continue;
    const found = spotsOn(o, piece, layers, diameter, [...taken, ...spots.map(spotAt)]);
    spots.push(...found);
    if (found.length === 0) unpinned++;
  }
  return { diameter, pairs, spots, unpinned };
}

/** The inner pin of a pair lies this share of the band from the inner edge; see pinsAt. */
export const INNER_PIN = 0.3;

/** The thickest pin that keeps its wall to a step along the ring's inner edge; below 0 where none does. */
export const besideRebate = (band: Mm, rebate: Mm): Mm =>
  rebate > 0 ? 2 * (INNER_PIN * band - rebate - PIN_WALL) : Infinity;

/** Pins to choose from for a ring, thick to thin: at most a fifth of its band, so that each leaves its own width of wood on either side. */
export function pinSizes(o: RingOptions, most: Mm = Infinity): readonly Mm[] {
  const band = o.outer - o.inner;
  const room = Math.min(most, band / 5, besideRebate(band, o.rebate ?? 0));
  const sizes = PIN_SIZES.filter(d => d <= room);
  return sizes.length > 0 ? sizes : PIN_SIZES.slice(-1);
}

/** The largest pins that find room in every piece of a ring of several layers; none in a ring of one. */
export function ringPins(o: RingOptions, layout: RingLayout, layers: readonly LayerSeams[]): RingPins {
  if (layout.layers.length === 1) return { diameter: PIN_SIZES[0]!, pairs: [], unpinned: 0 };
  const tried = pinSizes(o).map(d => pinsOf(o, layout, d, layers));
  return tried.find(p => p.unpinned === 0) ?? tried.at(-1)!;
}
