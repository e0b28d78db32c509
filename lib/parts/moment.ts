import { difference } from '../geometry/boolean.js';
import { area, centroid } from '../geometry/measure.js';
import type { Mm } from '../units/length.js';
import { clearings } from './clearings.js';
import type { Part } from './part.js';

/** How much wood a part holds, mm³, and the middle of it: in the part's frame, its height over the back face. */
export interface Bulk {
  readonly volume: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly height: Mm;
}

/** Heights closer than this are one: far above rounding, far below any cut. */
const SAME_HEIGHT: Mm = 1e-6;

/** The wood of a part with square edges, from slab to slab between the floors of its pockets and holes; exact where they overlap too.
 * @throws GeometryFailure */
export function bulk(part: Part): Bulk {
  const cleared = clearings(part);
  const levels = [0, part.thickness, ...cleared.flatMap(c => [c.low, c.high])].sort((a, b) => a - b);
  let [volume, x, y, height] = [0, 0, 0, 0];
  for (const [i, low] of levels.slice(0, -1).entries()) {
    const high = levels[i + 1]!;
    if (high - low < SAME_HEIGHT) continue;
    const open = cleared.filter(c => c.low < high - SAME_HEIGHT / 2 && c.high > low + SAME_HEIGHT / 2);
    const slab =
      open.length === 0
        ? [part.region]
        : difference(
            [part.region],
            open.map(c => c.area),
          );
    for (const region of slab) {
      const own = area(region) * (high - low);
      const middle = centroid(region);
      volume += own;
      x += own * middle.x;
      y += own * middle.y;
      height += (own * (low + high)) / 2;
    }
  }
  return { volume, x: x / volume, y: y / volume, height: height / volume };
}
