import type { Outcome } from '../../findings/finding.js';
import { movePoint, turning } from '../../geometry/motion.js';
import { type Point, polar } from '../../geometry/point.js';
import { drillRods } from '../../joints/through-rods.js';
import type { Mm, Radians } from '../../units/length.js';
import { middleOf, pinsAt } from '../registration.js';
import { clearPins } from '../ring/clear-pins.js';
import { layerSeamed } from '../ring/joined.js';
import { type RingLayout, ringLayout } from '../ring/layout.js';
import type { RingPins } from '../ring/pins.js';
import { type Ring, type RingOptions, ring } from '../ring.js';
import { boreRadius, type ReelSizes } from './sizes.js';

// A flange of segments is a ring of felloes from the bore to the edge.

/** The flange as a ring. */
function ringOptions(s: ReelSizes): RingOptions {
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
    ...(fit.seam !== undefined && { clearance: fit.seam }),
    field: 'flange',
    id: 'segment',
    name: 'Segment',
  };
}

interface Seams {
  readonly layout: RingLayout;
  readonly reach: Mm;
  readonly pins: RingPins;
}

/** Where a flange's seams and pins lie, whatever is bored through it. */
function seamsOf(o: RingOptions): Seams {
  const layout = ringLayout(o);
  const reach = Math.max(0, ...layerSeamed(o, layout).map(l => l.joined.reach));
  return { layout, reach, pins: clearPins({ ...o, layout, reach, taken: [], holding: [] }) };
}

/** A flange of segments, its back at 0, bored for rods. @param hole diameter, mm */
export function segmentRing(s: ReelSizes, rods: readonly Point[], hole: Mm): Outcome<Ring> {
  const o = ringOptions(s);
  const features: NonNullable<RingOptions['features']> = (part, place) => {
    const seen = rods.map(p => movePoint(p, turning(-middleOf(place))));
    return drillRods(part, seen, hole);
  };
  return ring({ ...o, features, pins: seamsOf(o).pins });
}

/** What rods must keep clear of in a flange of segments. */
export interface SegmentObstacles {
  /** from the bore to the edge */
  readonly seams: readonly (readonly [Point, Point])[];
  /** how far a seam's joint reaches from its line, mm */
  readonly reach: Mm;
  readonly pins: readonly (Point & { readonly radius: Mm })[];
}

/** Seams of all layers, and the pins through them. */
export function segmentObstacles(s: ReelSizes): SegmentObstacles {
  const o = ringOptions(s);
  const { layout, reach, pins } = seamsOf(o);
  const at = pins.pairs.flatMap(({ angle, spread }) => pinsAt(o.inner, o.outer, Math.PI / 2 + angle, spread));
  const line = (angle: Radians): [Point, Point] => [
    polar(o.inner, Math.PI / 2 + angle),
    polar(o.outer, Math.PI / 2 + angle),
  ];
  return {
    seams: layout.seams.flat().map(line),
    reach,
    pins: at.map(p => ({ ...p, radius: pins.diameter / 2 })),
  };
}
