import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';

// Battens laid across a round of parallel planks. Planks run along x, battens along y; the round's centre is the origin. Lengths mm.

/** A round thing that a batten must not lie on: a washer, the hole in the middle. */
export interface Obstacle extends Point {
  readonly radius: Mm;
}

export interface BattenSite {
  /** 1 or more, in pairs either side of the middle; the one left over in the middle */
  readonly count: number;
  readonly width: Mm;
  /** of the circle that their corners stay in */
  readonly radius: Mm;
  /** level at which the outermost planks start */
  readonly outermost: Mm;
  /** how far each lies over them at the least */
  readonly bite: Mm;
  readonly obstacles: readonly Obstacle[];
}

/** Half the length of a batten at x: its corners lie on the circle. */
export const battenReach = (site: Pick<BattenSite, 'width' | 'radius'>, x: Mm): Mm => {
  const edge = Math.abs(x) + site.width / 2;
  return edge < site.radius ? Math.sqrt(site.radius * site.radius - edge * edge) : 0;
};

/** Between a batten and an obstacle, and between two battens. */
const AIR: Mm = 1;
/** Places tried across half the round. */
const PLACES = 240;

/** Whether a batten at x touches nothing and holds the outermost planks; obstacles past its ends do not matter. */
function free(site: BattenSite, x: Mm): boolean {
  const reach = battenReach(site, x);
  if (reach < site.outermost + site.bite) return false;
  return site.obstacles.every(
    o => Math.abs(x - o.x) >= site.width / 2 + o.radius + AIR || Math.abs(o.y) >= reach + o.radius + AIR,
  );
}

/** Where across the round the battens lie, from left to right: the outer pair as far out as it holds the outermost planks, the others
 * evenly between, moved off what is in the way; undefined where there is no room. */
export function battenPlaces(site: BattenSite): readonly Mm[] | undefined {
  const middle = site.count % 2 === 1;
  if (middle && !free(site, 0)) return undefined;
  const pairs = Math.floor(site.count / 2);
  const least = middle ? site.width + AIR : (site.width + AIR) / 2;
  const places = Array.from({ length: PLACES }, (_, i) => (site.radius * (i + 1)) / PLACES).filter(
    x => x >= least && free(site, x) && free(site, -x),
  );
  const farthest = places.at(-1);
  if (pairs > 0 && farthest === undefined) return undefined;
  const right: Mm[] = [];
  for (let j = pairs; j > 0; j--) {
    const share = middle ? j / pairs : (2 * j - 1) / (2 * pairs - 1);
    const most = (right[0] ?? Infinity) - site.width - AIR;
    const wanted = share * (farthest ?? 0);
    const nearest = places
      .filter(x => x <= most)
      .reduce<Mm | undefined>(
        (a, x) => (a !== undefined && Math.abs(a - wanted) <= Math.abs(x - wanted) ? a : x),
        undefined,
      );
    if (nearest === undefined) return undefined;
    right.unshift(nearest);
  }
  return [...right.map(x => -x).reverse(), ...(middle ? [0] : []), ...right];
}

/** Screws from a batten into each plank it crosses: one in the middle of a narrow crossing, two in a wide one, none where they would
 * split it. @param planks levels between the planks   @param reach half the batten's length   @param screw its diameter */
export function battenScrews(planks: readonly Mm[], reach: Mm, screw: Mm): Mm[] {
  return planks.slice(1).flatMap((top, i) => {
    const from = Math.max(planks[i]!, -reach);
    const to = Math.min(top, reach);
    const span = to - from;
    if (span < 2 * EDGE * screw) return [];
    return span < TWO_FROM * screw ? [(from + to) / 2] : [from + span / 4, to - span / 4];
  });
}

/** From a screw's middle to any edge, in screw diameters: edge distance of wood screws, NDS commentary (from memory). */
const EDGE = 2.5;
/** A crossing this wide, in screw diameters, takes two screws; common practice, no source. */
const TWO_FROM = 16;
