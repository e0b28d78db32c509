import { circle, type Region, solid } from '../geometry/outline.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import type { Drill, Feature, Part, Pocket } from './part.js';

/** Wood taken out of a part: everything over an area, between two heights over the part's back face. */
export interface Clearing {
  readonly area: Region;
  readonly low: Mm;
  readonly high: Mm;
  /** of the area, outlines one after the other */
  readonly edges: readonly Segment[];
}

type Hollow = Pocket | Drill;

const isHollow = (f: Feature): f is Hollow => f.kind === 'pocket' || f.kind === 'drill';

function heights(f: Hollow, thickness: Mm): readonly [low: Mm, high: Mm] {
  const face = f.kind === 'pocket' ? f.face : f.from;
  if (face === 'through') return [0, thickness];
  return face === 'front' ? [thickness - f.depth, thickness] : [0, f.depth];
}

/** What a part's pockets and holes take out of it, in the order of its features. Where they overlap, they overlap here too. */
export const clearings = (part: Part): Clearing[] =>
  part.features.filter(isHollow).map(f => {
    const [low, high] = heights(f, part.thickness);
    const area = f.kind === 'pocket' ? f.area : solid(circle(f.diameter / 2, f.at));
    return { area, low, high, edges: [area.outer, ...area.openings].flatMap(segments) };
  });
