import { refuse } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { arrange } from './arrangement/arrange.js';
import { addOutline, type Edge, extentOf } from './arrangement/edge.js';
import { union } from './boolean.js';
import { type Region, reverse } from './outline.js';
import { addRawOffset, type Join } from './raw-offset.js';
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

const outlinesOf = (regions: readonly Region[]) => regions.flatMap(r => [r.outer, ...r.openings]);

function toleranceFor(regions: readonly Region[], by: Mm): Mm {
  const edges: Edge[] = [];
  for (const r of regions) addOutline(edges, r.outer, 1, 0);
  return mergeTolerance(extentOf(edges) + by);
}

function grow(regions: readonly Region[], by: Mm, join: Join): Region[] {
  const edges: Edge[] = [];
  const tolerance = toleranceFor(regions, by);
  for (const outline of outlinesOf(regions)) addRawOffset(edges, outline, by, join, tolerance);
  return arrange(edges, w => w > 0);
}

/** Shrinking a region is growing what is outside it: the outlines run the other way, and the plane far off winds 0 instead of 1. */
function shrink(regions: readonly Region[], by: Mm, join: Join): Region[] {
  const edges: Edge[] = [];
  const tolerance = toleranceFor(regions, by);
  for (const outline of outlinesOf(regions)) addRawOffset(edges, reverse(outline), by, join, tolerance);
  return arrange(edges, w => w < 0);
}
