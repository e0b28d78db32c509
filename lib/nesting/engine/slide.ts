import type { Search } from './search.js';
import { HEAD, makePair, type Tables } from './tables.js';

/** Along or across a bay. */
export type Axis = 'x' | 'y';

/** What one pair of convex pieces counts beside a place looked at. */
const PAIR = 0.125;

/** How far back along an axis the second pose lies from the first when the first, moved on along it, just comes free of all pieces of the
 * second that it overlaps or meets on its way. @param v along the axis, from the first to the second @param across the same across it
 * @returns v, or less */
export function comeFree(
  tables: Tables,
  first: number,
  second: number,
  axis: Axis,
  v: number,
  across: number,
  touch: number,
): number {
  let start = tables.start[first * tables.count + second]!;
  if (start < 0) start = makePair(tables, first, second);
  const { data } = tables;
  const along = axis === 'x' ? 0 : 1;
  const begin = start + 1;
  const many = data[start]!;
  let free = v;
  // once round all pieces without a step is enough; a piece passed before may be met again further on
  for (let quiet = 0, k = 0, at = begin; quiet < many; quiet++) {
    const next = at + HEAD + 3 * data[at]!;
    if (
      across > data[at + 2 - along]! &&
      across < data[at + 4 - along]! &&
      free > data[at + 1 + along]! &&
      free < data[at + 3 + along]!
    ) {
      const low = lowest(data, at + HEAD, next, along, free, across, touch);
      // a hair more is rounding
      if (low < free - touch / 2) {
        free = low;
        quiet = -1;
      }
    }
    k = k + 1 === many ? 0 : k + 1;
    at = k === 0 ? begin : next;
  }
  return free;
}

/** Where a line along an axis leaves a convex polygon downwards; as it is from outside. */
function lowest(
  data: Float64Array,
  from: number,
  end: number,
  along: number,
  v: number,
  across: number,
  touch: number,
): number {
  let low = -Infinity;
  for (let e = from; e < end; e += 3) {
    const slope = data[e + along]!;
    const reach = data[e + 2]! - touch - data[e + 1 - along]! * across;
    if (slope * v >= reach) return v;
    if (slope < -1e-12) low = Math.max(low, reach / slope);
  }
  return low;
}

/** The first free place of a pose along an axis, from a place on. @param across where it lies across the axis
 * @returns the place along the axis; Infinity if it is past the limit */
export function slide(
  s: Search,
  pose: number,
  b: number,
  axis: Axis,
  across: number,
  from: number,
  limit: number,
): number {
  const { tables, inWay, touch } = s;
  const [at, side, end, far] = axis === 'x' ? [s.x, s.y, s.right, s.top] : [s.y, s.x, s.top, s.right];
  const [size, breadth] =
    axis === 'x' ? [tables.width[pose]!, tables.height[pose]!] : [tables.height[pose]!, tables.width[pose]!];
  const first = b * s.count;
  const last = first + s.filled[b]!;
  let many = 0;
  for (let k = first; k < last; k++) {
    const j = s.members[k]!;
    if (side[j]! < across + breadth && far[j]! > across && end[j]! > from && at[j]! < limit + size) inWay[many++] = j;
  }
  let place = from;
  let work = 1;
  for (let quiet = 0, k = 0; quiet < many && place <= limit; quiet++, k = k + 1 === many ? 0 : k + 1) {
    const j = inWay[k]!;
    if (end[j]! <= place || at[j]! >= place + size) continue;
    work += PAIR * tables.pieces[pose]! * tables.pieces[s.pose[j]!]!;
    const v = comeFree(tables, pose, s.pose[j]!, axis, at[j]! - place, side[j]! - across, touch / 2);
    // a hair more is rounding
    if (v >= at[j]! - place - touch / 4) continue;
    place = at[j]! - v;
    quiet = -1;
  }
  s.meter.evaluations += work;
  return place > limit ? Infinity : place;
}
