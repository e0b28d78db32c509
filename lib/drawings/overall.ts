import { type Box, bounds, boundsOfAll } from '../geometry/measure.js';
import { angleOf, type Point } from '../geometry/point.js';
import { pointOn, type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import type { Placed } from './placed.js';

/** How large a prop is. */
export interface Overall {
  /** from the front; of a round prop the square round its circle */
  readonly box: Box;
  /** half its diameter, of a round prop */
  readonly radius?: Mm;
  /** heights of its back and its front */
  readonly low: Mm;
  readonly high: Mm;
}

/** The farthest point of an edge from the origin: an arc's farthest, of a line (a flat tip) the middle. */
function farthest(s: Segment): Point {
  if (s.kind === 'line') return pointOn(s, 0.5);
  const away = Math.atan2(s.center.y, s.center.x);
  const turn = 2 * Math.PI;
  const along = s.sweep > 0 ? away - s.start : s.start - away;
  const share = (((along % turn) + turn) % turn) / Math.abs(s.sweep);
  if (share <= 1) return pointOn(s, share);
  return Math.hypot(s.from.x, s.from.y) > Math.hypot(s.to.x, s.to.y) ? s.from : s.to;
}

/** A tip that is as far from the centre as the farthest, to this share. */
const AS_FAR = 0.999;
/** Corners of flat tips lie this much farther out than their middles, at most. */
const CORNERS = 1.03;
/** Three tips are 120 degrees apart; a wheel has no wider gap between its tips. */
const WIDEST_GAP = (130 * Math.PI) / 180;

const reachOf = (p: Point): Mm => Math.hypot(p.x, p.y);

/** Half the diameter of a prop that is round about the origin, over its tips; undefined where it is not.
 * An odd number of tips counts as a circle too. */
export function roundRadius(edges: readonly Segment[]): Mm | undefined {
  const points = edges.map(farthest);
  const radius = points.reduce((r, p) => Math.max(r, reachOf(p)), 0);
  if (edges.some(s => reachOf(s.from) > CORNERS * radius)) return undefined;
  // an arc about the centre reaches as far all along
  const whole = edges.filter(s => s.kind === 'arc' && reachOf(s.center) < (1 - AS_FAR) * radius);
  const tips = [...points, ...whole.flatMap(s => [s.from, pointOn(s, 0.5), s.to])].filter(
    p => reachOf(p) >= AS_FAR * radius,
  );
  const angles = tips.map(angleOf).sort((a, b) => a - b);
  const gaps = angles.map((a, i) => (angles[i + 1] ?? angles[0]! + 2 * Math.PI) - a);
  return Math.max(...gaps) <= WIDEST_GAP ? radius : undefined;
}

/** How large assembled pieces are together. @param pieces one or more */
export function overall(pieces: readonly Placed[]): Overall {
  const low = Math.min(...pieces.map(p => p.low));
  const high = Math.max(...pieces.map(p => p.high));
  const radius = roundRadius(pieces.flatMap(p => p.outlines.flatMap(segments)));
  if (radius === undefined) return { box: boundsOfAll(pieces.flatMap(p => p.outlines.map(bounds))), low, high };
  return { box: { minX: -radius, minY: -radius, maxX: radius, maxY: radius }, radius, low, high };
}
