import { intersection } from '../geometry/boolean.js';
import { bounds } from '../geometry/measure.js';
import { rectangle, solid } from '../geometry/outline.js';
import { segments } from '../geometry/segment.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';

/** Heights closer than this are one height. */
const SAME_HEIGHT: Mm = 1e-3;

/** Heights of level edges inside a part's outline, rising. */
function shoulders(part: Part): Mm[] {
  const { minY, maxY } = bounds(part.region.outer);
  const level = segments(part.region.outer).filter(
    s => s.kind === 'line' && Math.abs(s.from.y - s.to.y) < SAME_HEIGHT && Math.abs(s.from.x - s.to.x) > SAME_HEIGHT,
  );
  const heights = level.map(s => s.from.y).sort((a, b) => a - b);
  const inner = heights.filter(y => y > minY + SAME_HEIGHT && y < maxY - SAME_HEIGHT);
  return inner.filter((y, i) => i === 0 || y - inner[i - 1]! > SAME_HEIGHT);
}

/** A part that stands, cut at its level edges into parts that stand on each other: so a tab in another piece's slot can be hidden by that
 * piece, while the rest of its own is before it. A part with pockets or leaning edges stays whole. @throws GeometryFailure */
export function bandsOf(part: Part): readonly Part[] {
  const inner = shoulders(part);
  if (inner.length === 0 || part.bevel || part.features.some(f => f.kind === 'pocket')) return [part];
  const { minX, minY, maxX, maxY } = bounds(part.region.outer);
  const cuts = [minY, ...inner, maxY];
  return inner
    .concat(maxY)
    .flatMap((high, i) =>
      intersection([part.region], [solid(rectangle(minX, cuts[i]!, maxX, high))]).map(region => ({ ...part, region })),
    );
}
