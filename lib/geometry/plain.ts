import { arrange } from './arrangement/arrange.js';
import { addOutline, type Edges, edgeTable, extentOf } from './arrangement/edges.js';
import { meet } from './arrangement/meet.js';
import { closePairs } from './arrangement/pairs.js';
import { windingOf } from './arrangement/ray.js';
import { GeometryFailure } from './failure.js';
import { area, perimeter } from './measure.js';
import type { Region } from './outline.js';
import { mergeTolerance, sliver } from './tolerance.js';

/** Refuses a region whose outlines cross themselves or each other, or whose openings are not inside it. Outlines may touch.
 * Overlaps thinner than a sliver are the rounding of whoever wrote the coordinates, and pass. @throws GeometryFailure 'self-crossing' */
export function requirePlain(region: Region): void {
  const { edges, first } = tableOf(region);
  requirePlainRows(region, edges, first, mergeTolerance(extentOf(edges)));
}

/** The same for a region whose outlines are in a table already: outline k is the rows first[k] up to first[k + 1]. */
export function requirePlainRows(region: Region, edges: Edges, first: readonly number[], tolerance: number): void {
  if (!touching(edges, first[0]!, first.at(-1)!, tolerance) && wellNested(edges, first)) return;
  // plain means: every point is wound round once or not at all
  const own = tableOf(region).edges;
  const thin = sliver(sizeOf(own), extentOf(own));
  const [bad] = arrange(own, w => w < 0 || w > 1).filter(r => area(r) > thin * perimeter(r));
  if (bad) throw new GeometryFailure('self-crossing', bad.outer[0]!, 'the outlines of a region cross');
}

/** The longer side of the box round all edges. */
function sizeOf(edges: Edges): number {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i < edges.count; i++) {
    box.minX = Math.min(box.minX, edges.minX[i]!);
    box.minY = Math.min(box.minY, edges.minY[i]!);
    box.maxX = Math.max(box.maxX, edges.maxX[i]!);
    box.maxY = Math.max(box.maxY, edges.maxY[i]!);
  }
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

function tableOf(region: Region): { readonly edges: Edges; readonly first: readonly number[] } {
  const outlines = [region.outer, ...region.openings];
  const edges = edgeTable(outlines.reduce((n, o) => n + o.length, 0));
  const first = [0];
  for (const o of outlines) {
    addOutline(edges, o, 1, 0);
    first.push(edges.count);
  }
  return { edges, first };
}

/** Whether any two edges meet other than at a common end. */
function touching(edges: Edges, from: number, to: number, tolerance: number): boolean {
  let found = false;
  closePairs(edges, from, to, tolerance, (i, j) =>
    meet(edges, i, j, tolerance, (x, y) => {
      found ||= !(atEnd(edges, i, x, y, tolerance) && atEnd(edges, j, x, y, tolerance));
    }),
  );
  return found;
}

const atEnd = (e: Edges, i: number, x: number, y: number, tolerance: number): boolean =>
  (Math.abs(x - e.x0[i]!) <= tolerance && Math.abs(y - e.y0[i]!) <= tolerance) ||
  (Math.abs(x - e.x1[i]!) <= tolerance && Math.abs(y - e.y1[i]!) <= tolerance);

/** For outlines that do not meet: whether every opening lies in the outer outline and in no other opening.
 * Outline k is the edges first[k] up to first[k + 1]; the outer one comes first. */
function wellNested(edges: Edges, first: readonly number[]): boolean {
  const openings = first.slice(1, -1);
  const roundStart = (k: number, start: number): number => {
    let winding = 0;
    for (let i = first[k]!; i < first[k + 1]!; i++) {
      const x0 = edges.x0[i]!;
      const y0 = edges.y0[i]!;
      const x1 = edges.x1[i]!;
      const y1 = edges.y1[i]!;
      winding += windingOf(edges, i, x0, y0, x1, y1, edges.x0[start]!, edges.y0[start]!);
    }
    return winding;
  };
  if (!openings.every(start => roundStart(0, start) === 1)) return false;
  const boxes = {
    minX: openings.map((_, k) => least(edges.minX, first[k + 1]!, first[k + 2]!)),
    minY: openings.map((_, k) => least(edges.minY, first[k + 1]!, first[k + 2]!)),
    maxX: openings.map((_, k) => most(edges.maxX, first[k + 1]!, first[k + 2]!)),
    maxY: openings.map((_, k) => most(edges.maxY, first[k + 1]!, first[k + 2]!)),
  };
  let apart = true;
  closePairs(boxes, 0, openings.length, 0, (j, k) => {
    apart &&= roundStart(j + 1, openings[k]!) === 0 && roundStart(k + 1, openings[j]!) === 0;
  });
  return apart;
}

const least = (column: Float64Array, from: number, to: number): number =>
  column.subarray(from, to).reduce((a, b) => Math.min(a, b));
const most = (column: Float64Array, from: number, to: number): number =>
  column.subarray(from, to).reduce((a, b) => Math.max(a, b));
