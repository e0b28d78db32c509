import { difference, intersection } from '../geometry/boolean.js';
import { area, type Box, centroid, perimeter } from '../geometry/measure.js';
import { type Motion, moveRegion, mover } from '../geometry/motion.js';
import type { Region } from '../geometry/outline.js';
import { dot, type Point, subtract } from '../geometry/point.js';
import { separated } from '../geometry/separated.js';
import { type Form, type Slice, sliceAt } from '../parts/form.js';
import type { Mm } from '../units/length.js';

/** Where a second form lies as a first one sees it: turned and moved, and raised. */
export interface Placing extends Motion {
  readonly rise: Mm;
}

/** Room two pieces both take. Heights and places as the first one sees them, before it is turned and moved. */
export interface Overlap {
  /** at the height where it is largest, mm² */
  readonly area: number;
  /** the middle of the largest stretch there */
  readonly at: Point;
  readonly low: Mm;
  readonly high: Mm;
  /** mm³; of sections that change with the height, about */
  readonly volume: number;
}

/** Pieces that touch may take each other's room by this much: thousands of roundings, a tenth of what a planer holds. */
export const TOUCHING: Mm = 1e-3;

/** How a slab between two breaks is looked at, where its sections change in it: shares of its height and their weights in the integral,
 * from just over its floor to just under its ceiling. Source: Boole's rule, Abramowitz and Stegun, 25.4.14. */
const VARYING = [
  { share: 1e-3, weight: 7 / 90 },
  { share: 0.25, weight: 32 / 90 },
  { share: 0.5, weight: 12 / 90 },
  { share: 0.75, weight: 32 / 90 },
  { share: 1 - 1e-3, weight: 7 / 90 },
];
const EVEN = [{ share: 0.5, weight: 1 }];

const corners = ({ minX, minY, maxX, maxY }: Box): Point[] => [
  { x: minX, y: minY },
  { x: maxX, y: minY },
  { x: maxX, y: maxY },
  { x: minX, y: maxY },
];

/** Whether a line along one side of the first box keeps the two apart. */
function keptApart(first: readonly Point[], second: readonly Point[]): boolean {
  return [0, 1].some(k => {
    const along = subtract(first[k + 1]!, first[k]!);
    const length = Math.hypot(along.x, along.y);
    const reach = (points: readonly Point[]): number[] => points.map(p => dot(p, along) / length);
    const [a, b] = [reach(first), reach(second)];
    return Math.min(Math.max(...a), Math.max(...b)) - Math.max(Math.min(...a), Math.min(...b)) < TOUCHING;
  });
}

/** Whether two forms share no height, or the boxes round them no room. */
export function apart(a: Form, b: Form, at: Placing): boolean {
  const low = Math.max(a.breaks[0]!, b.breaks[0]! + at.rise);
  const high = Math.min(a.breaks.at(-1)!, b.breaks.at(-1)! + at.rise);
  if (high - low < TOUCHING) return true;
  const first = corners(a.box);
  const second = corners(b.box).map(mover(at));
  return keptApart(first, second) || keptApart(second, first);
}

/** How thick a stretch of overlap is on average: its area over half the way round it, for a long thin one its width. */
const thickness = (region: Region): Mm => (2 * area(region)) / perimeter(region);

/** What two slices share, less what is cleared from either, stretches thicker than `press` only. */
function sharer(at: Placing, press: Mm): (a: Slice, b: Slice) => Region[] {
  let last: { readonly a: Slice['wood']; readonly b: Slice['wood']; readonly shared: readonly Region[] } | undefined;
  const move = (regions: readonly Region[]): Region[] => regions.map(r => moveRegion(r, at));
  return (a, b) => {
    // two lying parts are the same plates at every height
    if (last?.a !== a.wood || last?.b !== b.wood) {
      const moved = move(b.wood);
      const shared = separated(a.wood, moved, TOUCHING) ? [] : intersection(a.wood, moved);
      last = { a: a.wood, b: b.wood, shared };
    }
    const thick = last.shared.filter(r => thickness(r) > TOUCHING);
    if (thick.length === 0) return [];
    const cleared = [...a.cleared, ...move(b.cleared)];
    const left = cleared.length > 0 ? difference(thick, cleared) : thick;
    return left.filter(r => thickness(r) > TOUCHING + press);
  };
}

function slabs(a: Form, b: Form, rise: Mm): (readonly [Mm, Mm])[] {
  const low = Math.max(a.breaks[0]!, b.breaks[0]! + rise);
  const high = Math.min(a.breaks.at(-1)!, b.breaks.at(-1)! + rise);
  const within = [...a.breaks, ...b.breaks.map(h => h + rise)].filter(h => h > low && h < high);
  const heights = [low, ...within.sort((p, q) => p - q), high];
  return heights.slice(1).flatMap((top, i) => (top - heights[i]! < TOUCHING ? [] : [[heights[i]!, top] as const]));
}

/** The room two forms both take, nothing where they are disjoint or touch. Sections are exact; where they change with the height between
 * two breaks (see Form), five heights of that slab are looked at, so that an overlap wholly between two of them is not seen.
 * @param press how far the two may press into each other, mm: overlaps no thicker are meant
 * @throws GeometryFailure */
export function overlapOf(a: Form, b: Form, at: Placing, press: Mm): Overlap | undefined {
  const shared = sharer(at, press);
  let found: Overlap | undefined;
  for (const [low, high] of slabs(a, b, at.rise))
    for (const { share, weight } of a.varies || b.varies ? VARYING : EVEN) {
      const z = low + share * (high - low);
      const regions = shared(sliceAt(a, z), sliceAt(b, z - at.rise));
      if (regions.length === 0) continue;
      const total = regions.reduce((sum, r) => sum + area(r), 0);
      const largest = regions.reduce((l, r) => (area(r) > area(l) ? r : l));
      found = {
        area: Math.max(found?.area ?? 0, total),
        at: found && found.area >= total ? found.at : centroid(largest),
        low: Math.min(found?.low ?? low, low),
        high: Math.max(found?.high ?? high, high),
        volume: (found?.volume ?? 0) + total * weight * (high - low),
      };
    }
  return found;
}
