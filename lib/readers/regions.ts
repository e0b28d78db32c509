import { distanceToSegment, encloses } from '../geometry/locate.js';
import { type Box, bounds, signedArea } from '../geometry/measure.js';
import { type Outline, type Region, reverse } from '../geometry/outline.js';
import { requirePlain } from '../geometry/plain.js';
import type { Point } from '../geometry/point.js';
import { pointOn, type Segment, segments } from '../geometry/segment.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';

interface Loop {
  readonly outline: Outline;
  readonly edges: readonly Segment[];
  readonly box: Box;
  readonly area: number;
}

const boxHolds = (a: Box, b: Box): boolean =>
  a.minX <= b.minX + ON_BOUNDARY &&
  a.minY <= b.minY + ON_BOUNDARY &&
  a.maxX >= b.maxX - ON_BOUNDARY &&
  a.maxY >= b.maxY - ON_BOUNDARY;

/** Whether one loop lies in another: asked of a point of it that is not on the other. */
function within(inner: Loop, outer: Loop): boolean {
  if (inner.area >= outer.area || !boxHolds(outer.box, inner.box)) return false;
  const apart = (p: Point): boolean => outer.edges.every(s => distanceToSegment(s, p) > ON_BOUNDARY);
  for (const s of inner.edges)
    for (const share of [0.5, 0]) {
      const p = pointOn(s, share);
      if (apart(p)) return encloses(outer.outline, p);
    }
  return false;
}

const turned = (loop: Loop, anticlockwise: boolean): Outline =>
  signedArea(loop.outline) > 0 === anticlockwise ? loop.outline : reverse(loop.outline);

/** Outlines of any direction as regions, by how deep they lie in each other: those in none, or in an even number of others, are outer
 * outlines, those in an odd number openings of the smallest one round them (the even-odd rule, as for outlines that do not cross).
 * Outlines without area are left out. In the order of the outer outlines given.
 * @throws GeometryFailure 'self-crossing' with the place, where an outline crosses itself or another */
export function regionsOf(outlines: readonly Outline[]): Region[] {
  const loops = outlines
    .map(outline => ({ outline, edges: segments(outline), box: bounds(outline), area: Math.abs(signedArea(outline)) }))
    .filter(l => l.area > 0);
  const parents = loops.map(l => loops.filter(o => o !== l && within(l, o)).sort((a, b) => a.area - b.area));
  const regions = loops.flatMap((loop, i) => {
    if (parents[i]!.length % 2 === 1) return [];
    const openings = loops.filter((_, k) => parents[k]!.length % 2 === 1 && parents[k]![0] === loop);
    return [{ outer: turned(loop, true), openings: openings.map(o => turned(o, false)) }];
  });
  const all = regions.flatMap(r => [r.outer, ...r.openings]);
  if (all[0]) requirePlain({ outer: all[0], openings: all.slice(1) });
  return regions;
}
