import type { FindingPlace } from '../../findings/finding.js';
import { area, centroid } from '../../geometry/measure.js';
import type { Region } from '../../geometry/outline.js';

/** The middle of the largest of the regions that a cutter does not get into. */
export function middleOfLargest(part: string, left: readonly Region[]): { readonly place?: FindingPlace } {
  const [first, ...others] = left;
  if (!first) return {};
  const largest = others.reduce((a, b) => (area(b) > area(a) ? b : a), first);
  return { place: { part, at: centroid(largest) } };
}
