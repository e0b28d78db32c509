import { GeometryFailure } from '../failure.js';
import type { Region } from '../outline.js';
import { mergeTolerance } from '../tolerance.js';
import { orderAround } from './around.js';
import { sameArea, unbalanced } from './certify.js';
import { type Edges, extentOf } from './edges.js';
import { nest } from './nest.js';
import { outlineOf } from './outlines.js';
import { mergedPieces } from './pieces.js';
import { sliceEdges } from './slices.js';
import { keptRuns, traceLoops } from './trace.js';
import { windings } from './winding.js';

/** Another try of the arrangement with points merged within so many tolerances, where the first contradicts itself. */
const TRIES = [1, 8, 1 / 8, 64, 1 / 64, 512];

type Attempt = { readonly regions: Region[] } | { readonly at: { readonly x: number; readonly y: number } };

/** The regions where `inside` holds of the winding number that directed edges give the plane.
 * Every operation of the kernel is this one arrangement with its own edges and its own rule.
 * @throws GeometryFailure 'unresolved' where no try passed its own checks */
export function arrange(edges: Edges, inside: (winding: number) => boolean): Region[] {
  const tolerance = mergeTolerance(extentOf(edges));
  let place = { x: 0, y: 0 };
  for (const share of TRIES) {
    const attempt = arrangeOnce(edges, inside, tolerance * share);
    if ('regions' in attempt) return attempt.regions;
    place = attempt.at;
  }
  throw new GeometryFailure('unresolved', place, 'the outlines meet in a way that could not be resolved');
}

function arrangeOnce(edges: Edges, inside: (winding: number) => boolean, tolerance: number): Attempt {
  const slices = sliceEdges(edges, tolerance);
  const failedAt = (v: number | undefined): Attempt => ({
    at: { x: slices.xs[v ?? 0] ?? 0, y: slices.ys[v ?? 0] ?? 0 },
  });
  const around = orderAround(slices);
  const winding = windings(slices, around);
  if ('conflict' in winding) return failedAt(winding.conflict);
  const kept = keptRuns(slices, winding.left, inside);
  const open = unbalanced(slices, kept);
  if (open >= 0) return failedAt(open);
  const loops = traceLoops(slices, around, kept);
  const outlines = loops.map(loop => outlineOf(edges, mergedPieces(slices, loop, tolerance), tolerance));
  const regions = nest(outlines, tolerance);
  return regions && sameArea(slices, kept, regions, tolerance) ? { regions } : failedAt(slices.tail[kept[0]! >> 1]);
}
