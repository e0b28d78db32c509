import { union } from '../geometry/boolean.js';
import { type Outline, polygon, solid } from '../geometry/outline.js';
import { add, type Point, polar, scale } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Part } from './part.js';

/** A straight leg that carries an end of an arch on along its tangent, in the frame of the arch's end piece (symmetric about +y, the
 * arch's centre at the origin). Its foot is cut level as the arch stands. Lengths mm. */
export interface Leg {
  readonly inner: Mm;
  readonly outer: Mm;
  /** which end of the piece: left is the anticlockwise one */
  readonly end: 'left' | 'right';
  /** of the piece */
  readonly sweep: Radians;
  /** of the whole arch, symmetric about straight up, above 0 and below a full turn */
  readonly arch: Radians;
  /** along the middle of its band */
  readonly height: Mm;
}

/** Legs that lean less than this are upright, radians. */
const STRAIGHT = 1e-6;

/** How far from the arch's end the level foot is at a distance u from the centre: height + (u - middle) cot(arch / 2); plane trigonometry. */
export const footAt = ({ inner, outer, arch, height }: Omit<Leg, 'end' | 'sweep'>, u: Mm): Mm =>
  height + (u - (inner + outer) / 2) / Math.tan(arch / 2);

/** How high legs may be: their short sides keep `wall` past what the level foot slants, and legs that lean together keep their feet
 * `between` apart; mm. */
export function legHeights(
  { inner, outer, arch }: Omit<Leg, 'end' | 'sweep' | 'height'>,
  wall: Mm,
  between: Mm,
): { readonly least: Mm; readonly most: Mm } {
  const slant = (outer - inner) / 2 / Math.abs(Math.tan(arch / 2));
  const inwards = -Math.cos(arch / 2);
  const gap = inner * Math.sin(arch / 2) - between / 2;
  // the inner edge ends lower or higher than the middle
  const inside = footAt({ inner, outer, arch, height: 0 }, inner);
  return { least: slant + wall, most: inwards > STRAIGHT ? gap / inwards - inside : Infinity };
}

/** A leg's way down, as an angle of the piece's frame. */
export const legDirection = ({ end, sweep }: Pick<Leg, 'end' | 'sweep'>): Radians =>
  end === 'left' ? Math.PI + sweep / 2 : -sweep / 2;

/** The strip of a leg between two distances from the centre. @param past how far it is carried on at the foot and, behind the arch's end,
 * into the arch */
export function legStrip(leg: Leg, from: Mm, to: Mm, past = { foot: 0, arch: 0 }): Outline {
  const way = leg.end === 'left' ? 1 : -1;
  const across = polar(1, Math.PI / 2 + (way * leg.sweep) / 2);
  const down = polar(1, legDirection(leg));
  const at = (u: Mm, v: Mm): Point => add(scale(across, u), scale(down, v));
  const corners = [
    at(from, -past.arch),
    at(to, -past.arch),
    at(to, footAt(leg, to) + past.foot),
    at(from, footAt(leg, from) + past.foot),
  ];
  return polygon(way > 0 ? corners : corners.reverse());
}

/** An arch's end piece with its leg: one piece of wood. Its grain runs down the leg where that is longer than the arch's part. */
export function withLeg(part: Part, leg: Leg): Part {
  const [region] = union([part.region, solid(legStrip(leg, leg.inner, leg.outer))]);
  const longer = leg.height > 2 * leg.outer * Math.sin(leg.sweep / 2);
  return { ...part, region: region!, ...(longer && part.grain !== undefined && { grain: legDirection(leg) }) };
}
