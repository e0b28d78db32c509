import { arrange } from './arrangement/arrange.js';
import { addOutline, type Edge, extentOf } from './arrangement/edge.js';
import { meet } from './arrangement/meet.js';
import { closePairs } from './arrangement/pairs.js';
import { GeometryFailure } from './failure.js';
import { encloses } from './locate.js';
import { area, bounds, perimeter } from './measure.js';
import type { Outline, Region } from './outline.js';
import { mergeTolerance, SLIVER } from './tolerance.js';

/** Refuses a region whose outlines cross themselves or each other, or whose openings are not inside it. Outlines may touch.
 * Overlaps thinner than SLIVER are the rounding of whoever wrote the coordinates, and pass. @throws GeometryFailure 'self-crossing' */
export function requirePlain(region: Region): void {
  const edges: Edge[] = [];
  for (const o of [region.outer, ...region.openings]) addOutline(edges, o, 1, 0);
  const tolerance = mergeTolerance(extentOf(edges));
  if (!touching(edges, tolerance) && wellNested(region)) return;
  // plain means: every point is wound round once or not at all
  const [bad] = arrange(edges, w => w < 0 || w > 1).filter(r => area(r) > SLIVER * perimeter(r));
  if (bad) throw new GeometryFailure('self-crossing', bad.outer[0]!, 'the outlines of a region cross');
}

/** Whether any two edges meet other than at a common end. */
function touching(edges: readonly Edge[], tolerance: number): boolean {
  let found = false;
  closePairs(edges, tolerance, (i, j) => {
    const a = edges[i]!;
    const b = edges[j]!;
    meet(a, b, tolerance, (x, y) => {
      found ||= !(atEnd(a, x, y, tolerance) && atEnd(b, x, y, tolerance));
    });
  });
  return found;
}

const atEnd = (e: Edge, x: number, y: number, tolerance: number): boolean =>
  Math.hypot(x - e.x0, y - e.y0) <= tolerance || Math.hypot(x - e.x1, y - e.y1) <= tolerance;

/** For outlines that do not meet: whether every opening lies in the outer outline and in no other opening. */
function wellNested(region: Region): boolean {
  const within = (o: Outline, p: Outline): boolean => encloses(o, p[0]!);
  const boxes = region.openings.map(bounds);
  return region.openings.every((o, i) => {
    const box = boxes[i]!;
    return (
      within(region.outer, o) &&
      region.openings.every((other, j) => {
        const b = boxes[j]!;
        return i === j || b.minX > box.minX || b.maxX < box.maxX || b.minY > box.minY || !within(other, o);
      })
    );
  });
}
