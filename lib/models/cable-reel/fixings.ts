import type { Point } from '../../geometry/point.js';
import { battenPlaces, type Obstacle } from '../../joints/battens.js';
import { type RodCircle, type RodSite, rodCircles, rodPoints } from '../../joints/through-rods.js';
import { plankEdges } from '../../parts/disc-plank.js';
import { type Screw, screwLength, screws } from '../../stock/screws.js';
import type { Mm } from '../../units/length.js';
import { takesScrews } from '../glues.js';
import { type SegmentFlange, segmentClear, segmentFlange, segmentReach } from './segments.js';
import { boreRadius, type ReelSizes } from './sizes.js';

/** Wood between a rod's hole and a seam, in hole diameters, and the least of it; common practice, no source. */
const ROD_WALL = 0.25;
const LEAST_WALL: Mm = 3;
/** Outside diameter of a large washer, in rod diameters: ISO 7093 (from memory: 18 for 6, 24 for 8, 30 for 10, 37 for 12 mm), rounded up. */
const WASHER = 3.1;
/** Air round a washer, and between rods and staves; common practice, no source. */
const AIR: Mm = 2;
/** A batten's corners stay this far inside the flange's edge; common practice, no source. */
const INSET: Mm = 3;
/** How far a batten lies over the outermost planks: shares of their width, the first that leaves it a place; never less than this. Common
 * practice, no source. */
const BITES = [0.5, 0.4, 0.3, 0.2, 0];
export const BITE: Mm = 6;

export const washerRadius = (s: ReelSizes): Mm => (s.rods.diameter * WASHER) / 2;
export const rodHole = (s: ReelSizes): Mm => s.rods.diameter + s.fit.rod;

/** Levels between the planks, bottom to top. */
export const plankLevels = ({ flange }: ReelSizes): Mm[] => plankEdges(flange.radius, flange.pieces);

/** From a point to the nearest seam between planks. */
const plankClear = (s: ReelSizes): RodSite['clear'] => {
  const seams = plankLevels(s).slice(1, -1);
  return p => Math.min(Infinity, ...seams.map(y => Math.abs(p.y - y)));
};

/** Where rods may go: inside the staves, their washers clear of the bore. @param flange absent for planks */
export function rodSite(s: ReelSizes, flange?: SegmentFlange): RodSite {
  const hole = rodHole(s);
  const wall = Math.max(LEAST_WALL, ROD_WALL * hole);
  const bore = boreRadius(s);
  const apart = (2 * washerRadius(s) + AIR) / 2 / Math.sin(Math.PI / s.rods.count);
  return {
    count: s.rods.count,
    hole,
    wall,
    from: Math.max(bore > 0 ? bore + washerRadius(s) + AIR : 0, apart),
    to: s.core.apothem - s.core.thickness - hole / 2 - AIR,
    clear: flange ? segmentClear(flange, hole / 2 + 2 * wall) : plankClear(s),
  };
}

/** What holds the reel together: rods, and the battens that clear their washers. */
export interface Fixings {
  readonly rods: RodCircle;
  /** x of the battens; none on segments */
  readonly battens: readonly Mm[];
  /** absent for planks */
  readonly flange?: SegmentFlange;
}

/** Radius of the circle that a batten's corners lie on. */
export const battenCircle = ({ flange }: ReelSizes): Mm => flange.radius - INSET;

const rodMiddles = (s: ReelSizes, { radius, first }: RodCircle): Point[] => rodPoints(s.rods.count, radius, first);

export const rodsAt = (s: ReelSizes, { rods }: Fixings): Point[] => rodMiddles(s, rods);

function places(s: ReelSizes, circle: RodCircle, share: number): readonly Mm[] | undefined {
  if (!s.battens) return [];
  const washers = rodMiddles(s, circle).map((p): Obstacle => ({ ...p, radius: washerRadius(s) }));
  const bore = boreRadius(s);
  const outermost = plankLevels(s).at(-2)!;
  return battenPlaces({
    count: s.battens.count,
    width: s.battens.width,
    radius: battenCircle(s),
    outermost,
    bite: Math.max(BITE, share * (s.flange.radius - outermost)),
    obstacles: [...washers, ...(bore > 0 ? [{ x: 0, y: 0, radius: bore + AIR }] : [])],
  });
}

/** Shares of its own reach that a joint of segments is held to where rods find no place beside it, wide to narrow. */
const ROOMS = [0.85, 0.7, 0.55, 0.4, 0.3, 0.2];

/** Rods through a flange of segments: beside its joints, and where there is no place, beside such as reach less far. */
function throughSegments(s: ReelSizes): Fixings | 'no rods' {
  const whole = segmentFlange(s);
  const placed = (flange: SegmentFlange): Fixings | undefined => {
    const [rods] = rodCircles(rodSite(s, flange));
    return rods && { rods, battens: [], flange };
  };
  const first = placed(whole);
  if (first) return first;
  for (const share of ROOMS) {
    const next = placed(segmentFlange(s, share * segmentReach(whole)));
    if (next) return next;
  }
  return 'no rods';
}

/** Rods and battens: battens over as much of the outermost planks as they find a place for, then rods on the largest circle; what is
 * missing where there is none. */
export function fixings(s: ReelSizes): Fixings | 'no rods' | 'no battens' {
  if (s.flange.build === 'segments') return throughSegments(s);
  const circles = rodCircles(rodSite(s));
  for (const share of s.battens ? BITES : [0])
    for (const rods of circles) {
      const battens = places(s, rods, share);
      if (battens) return { rods, battens };
    }
  return circles.length > 0 ? 'no battens' : 'no rods';
}

/** A screw from a batten into the planks. */
export interface BattenScrew {
  readonly screw: Screw;
  readonly length: Mm;
}

/** The thickest screw battens take; common practice, no source. */
const MOST_GAUGE = 8;
/** Wood a screw's point stays short of the far face by, and the least a thread bites, in diameters; common practice, no source. */
const SHORT_OF: Mm = 3;
const THREAD = 2;

/** The thickest screw that a fifth of the batten's width takes and that bites in the planks without coming through; none in thin ones, and
 * where screws do not hold. */
export function battenScrew(s: ReelSizes): BattenScrew | undefined {
  const { battens, flange } = s;
  if (!battens || !takesScrews(battens.stock, flange.stock)) return undefined;
  const fitting = screws.flatMap(screw => {
    const length = screwLength(screw, battens.thickness + flange.thickness - SHORT_OF);
    const bites = length !== undefined && length - battens.thickness >= THREAD * screw.diameter;
    return bites && screw.gauge <= MOST_GAUGE && screw.diameter <= battens.width / 5 ? [{ screw, length }] : [];
  });
  return fitting.at(-1);
}
