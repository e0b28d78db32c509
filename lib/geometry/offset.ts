import { refuse } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { arrange } from './arrangement/arrange.js';
import { type Edges, edgeTable, extentOf } from './arrangement/edges.js';
import { union } from './boolean.js';
import type { Region } from './outline.js';
import { addRawOffset, EDGES_PER_VERTEX, type Join } from './raw-offset.js';
import { type Source, sourceOf } from './source.js';
import { FARTHEST, mergeTolerance } from './tolerance.js';

export interface OffsetOptions {
  /** outside corners: 'round' (the default) keeps the distance exactly, 'mitre' runs the edges on to a point */
  readonly join?: 'round' | 'mitre';
  /** a corner whose mitre would be longer than this many offsets, measured from the corner, is rounded; 2 unless given, at least 1 */
  readonly limit?: number;
}

const MITRE_LIMIT = 2;

/** Every point within `by` of the regions (by > 0), or every point of them further than -by from their outside (by < 0).
 * Outer outlines and openings move together: they may meet, merge, split or vanish. An arc of radius R becomes R + by or R - by
 * about the same centre. Several regions count as their union. A region is taken with its outlines as they are: where an opening touches
 * the outer outline or another opening, the wall of no width between them grows; offset(union([region]), by) leaves it out.
 * @param by mm, either sign, any size
 * @returns regions that do not overlap; none where nothing is left
 * @throws GeometryFailure; Unusable for a distance or limit out of range */
export function offset(regions: Region | readonly Region[], by: Mm, options: OffsetOptions = {}): Region[] {
  if (!(Math.abs(by) <= FARTHEST)) refuse('by', by, `a length, ${-FARTHEST} to ${FARTHEST} mm`);
  if (!['round', 'mitre', undefined].includes(options.join)) refuse('join', options.join, 'round, mitre');
  const join: Join = { kind: options.join ?? 'round', limit: options.limit ?? MITRE_LIMIT };
  if (!(join.limit >= 1)) refuse('limit', join.limit, '1 or more offsets');
  const given = 'outer' in regions ? [regions] : regions;
  if (by === 0) return union(given);
  return by > 0 ? grow(given, by, join) : shrink(given.length > 1 ? union(given) : given, -by, join);
}

/** An opening that is not wider than the disc is filled: every point of it is near its edge. */
function grow(regions: readonly Region[], by: Mm, join: Join): Region[] {
  const source = sourceOf([regions], [1]);
  const used = source.outer.map((outer, k) => outer || wider(source, k, by));
  return arrange(rawOffset(source, used, false, by, join), w => w > 0);
}

/** Shrinking a region is growing what is outside it: the outlines run the other way, and the plane far off winds 0 instead of 1.
 * A region that is not wider than the disc is gone, its openings with it. */
function shrink(regions: readonly Region[], by: Mm, join: Join): Region[] {
  const source = sourceOf([regions], [1]);
  let kept = false;
  const used = source.outer.map((outer, k) => {
    if (outer) kept = wider(source, k, by);
    return kept;
  });
  return arrange(rawOffset(source, used, true, by, join), w => w < 0);
}

/** Whether an outline is wider than a disc of that radius in some direction: no such disc then holds it whole. */
function wider({ edges, first }: Source, k: number, radius: Mm): boolean {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = first[k]!; i < first[k + 1]!; i++) {
    box.minX = Math.min(box.minX, edges.minX[i]!);
    box.minY = Math.min(box.minY, edges.minY[i]!);
    box.maxX = Math.max(box.maxX, edges.maxX[i]!);
    box.maxY = Math.max(box.maxY, edges.maxY[i]!);
  }
  return box.maxX - box.minX > 2 * radius || box.maxY - box.minY > 2 * radius;
}

function rawOffset(source: Source, used: readonly boolean[], back: boolean, by: Mm, join: Join): Edges {
  const { edges, first } = source;
  const raw = edgeTable(EDGES_PER_VERTEX * edges.count, edges.mates);
  const tolerance = mergeTolerance(extentOf(edges) + by);
  used.forEach((use, k) => {
    if (use) addRawOffset(raw, edges, first[k]!, first[k + 1]!, back, by, join, tolerance);
  });
  return raw;
}
