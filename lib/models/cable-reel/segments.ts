import type { Outcome } from '../../findings/finding.js';
import { movePoint, turning } from '../../geometry/motion.js';
import { distance, type Point } from '../../geometry/point.js';
import { seamClear } from '../../joints/bore-clear.js';
import { drillRods } from '../../joints/through-rods.js';
import type { Mm, Radians } from '../../units/length.js';
import { middleOf, pinsAt } from '../registration.js';
import { type LayerSeams, layerSeamed } from '../ring/joined.js';
import { ringLayout } from '../ring/layout.js';
import { type RingPins, ringPins } from '../ring/pins.js';
import { spotAt } from '../ring/spots.js';
import { type Ring, type RingOptions, ring } from '../ring.js';
import { boreRadius, type ReelSizes } from './sizes.js';

// A flange of segments is a ring of felloes from the bore to the edge.

/** A flange as a ring, before it is bored for rods. */
export interface SegmentFlange {
  readonly options: RingOptions;
  readonly layers: readonly LayerSeams[];
  readonly pins: RingPins;
}

/** The flange as a ring. @param room how far its seams may reach to either side where the plan leaves their sizes out; any unless given */
function ringOptions(s: ReelSizes, room: Mm | undefined): RingOptions {
  const { flange, fit } = s;
  const { at } = flange.seam;
  return {
    inner: boreRadius(s),
    outer: flange.radius,
    pieces: flange.pieces,
    ...(typeof at === 'object' && { first: at.angle }),
    ...(flange.layers !== undefined && { layers: flange.layers }),
    thickness: flange.thickness,
    stock: flange.stock,
    method: s.method,
    seam: flange.seam,
    ...(room !== undefined && { room }),
    ...(fit.seam !== undefined && { clearance: fit.seam }),
    field: 'flange',
    id: 'segment',
    name: 'Segment',
  };
}

/** Where a flange's seams and pins lie, whatever is bored through it. */
export function segmentFlange(s: ReelSizes, room?: Mm): SegmentFlange {
  const options = ringOptions(s, room);
  const layout = ringLayout(options);
  const layers = layerSeamed(options, layout);
  return { options, layers, pins: ringPins(options, layout, layers) };
}

/** How far the seams of a flange reach to either side of their lines. */
export const segmentReach = ({ layers }: SegmentFlange): Mm => Math.max(0, ...layers.map(l => l.joined.reach));

/** A flange of segments, its back at 0, bored for rods. @param hole diameter, mm */
export function segmentRing({ options, pins }: SegmentFlange, rods: readonly Point[], hole: Mm): Outcome<Ring> {
  const features: NonNullable<RingOptions['features']> = (part, place) => {
    const seen = rods.map(p => movePoint(p, turning(-middleOf(place))));
    return drillRods(part, seen, hole);
  };
  return ring({ ...options, features, pins });
}

/** Angle of a seam from +x. */
const lineOf = (seam: Radians): Radians => Math.PI / 2 + seam;

/** From a point of a flange to the nearest edge of a seam's joint or of a pin. @param far how far off it is told exactly */
export function segmentClear({ options, layers, pins }: SegmentFlange, far: Mm): (p: Point) => Mm {
  const { inner, outer } = options;
  const round = [
    ...pins.pairs.flatMap(({ angle, spread }) => pinsAt(inner, outer, lineOf(angle), spread)),
    ...(pins.spots ?? []).map(spotAt),
  ];
  const seams = layers.flatMap(({ seams: at, joined }) => at.map(seam => ({ line: lineOf(seam), joined })));
  return p => {
    const beside = seams.map(({ line, joined }) => {
      const { x: u, y: v } = movePoint(p, turning(-line));
      const past = Math.abs(v) - joined.reach;
      return past > far ? past : seamClear(joined, { u, v });
    });
    return Math.min(Infinity, ...beside, ...round.map(pin => distance(pin, p) - pins.diameter / 2));
  };
}
