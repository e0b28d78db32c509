import { difference } from '../geometry/boolean.js';
import type { Region } from '../geometry/outline.js';
import { clearings } from '../parts/clearings.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';

/** A part between two heights over its back face, where its section stays the same. */
export interface Slab {
  readonly low: Mm;
  readonly high: Mm;
  readonly wood: readonly Region[];
  /** what of its upper and of its lower end nothing of the part covers */
  readonly above: readonly Region[];
  readonly below: readonly Region[];
}

/** Heights closer than this are one height. */
const SAME_HEIGHT: Mm = 1e-6;

function levels(heights: readonly Mm[]): Mm[] {
  const sorted = [...heights].sort((a, b) => a - b);
  return sorted.filter((h, i) => i === 0 || h - sorted[i - 1]! > SAME_HEIGHT);
}

const less = (regions: readonly Region[], other: readonly Region[] | undefined): readonly Region[] =>
  other === undefined ? regions : other === regions ? [] : difference(regions, other);

/** A part as a stack of slabs, from its back face up: its plate less its pockets. Round holes and bevels are left out: whoever draws
 * the slabs adds them. @throws GeometryFailure */
export function slabsOf(part: Part): Slab[] {
  const pockets = clearings({ ...part, features: part.features.filter(f => f.kind === 'pocket') });
  const heights = levels([0, ...pockets.flatMap(p => [p.low, p.high]), part.thickness]);
  const sections = heights.slice(1).map((high, i) => {
    const low = heights[i]!;
    const cleared = pockets.filter(p => p.low < high - SAME_HEIGHT && p.high > low + SAME_HEIGHT).map(p => p.area);
    const wood = cleared.length === 0 ? [part.region] : difference([part.region], cleared);
    return { low, high, wood };
  });
  return sections.map((s, i) => ({
    ...s,
    above: less(s.wood, sections[i + 1]?.wood),
    below: less(s.wood, sections[i - 1]?.wood),
  }));
}
