import { locate } from '../geometry/locate.js';
import { type Point, polar } from '../geometry/point.js';
import type { Drill, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

// Threaded rods, evenly spaced on a circle, that draw two round ends together over a core. Lengths mm.

/** Where the rods may go. */
export interface RodSite {
  /** 2 or more */
  readonly count: number;
  /** diameter of each hole, its fit included */
  readonly hole: Mm;
  /** wood between a hole and anything else */
  readonly wall: Mm;
  /** least and largest radius of the rods' circle */
  readonly from: Mm;
  readonly to: Mm;
  /** from a point to the nearest thing that holes keep clear of: a seam and its joint, a pin; right as far as twice the wall from a hole */
  readonly clear: (p: Point) => Mm;
}

/** The circle of the rods: the first one's angle from +x, and the wood that is left beside a hole. */
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

/** Circles on which every rod keeps its wall to everything, the largest first, since rods near the core hold it best; of one size those
 * with the most wood beside the holes (past twice the wall all are alike). */
export function rodCircles(site: RodSite): RodCircle[] {
  if (!(site.to >= site.from)) return [];
  const room = (points: readonly Point[]): Mm =>
    Math.min(2 * site.wall, ...points.map(p => site.clear(p) - site.hole / 2));
  const circles = Array.from({ length: RADII }, (_, r) =>
    Array.from({ length: ANGLES }, (_, a): RodCircle => {
      const radius = site.to - ((site.to - site.from) * r) / (RADII - 1);
      const first = (a * TURN) / site.count / ANGLES;
      const clear = room(rodPoints(site.count, radius, first));
      return { radius, first, clear: Math.round(clear * 1e6) / 1e6 };
    }),
  ).flat();
  return circles.filter(c => c.clear >= site.wall).sort((a, b) => b.radius - a.radius || b.clear - a.clear);
}

/** A part with holes through it for those rods that pass through it. */
export function drillRods(part: Part, at: readonly Point[], hole: Mm): Part {
  const holes = at
    .filter(p => locate(part.region, p) === 'inside')
    .map(
      (p): Drill => ({ kind: 'drill', at: p, diameter: hole, from: 'through', depth: part.thickness, filled: 'rod' }),
    );
  return { ...part, features: [...part.features, ...holes] };
}
