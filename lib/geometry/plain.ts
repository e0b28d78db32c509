import { arrange } from './arrangement/arrange.js';
import { addOutline, type Edge, extentOf } from './arrangement/edge.js';
import { meet } from './arrangement/meet.js';
import { closePairs } from './arrangement/pairs.js';
import { windingOf } from './arrangement/ray.js';
import { GeometryFailure } from './failure.js';
import { area, perimeter } from './measure.js';
import type { Region } from './outline.js';
import { mergeTolerance, SLIVER } from './tolerance.js';

/** Refuses a region whose outlines cross themselves or each other, or whose openings are not inside it. Outlines may touch.
 * Overlaps thinner than SLIVER are the rounding of whoever wrote the coordinates, and pass. @throws GeometryFailure 'self-crossing' */
export function requirePlain(region: Region): void {
  const outlines = [region.outer, ...region.openings].map(o => {
    const edges: Edge[] = [];
    addOutline(edges, o, 1, 0);
    return edges;
  });
  const edges = outlines.length === 1 ? outlines[0]! : outlines.flat();
  const tolerance = mergeTolerance(extentOf(edges));
  if (!touching(edges, tolerance) && wellNested(outlines)) return;
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
  (Math.abs(x - e.x0) <= tolerance && Math.abs(y - e.y0) <= tolerance) ||
  (Math.abs(x - e.x1) <= tolerance && Math.abs(y - e.y1) <= tolerance);

/** For outlines that do not meet: whether every opening lies in the outer outline and in no other opening. */
function wellNested([outer = [], ...openings]: readonly (readonly Edge[])[]): boolean {
  if (!openings.every(o => winding(outer, o[0]!.x0, o[0]!.y0) === 1)) return false;
  let apart = true;
  closePairs(openings.map(boxOf), 0, (i, j) => {
    const [a, b] = [openings[i]!, openings[j]!];
    apart &&= winding(a, b[0]!.x0, b[0]!.y0) === 0 && winding(b, a[0]!.x0, a[0]!.y0) === 0;
  });
  return apart;
}

const winding = (edges: readonly Edge[], x: number, y: number): number =>
  edges.reduce((w, e) => w + windingOf(e, e.x0, e.y0, e.x1, e.y1, x, y), 0);

const boxOf = (edges: readonly Edge[]) =>
  edges.reduce(
    (b, e) => ({
      minX: Math.min(b.minX, e.minX),
      minY: Math.min(b.minY, e.minY),
      maxX: Math.max(b.maxX, e.maxX),
      maxY: Math.max(b.maxY, e.maxY),
    }),
    { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity },
  );
