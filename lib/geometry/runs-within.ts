import { intersection } from './boolean.js';
import { withMates } from './mates.js';
import { type Outline, type Polyline, type Region, vertex } from './outline.js';

/** A stretch of an outline: all of it where it is closed. */
export interface Run {
  readonly line: Polyline;
  readonly closed: boolean;
}

const OWN = 'own';

const tagged = (o: Outline): Outline =>
  withMates(
    o,
    OWN,
    o.map((_, i) => i),
  );

const bare = (line: Polyline): Polyline => line.map(v => vertex(v, v.bulge));

/** The stretches of an outline whose edges bear the tag, in its direction. */
function taggedRuns(outline: Outline): Run[] {
  const n = outline.length;
  const start = outline.findIndex((v, i) => v.mate === OWN && outline.at(i - 1)!.mate !== OWN);
  if (start < 0) return outline[0]?.mate === OWN ? [{ line: bare(outline), closed: true }] : [];
  const turned = [...outline.slice(start), ...outline.slice(0, start)];
  return turned.flatMap((v, i): Run[] => {
    if (v.mate !== OWN || turned.at(i - 1)!.mate === OWN) return [];
    const past = turned.findIndex((w, k) => k > i && w.mate !== OWN);
    const end = past < 0 ? n : past;
    return [{ line: [...bare(turned.slice(i, end)), vertex(turned[end % n]!)], closed: false }];
  });
}

/** The stretches of regions' outlines that lie within other regions, arcs as arcs. Tags of edges are not kept.
 * @throws GeometryFailure */
export function runsWithin(regions: readonly Region[], within: readonly Region[]): Run[] {
  const own = regions.map(r => ({ outer: tagged(r.outer), openings: r.openings.map(tagged) }));
  return intersection(own, within).flatMap(r => [r.outer, ...r.openings].flatMap(taggedRuns));
}
