import { requireRange } from '../findings/unusable.js';
import { circle, reverse, solid } from '../geometry/outline.js';
import { type Point, polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Drill, Face, Part, Pocket } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A hole in a disc's middle: nothing, a through hole, or a seat from one face with a smaller hole through its shoulder; mm. */
export type Bore =
  | { readonly kind: 'none' }
  | { readonly kind: 'through'; readonly diameter: Mm }
  | { readonly kind: 'seat'; readonly diameter: Mm; readonly depth: Mm; readonly face: Face; readonly shoulder: Mm };

export interface DiscOptions extends PieceOptions {
  readonly diameter: Mm;
  readonly bore: Bore;
  /** holes on a circle: how many, on what radius, from what angle; mm, radians */
  readonly holes?: { readonly count: number; readonly radius: Mm; readonly diameter: Mm; readonly from: Radians };
  /** hub-disc unless given */
  readonly kind?: 'hub-disc' | 'hub-cap' | 'nave-disc' | 'core-plug' | 'face-segment' | 'axle-block';
}

/** Diameter of what a bore takes out of the disc's whole thickness; 0 for none. */
export const throughBore = (bore: Bore): Mm =>
  bore.kind === 'none' ? 0 : bore.kind === 'through' ? bore.diameter : bore.shoulder;

const widest = (bore: Bore): Mm => (bore.kind === 'none' ? 0 : bore.diameter);

/** The pocket of a seat about the origin; none for other bores. */
export function seatPockets(bore: Bore): Pocket[] {
  if (bore.kind !== 'seat') return [];
  const area = solid(circle(bore.diameter / 2));
  return [{ kind: 'pocket', face: bore.face, depth: bore.depth, area, beyond: area }];
}

function ringOfHoles(o: DiscOptions): Drill[] {
  const { holes, thickness } = o;
  if (!holes) return [];
  const at = (i: number): Point => polar(holes.radius, holes.from + (i * 2 * Math.PI) / holes.count);
  return Array.from({ length: holes.count }, (_, i) => ({
    kind: 'drill',
    at: at(i),
    diameter: holes.diameter,
    from: 'through',
    depth: thickness,
    filled: 'screw',
  }));
}

/** A round disc about the origin with its bore and a ring of screw holes: a hub disc, or the core plug between two.
 * @throws Unusable when the bore is wider than the disc, or the seat as deep as it is thick. */
export function hubDisc(o: DiscOptions): Part {
  requireRange('diameter', o.diameter, 1, 10_000);
  requireRange('bore', widest(o.bore), 0, o.diameter - 0.5);
  if (o.bore.kind === 'seat') requireRange('seat depth', o.bore.depth, 0.1, o.thickness - 0.1);
  const hole = throughBore(o.bore);
  const region = { outer: circle(o.diameter / 2), openings: hole > 0 ? [reverse(circle(hole / 2))] : [] };
  return piece(o.kind ?? 'hub-disc', 'Hub disc', o, { region, features: [...seatPockets(o.bore), ...ringOfHoles(o)] });
}
