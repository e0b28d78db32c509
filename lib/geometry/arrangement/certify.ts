import type { Region } from '../outline.js';
import { bulgeBetween } from './along.js';
import type { Slices } from './slices.js';
import type { Run } from './trace.js';
import { segmentShare, turningOf } from './turning.js';

/** A vertex that more kept runs leave than reach, or the other way round; -1 if there is none. */
export function unbalanced(slices: Slices, kept: readonly Run[]): number {
  const balance = new Int32Array(slices.xs.length);
  for (const run of kept) {
    const out = run & 1 ? -1 : 1;
    balance[slices.tail[run >> 1]!]! += out;
    balance[slices.head[run >> 1]!]! -= out;
  }
  return balance.findIndex(b => b !== 0);
}

/** Whether regions have the area that the kept runs enclose: nothing was lost or doubled in tracing, merging and nesting.
 * They may differ by what the tolerance is along all edges, which is more than the slivers that were dropped. */
export function sameArea(slices: Slices, kept: readonly Run[], regions: readonly Region[], tolerance: number): boolean {
  const { edges, xs, ys, tail, head, edge } = slices;
  const first = kept[0];
  if (first === undefined) return regions.length === 0;
  const x = xs[tail[first >> 1]!]!;
  const y = ys[tail[first >> 1]!]!;
  let area = 0;
  let chords = 0;
  for (const run of kept) {
    const i = run >> 1;
    const e = edge[i]!;
    const turn = edges.turn[e]!;
    const x0 = xs[tail[i]!]!;
    const y0 = ys[tail[i]!]!;
    const x1 = xs[head[i]!]!;
    const y1 = ys[head[i]!]!;
    const square = (x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0);
    let part = ((x0 - x) * (y1 - y0) - (y0 - y) * (x1 - x0)) / 2;
    if (turn !== 0) part += square * segmentShare(bulgeBetween(edges, e, turn, x0, y0, x1, y1).bulge);
    area += run & 1 ? -part : part;
    chords += Math.sqrt(square);
  }
  for (const r of regions) for (const o of [r.outer, ...r.openings]) area -= turningOf(o).area;
  return Math.abs(area) <= 8 * tolerance * chords;
}
