import { requireRange } from '../findings/unusable.js';
import { intersection } from '../geometry/boolean.js';
import { area, bounds, centroid } from '../geometry/measure.js';
import { type Region, rectangle, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';

/** Steepest bevel, radians: past it a saw's table does not tilt, and a part runs out in a feather edge. */
const STEEPEST = Math.PI / 3;

/** How far each long edge of a part has come in per mm towards its back face; 0 where it is square.
 * @throws Unusable when the bevel is not 0 to 60 degrees */
export function bevelSlope(part: Part): number {
  if (part.bevel === undefined) return 0;
  requireRange('bevel', part.bevel, 0, STEEPEST, 'rad');
  return Math.tan(part.bevel);
}

/** Least and greatest x of a part at a height over its back face; the first is not below the second where nothing is left. */
export function widthAt(part: Part, height: Mm): readonly [Mm, Mm] {
  const { minX, maxX } = bounds(part.region.outer);
  const inset = bevelSlope(part) * (part.thickness - height);
  return [minX + inset, maxX - inset];
}

/** What a part's long edges leave of an area in it at a height over its back face. */
export function withinBevel(part: Part, region: Region, height: Mm): Region[] {
  if (bevelSlope(part) === 0) return [region];
  const [from, to] = widthAt(part, height);
  if (from >= to) return [];
  const { minY, maxY } = bounds(region.outer);
  return intersection([region], [solid(rectangle(from, minY - 1, to, maxY + 1))]);
}

/** Volume under an area from a part's front face down to a depth, as far as its long edges leave wood there, mm³: over each strip along
 * a long edge the wood is (x - edge) / slope deep, which by the strip's centroid is exact. */
export function volumeDownTo(part: Part, region: Region, depth: Mm): number {
  const slope = bevelSlope(part);
  const whole = area(region) * depth;
  if (slope === 0 || depth === 0) return whole;
  const { minX, maxX } = bounds(part.region.outer);
  const { minY, maxY } = bounds(region.outer);
  const reach = Math.min(slope * depth, (maxX - minX) / 2);
  const missing = (from: Mm, to: Mm, edge: Mm): number =>
    intersection([region], [solid(rectangle(from, minY - 1, to, maxY + 1))]).reduce(
      (sum, strip) => sum + area(strip) * (depth - Math.abs(centroid(strip).x - edge) / slope),
      0,
    );
  return whole - missing(minX, minX + reach, minX) - missing(maxX - reach, maxX, maxX);
}
