import { addOutline, type Edges, edgeTable } from './arrangement/edges.js';
import type { Region } from './outline.js';
import { requirePlainRows } from './plain.js';
import { clean } from './repair.js';
import { mergeTolerance } from './tolerance.js';

/** The outlines of some regions in one table, each run of edges closed: outline k is the rows first[k] up to first[k + 1]. */
export interface Source {
  readonly edges: Edges;
  readonly first: readonly number[];
  /** which outlines are the outer ones of their regions: openings follow their outer outline */
  readonly outer: readonly boolean[];
}

/** Regions put right and checked (see repair.ts), in one table; those of operand k have weights[k]. @throws GeometryFailure */
export function sourceOf(operands: readonly (readonly Region[])[], weights: readonly number[]): Source {
  const cleaned = operands.map(regions => regions.map(clean));
  const size = sizeOf(cleaned);
  const tolerance = mergeTolerance(size.extent);
  const edges = edgeTable(size.vertices);
  const first: number[] = [];
  const outer: boolean[] = [];
  cleaned.forEach((regions, operand) => {
    for (const region of regions) {
      const outlines = [region.outer, ...region.openings];
      for (const o of outlines) {
        first.push(edges.count);
        outer.push(o === region.outer);
        addOutline(edges, o, weights[operand]!, tolerance);
      }
      requirePlainRows(region, edges, [...first.slice(-outlines.length), edges.count], tolerance);
    }
  });
  first.push(edges.count);
  return { edges, first, outer };
}

function sizeOf(operands: readonly (readonly Region[])[]): { readonly vertices: number; readonly extent: number } {
  let vertices = 0;
  let extent = 0;
  for (const regions of operands) {
    for (const { outer, openings } of regions) {
      vertices += openings.reduce((n, o) => n + o.length, outer.length);
      for (const v of outer) extent = Math.max(extent, Math.abs(v.x), Math.abs(v.y));
    }
  }
  return { vertices, extent };
}
