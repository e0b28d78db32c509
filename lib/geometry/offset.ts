import { refuse } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { arrange } from './arrangement/arrange.js';
import { edgeTable } from './arrangement/edges.js';
import { union } from './boolean.js';
import { bounds } from './measure.js';
import { type Outline, type Region, reverse } from './outline.js';
import { addRawOffset, EDGES_PER_VERTEX, type Join } from './raw-offset.js';
import { repair } from './repair.js';
import { mergeTolerance } from './tolerance.js';

export interface OffsetOptions {
  /** outside corners: 'round' (the default) keeps the distance exactly, 'mitre' runs the edges on to a point */
  readonly join?: 'round' | 'mitre';
  /** a mitre longer than this many offsets is cut off square; 2 unless given, at least 1 */
  readonly limit?: number;
}

const MITRE_LIMIT = 2;

/** Every point within `by` of the regions (by > 0), or every point of them further than -by from their outside (by < 0).
 * Outer outlines and openings move together: they may meet, merge, split or vanish. An arc of radius R becomes R + by or R - by
 * about the same centre. Several regions count as their union.
 * @param by mm, either sign, any size
 * @returns regions that do not overlap; none where nothing is left
 * @throws GeometryFailure; Unusable for a distance or limit out of range */
export function offset(regions: Region | readonly Region[], by: Mm, options: OffsetOptions = {}): Region[] {
  if (!Number.isFinite(by)) refuse('by', by, 'a length in mm');
  const join: Join = { kind: options.join ?? 'round', limit: options.limit ?? MITRE_LIMIT };
  if (!(join.limit >= 1)) refuse('limit', join.limit, '1 or more offsets');
  const given = ('outer' in regions ? [regions] : regions).map(repair);
  if (by === 0) return union(given);
  return by > 0 ? grow(given, by, join) : shrink(given.length > 1 ? union(given) : given, -by, join);
}

/** Whether an outline is wider than a disc of that radius in some direction: no such disc then holds it whole. */
function wider(outline: Outline, radius: Mm): boolean {
  const box = bounds(outline);
  return box.maxX - box.minX > 2 * radius || box.maxY - box.minY > 2 * radius;
}

/** Roundings of points that are worked out are relative to the largest coordinate of the result. */
function toleranceFor(regions: readonly Region[], by: Mm): Mm {
  let most = 0;
  for (const { outer } of regions) {
    const box = bounds(outer);
    most = Math.max(most, -box.minX, -box.minY, box.maxX, box.maxY);
  }
  return mergeTolerance(most + by);
}

function rawOffset(outlines: readonly Outline[], by: Mm, join: Join, tolerance: Mm) {
  const edges = edgeTable(EDGES_PER_VERTEX * outlines.reduce((n, o) => n + o.length, 0));
  for (const o of outlines) addRawOffset(edges, o, by, join, tolerance);
  return edges;
}

/** An opening that is not wider than the disc is filled: every point of it is near its edge. */
function grow(regions: readonly Region[], by: Mm, join: Join): Region[] {
  const outlines = regions.flatMap(r => [r.outer, ...r.openings.filter(o => wider(o, by))]);
  return arrange(rawOffset(outlines, by, join, toleranceFor(regions, by)), w => w > 0);
}

/** Shrinking a region is growing what is outside it: the outlines run the other way, and the plane far off winds 0 instead of 1.
 * A region that is not wider than the disc is gone. */
function shrink(regions: readonly Region[], by: Mm, join: Join): Region[] {
  const outlines = regions.filter(r => wider(r.outer, by)).flatMap(r => [r.outer, ...r.openings].map(reverse));
  return arrange(rawOffset(outlines, by, join, toleranceFor(regions, by)), w => w < 0);
}
