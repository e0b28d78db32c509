import { flatten } from '../../lib/geometry/flatten.js';
import { bounds } from '../../lib/geometry/measure.js';
import { moveOutline } from '../../lib/geometry/motion.js';
import type { Outline } from '../../lib/geometry/outline.js';
import type { Point } from '../../lib/geometry/point.js';
import type { Sheet } from '../../lib/nesting/sheet.js';

/** Polygons in place of arcs stray this far, mm. */
export const CHORD = 0.005;

/** The finished outer outlines of a sheet where they lie. */
export const placed = (sheet: Sheet): Outline[] =>
  sheet.placements.map(p => moveOutline(p.cut.finished.outer, p.motion));

function toSegment(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}

function encloses(polygon: readonly Point[], p: Point): boolean {
  let inside = false;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  });
  return inside;
}

/** Distance between two polygons, 0 if one lies in the other: every corner against every edge. Two that cross have a corner within
 * an edge's reach only if they are near, so crossing ones come out near 0 here too, the pieces' edges being cut short first. */
function polygonGap(a: readonly Point[], b: readonly Point[]): number {
  if (encloses(a, b[0]!) || encloses(b, a[0]!)) return 0;
  const oneWay = (from: readonly Point[], to: readonly Point[]): number =>
    Math.min(...from.map(p => Math.min(...to.map((q, i) => toSegment(p, q, to[(i + 1) % to.length]!)))));
  return Math.min(oneWay(a, b), oneWay(b, a));
}

/** No edge longer than a millimetre or so: then crossing polygons have corners near each other's edges. */
const dense = (outline: Outline): Point[] => {
  const corners = flatten(outline, CHORD);
  return corners.flatMap((p, i) => {
    const q = corners[(i + 1) % corners.length]!;
    const parts = Math.max(1, Math.ceil(Math.hypot(q.x - p.x, q.y - p.y) / 4));
    return Array.from({ length: parts }, (_, k) => ({
      x: p.x + ((q.x - p.x) * k) / parts,
      y: p.y + ((q.y - p.y) * k) / parts,
    }));
  });
};

/** Least distance between any two finished outlines on a sheet, mm; crossing ones come out below 2. Pairs whose boxes are further apart
 * than `enough` are not looked at. */
export function leastGap(sheet: Sheet, enough: number): number {
  const shapes = placed(sheet).map(o => ({ box: bounds(o), points: dense(o) }));
  let least = Infinity;
  shapes.forEach((a, i) => {
    for (const b of shapes.slice(i + 1)) {
      const dx = Math.max(a.box.minX, b.box.minX) - Math.min(a.box.maxX, b.box.maxX);
      const dy = Math.max(a.box.minY, b.box.minY) - Math.min(a.box.maxY, b.box.maxY);
      if (Math.max(dx, dy) <= enough) least = Math.min(least, polygonGap(a.points, b.points));
    }
  });
  return least;
}
