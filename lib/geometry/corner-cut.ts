import type { Mm } from '../units/length.js';
import { pointAlong, startDirection } from './along.js';
import { arcAlong, turnFrom } from './biarc.js';
import { type Vertex, vertex } from './outline.js';
import { add, dot, type Point, scale, subtract } from './point.js';
import type { Segment } from './segment.js';
import { footOn, raysAt, tangentCenters } from './tangent-circle.js';

/** What a treated corner takes and gives: the shares of its two edges cut away, and the run put there. */
export interface Cut {
  /** share 0..1 of the edge into the corner, taken off its end */
  readonly before: number;
  /** share 0..1 of the edge out of the corner, taken off its start */
  readonly after: number;
  /** vertices of the new run, its end left out */
  readonly run: readonly Vertex[];
  /** where the new run ends on the edge out of the corner */
  readonly to: Point;
}

/** Shares overshot by less than this are rounding. */
const ROUNDING = 1e-9;
const within = (share: number): boolean => share > -ROUNDING && share < 1 + ROUNDING;
const clamp = (share: number): number => Math.min(1, Math.max(0, share));

/** The share of an edge from its start to a point of its carrier: below 0 before the start, above 1 past the end. */
function shareOf(s: Segment, p: Point): number {
  const v = subtract(p, s.from);
  if (s.kind === 'line') {
    const chord = subtract(s.to, s.from);
    return dot(v, chord) / dot(chord, chord);
  }
  const full = Math.abs(s.sweep);
  const start = startDirection(s);
  // two forms of one angle: the sine keeps a flat arc's digits, the tangent a half circle's
  if (full < 1)
    return (Math.sign(dot(v, start)) * 2 * Math.asin(Math.min(1, Math.hypot(v.x, v.y) / (2 * s.radius)))) / full;
  const turn = 2 * Math.sign(s.sweep) * turnFrom(start, v);
  if (turn < 0) return (turn < full / 2 - Math.PI ? turn + 2 * Math.PI : turn) / full;
  return (turn > full / 2 + Math.PI ? turn - 2 * Math.PI : turn) / full;
}

/** The arc of a radius tangent to both edges of a corner on the given hand of travel, the one nearest the corner that touches both within
 * their lengths. Undefined where there is none. */
export function filletCut(before: Segment, after: Segment, hand: 1 | -1, radius: Mm): Cut | undefined {
  const corner = after.from;
  const [into, out] = raysAt(before, after);
  const found = tangentCenters(into, out, hand, radius)
    .map(center => ({ center, a: add(corner, footOn(into, center)), b: add(corner, footOn(out, center)) }))
    .map(f => ({ ...f, shareA: shareOf(before, f.a), shareB: shareOf(after, f.b) }))
    .filter(f => within(f.shareA) && within(f.shareB) && f.shareA < 1 && f.shareB > 0)
    .sort((p, q) => q.shareA - p.shareA)[0];
  if (!found) return undefined;
  const spoke = subtract(subtract(found.a, corner), found.center);
  const travel = scale({ x: -spoke.y, y: spoke.x }, hand);
  return {
    before: clamp(1 - found.shareA),
    after: clamp(found.shareB),
    run: arcAlong(found.a, travel, found.b),
    to: found.b,
  };
}

/** The share of an edge within a straight distance of one of its ends. Undefined where it does not reach that far. */
function shareWithin(s: Segment, reach: Mm): number | undefined {
  const v = subtract(s.to, s.from);
  const ratio = reach / Math.hypot(v.x, v.y);
  if (ratio > 1 + ROUNDING) return undefined;
  if (s.kind === 'line') return clamp(ratio);
  return clamp((2 * Math.asin(Math.min(1, ratio * Math.sin(Math.abs(s.sweep) / 2)))) / Math.abs(s.sweep));
}

/** The straight cut between the points of both edges at a distance from the corner. Undefined where an edge does not reach that far. */
export function chamferCut(before: Segment, after: Segment, setback: Mm): Cut | undefined {
  const b = shareWithin(before, setback);
  const a = shareWithin(after, setback);
  if (b === undefined || a === undefined) return undefined;
  return { before: b, after: a, run: [vertex(pointAlong(before, 1 - b))], to: pointAlong(after, a) };
}
