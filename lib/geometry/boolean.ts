import { arrange } from './arrangement/arrange.js';
import { addOutline, type Edges, edgeTable } from './arrangement/edges.js';
import { SECOND, unpack } from './arrangement/winding.js';
import type { Region } from './outline.js';
import { repair } from './repair.js';
import { mergeTolerance } from './tolerance.js';

function extentOfRegions(regions: readonly Region[]): number {
  let most = 0;
  for (const r of regions) for (const v of r.outer) most = Math.max(most, Math.abs(v.x), Math.abs(v.y));
  return most;
}

function operandEdges(operands: readonly (readonly Region[])[]): Edges {
  const clean = operands.map(regions => regions.map(repair));
  const all = clean.flat();
  const flat = mergeTolerance(extentOfRegions(all));
  const edges = edgeTable(all.reduce((n, r) => n + r.outer.length + r.openings.reduce((m, o) => m + o.length, 0), 0));
  clean.forEach((regions, operand) => {
    const weight = operand === 0 ? 1 : SECOND;
    for (const { outer, openings } of regions) for (const o of [outer, ...openings]) addOutline(edges, o, weight, flat);
  });
  return edges;
}

/** Everything in any of the regions, in one pass; they may overlap, touch and share edges.
 * @returns regions that do not overlap, anticlockwise outers, collinear and co-circular neighbours merged, in order of place
 * @throws GeometryFailure */
export const union = (regions: readonly Region[]): Region[] => arrange(operandEdges([regions]), w => w > 0);

/** Everything in `from` and not in `less`; the regions of either may overlap. @throws GeometryFailure */
export const difference = (from: readonly Region[], less: readonly Region[]): Region[] =>
  arrange(operandEdges([from, less]), w => {
    const [first, second] = unpack(w);
    return first > 0 && second <= 0;
  });

/** Everything in both `a` and `b`; the regions of either may overlap. @throws GeometryFailure */
export const intersection = (a: readonly Region[], b: readonly Region[]): Region[] =>
  arrange(operandEdges([a, b]), w => {
    const [first, second] = unpack(w);
    return first > 0 && second > 0;
  });
