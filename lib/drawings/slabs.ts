import { difference } from '../geometry/boolean.js';
import { type Region, reverse, solid } from '../geometry/outline.js';
import type { Model } from '../models/model.js';
import { type Clearing, clearings } from '../parts/clearings.js';
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

/** What is laid open where a slab ends and a cleared one begins: all that is cleared there and was not here, if there was wood.
 * Pockets that overlap stay two. */
function laidOpen(part: Part, here: readonly Clearing[], there: readonly Clearing[]): readonly Region[] {
  const newly = there.filter(c => !here.includes(c)).map(c => c.area);
  const gone = [...here.map(c => c.area), ...part.region.openings.map(o => solid(reverse(o)))];
  return newly.length > 0 && gone.length > 0 ? difference(newly, gone) : newly;
}

/** A part as a stack of slabs, from its back face up: its plate less its pockets. Round holes and bevels are left out: whoever draws
 * the slabs adds them. @throws GeometryFailure */
export function slabsOf(part: Part): Slab[] {
  const pockets = clearings({ ...part, features: part.features.filter(f => f.kind === 'pocket') });
  const heights = levels([0, ...pockets.flatMap(p => [p.low, p.high]), part.thickness]);
  const sections = heights.slice(1).map((high, i) => {
    const low = heights[i]!;
    const cleared = pockets.filter(p => p.low < high - SAME_HEIGHT && p.high > low + SAME_HEIGHT);
    const areas = cleared.map(c => c.area);
    return { low, high, cleared, wood: areas.length === 0 ? [part.region] : difference([part.region], areas) };
  });
  return sections.map(({ low, high, cleared, wood }, i) => {
    const [over, under] = [sections[i + 1], sections[i - 1]];
    return {
      low,
      high,
      wood,
      above: over ? laidOpen(part, cleared, over.cleared) : wood,
      below: under ? laidOpen(part, cleared, under.cleared) : wood,
    };
  });
}

/** The slabs of a model's parts: pictures of one model share them. */
export type SlabsOf = ReadonlyMap<Part, readonly Slab[]>;

/** All of a model's parts as slabs. @throws GeometryFailure */
export const modelSlabs = (model: Model): SlabsOf => new Map(model.parts.map(p => [p, slabsOf(p)]));
