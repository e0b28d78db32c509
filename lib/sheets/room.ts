import { distanceToSegment } from '../geometry/locate.js';
import { type Box, bounds, segmentBounds } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import type { Work } from './work.js';

/** One profile's cut, ready to measure from. */
export interface Cut {
  readonly work: number;
  readonly box: Box;
  readonly edges: readonly { readonly s: Segment; readonly box: Box }[];
}

export function cutOf(work: number, outline: Outline): Cut {
  return { work, box: bounds(outline), edges: segments(outline).map(s => ({ s, box: segmentBounds(s) })) };
}

/** Every profile and hole that is cut on a sheet. */
export const cutsOf = (works: readonly Work[]): Cut[] =>
  works.flatMap((work, i) => (work.kind === 'inside' || work.kind === 'outside' ? [cutOf(i, work.outline)] : []));

const nearBox = (box: Box, p: Point, within: Mm): boolean =>
  p.x > box.minX - within && p.x < box.maxX + within && p.y > box.minY - within && p.y < box.maxY + within;

/** Whether a point lies nearer than `within` to a cut. */
export const isNear = (cut: Cut, p: Point, within: Mm): boolean =>
  nearBox(cut.box, p, within) &&
  cut.edges.some(({ s, box }) => nearBox(box, p, within) && distanceToSegment(s, p) < within);
