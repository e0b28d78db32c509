import { distanceToSegment, locate } from '../geometry/locate.js';
import { distance, type Point, polar } from '../geometry/point.js';
import { type Segment, segmentFrom } from '../geometry/segment.js';
import type { Drill, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

// Threaded rods, evenly spaced on a circle, that draw two round ends together over a core. Lengths mm.

/** Where the rods may go. */
export interface RodSite {
  /** 2 or more */
  readonly count: number;
  /** diameter of each hole, its fit included */
  readonly hole: Mm;
  /** wood between a hole and a seam or a pin */
  readonly wall: Mm;
  /** least and largest radius of the rods' circle */
  readonly from: Mm;
  readonly to: Mm;
  /** seams of the ends, from point to point */
  readonly seams: readonly (readonly [Point, Point])[];
  /** other round things in the ends: registration pins */
  readonly pins: readonly (Point & { readonly radius: Mm })[];
}

/** The circle of the rods: the first one's angle from +x, and the wood that is left between a hole and the nearest seam. */
export interface RodCircle {
  readonly radius: Mm;
  readonly first: Radians;
  readonly clear: Mm;
}

const TURN = 2 * Math.PI;

/** Middles of evenly spaced rods. */
export const rodPoints = (count: number, radius: Mm, first: Radians): Point[] =>
  Array.from({ length: count }, (_, i) => polar(radius, first + (i * TURN) / count));

/** Radii and angles tried. */
const RADII = 6;
const ANGLES = 72;

const line = ([a, b]: readonly [Point, Point]): Segment => segmentFrom({ ...a, bulge: 0 }, b);

/** Circles on which every rod keeps its wall to every seam, those farthest from seams first (past twice the wall all are alike), then
 * the largest, since rods near the core hold it best. */
export function rodCircles(site: RodSite): RodCircle[] {
  if (!(site.to >= site.from)) return [];
  const seams = site.seams.map(line);
  const clear = (points: readonly Point[]): Mm => {
    const off = points.flatMap(p => [
      ...seams.map(s => distanceToSegment(s, p)),
      ...site.pins.map(pin => distance(pin, p) - pin.radius),
    ]);
    return Math.min(2 * site.wall, ...off.map(d => d - site.hole / 2));
  };
  const circles = Array.from({ length: RADII }, (_, r) =>
    Array.from({ length: ANGLES }, (_, a): RodCircle => {
      const radius = site.to - ((site.to - site.from) * r) / (RADII - 1);
      const first = (a * TURN) / site.count / ANGLES;
      const room = clear(rodPoints(site.count, radius, first));
      return { radius, first, clear: Math.round(room * 1e6) / 1e6 };
    }),
  ).flat();
  return circles.filter(c => c.clear >= site.wall).sort((a, b) => b.clear - a.clear || b.radius - a.radius);
}

/** A part with holes through it for those rods that pass through it. */
export function drillRods(part: Part, at: readonly Point[], hole: Mm): Part {
  const holes = at
    .filter(p => locate(part.region, p) === 'inside')
    .map((p): Drill => ({ kind: 'drill', at: p, diameter: hole, from: 'through', depth: part.thickness }));
  return { ...part, features: [...part.features, ...holes] };
}
