import { area } from '../geometry/measure.js';
import { offset } from '../geometry/offset.js';
import { type Outline, type Region, reverse } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { type ArcSegment, type Segment, segments } from '../geometry/segment.js';
import type { Mm, Radians } from '../units/length.js';

/** A corner a round cutter cannot get into: the wood lies on the outside of the turn. */
export interface InsideCorner {
  /** the corner is vertex `vertex` of its outline */
  readonly vertex: number;
  /** how far the outline turns there, 0 to pi */
  readonly turn: Radians;
  readonly at: Point;
}

/** Less than this is no corner: smooth joins of lines and arcs that rounding has bent. */
const SMOOTH: Radians = 1e-6;

/** Share of the cutter's own square that may stay uncut before a shape counts as too narrow: curved edges at a corner, rounding. */
const LOST_SHARE = 0.02;
/** Corners between curved edges lose a little more or less than the formula for straight ones. */
const CURVED_CORNERS = 1.5;

const heading = (s: Segment, end: 'from' | 'to'): Radians =>
  s.kind === 'line'
    ? Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x)
    : s.start + (end === 'to' ? s.sweep : 0) + (Math.sign(s.sweep) * Math.PI) / 2;

/** Signed turn from one heading to the next, -pi to pi, positive anticlockwise. */
const turnBetween = (a: Radians, b: Radians): Radians => Math.atan2(Math.sin(b - a), Math.cos(b - a));

/** Corners that turn right along an outline whose wood lies on the left (an anticlockwise outer outline, a clockwise opening):
 * those the cutter, going round outside the wood, cannot get into. */
export function insideCorners(outline: Outline): InsideCorner[] {
  const edges = segments(outline);
  return edges.flatMap((s, vertex) => {
    const before = edges[(vertex + edges.length - 1) % edges.length]!;
    const turn = -turnBetween(heading(before, 'to'), heading(s, 'from'));
    return turn > SMOOTH ? [{ vertex, turn, at: { x: s.from.x, y: s.from.y } }] : [];
  });
}

/** An arc that hollows the wood out, tighter than the cutter. */
export interface TightArc {
  readonly arc: ArcSegment;
  /** the joint, where another piece meets it */
  readonly mate?: string;
}

/** Arcs of an outline with the wood on the left that hollow the wood out and are tighter than the cutter. */
export const tightArcs = (outline: Outline, radius: Mm): TightArc[] =>
  segments(outline).flatMap((arc, i): TightArc[] => {
    if (arc.kind === 'line' || arc.sweep > 0 || arc.radius >= radius * (1 - 1e-9)) return [];
    const mate = outline[i]!.mate;
    return [mate === undefined ? { arc } : { arc, mate }];
  });

/** An arc that turns no more than this rounds a corner; more, and it is the end of a slot. */
const ROUNDED: Radians = 0.6 * Math.PI;

/** How far a round cutter stays off a corner, mm: r / sin(phi / 2) - r with phi the angle between the walls, r / cos(turn / 2) - r.
 * Source: circle tangent to both legs of an angle, plane trigonometry. */
export const woodLeft = (turn: Radians, radius: Mm): Mm => radius * (1 / Math.cos(turn / 2) - 1);

/** Wood a round cutter leaves in a corner between straight walls, mm²: the kite r² tan(turn / 2) less the sector r² turn / 2. */
const areaLeft = (turn: Radians, radius: Mm): number => radius * radius * (Math.tan(turn / 2) - turn / 2);

/** A corner so sharp that its formula runs off: more than this is a spike, not a corner. */
const SPIKE: Radians = 0.95 * Math.PI;

/** The same in a rounded corner: less what the round takes. */
const areaLeftInRound = ({ arc }: TightArc, radius: Mm): number =>
  areaLeft(Math.abs(arc.sweep), radius) - areaLeft(Math.abs(arc.sweep), arc.radius);

/** Whether what a round cutter misses is only corners, sharp ones and those rounded tighter than it is. @param lost mm² it does not reach */
export function onlyCorners(
  lost: number,
  corners: readonly InsideCorner[],
  rounded: readonly TightArc[],
  radius: Mm,
): boolean {
  const sharp = corners.reduce((sum, c) => sum + areaLeft(Math.min(c.turn, SPIKE), radius), 0);
  const rounds = rounded.filter(r => Math.abs(r.arc.sweep) <= ROUNDED);
  const spared = rounds.reduce((sum, r) => sum + areaLeftInRound(r, radius), sharp);
  return lost <= CURVED_CORNERS * spared + LOST_SHARE * radius * radius;
}

const areas = (regions: readonly Region[]): number => regions.reduce((sum, r) => sum + area(r), 0);

/** Corners of an outline of a hollow (a pocket, an opening seen as an area): the hollow lies on its left, the wood on its right. */
export const cornersOfHollow = (outline: Outline): InsideCorner[] =>
  insideCorners(outline.map(v => ({ x: v.x, y: -v.y, bulge: -v.bulge }))).map(c => ({
    ...c,
    at: { x: c.at.x, y: -c.at.y },
  }));

const outlinesOf = ({ outer, openings }: Region): Outline[] => [outer, ...openings];

/** Arcs of a hollow's outlines that are tighter than the cutter. */
export const tightArcsOfHollow = (hollow: Region, radius: Mm): TightArc[] =>
  outlinesOf(hollow).flatMap(o => tightArcs(reverse(o), radius));

/** Where the cutter's centre goes to clear a hollow to its walls: empty when it does not fit.
 * @returns the centre's area in one piece that reaches everything but the corners, or undefined */
export function centresIn(hollow: Region, radius: Mm): Region | undefined {
  if (radius === 0) return hollow;
  const centres = offset([hollow], -radius);
  const [only] = centres;
  if (!only || centres.length > 1) return undefined;
  const lost = area(hollow) - areas(offset(centres, radius));
  const corners = outlinesOf(hollow).flatMap(cornersOfHollow);
  return onlyCorners(lost, corners, tightArcsOfHollow(hollow, radius), radius) ? only : undefined;
}

/** The widest cutter that passes a test which every narrower one passes too, mm to 0.01, rounded down; at most `limit`. */
export function widestThat(fits: (width: Mm) => boolean, limit: Mm): Mm {
  let yes = 0;
  let no = limit;
  while (no - yes > 0.005) {
    const middle = (yes + no) / 2;
    if (fits(middle)) yes = middle;
    else no = middle;
  }
  return Math.floor(yes * 100) / 100;
}

/** Diameter of the widest round cutter that gets everywhere in a hollow but its corners, mm to 0.01, rounded down; at most `limit`. */
export const widestCutter = (hollow: Region, limit: Mm): Mm =>
  widestThat(width => centresIn(hollow, width / 2) !== undefined, limit);

/** Wood left inside the concave parts of an outer outline beyond its corners: whether a round cutter can follow it all round.
 * @param centres the outline offset outward by the radius */
export function followsOutside(outer: Region, centres: readonly Region[], radius: Mm): boolean {
  const lost = areas(offset(centres, -radius)) - area(outer);
  return onlyCorners(lost, insideCorners(outer.outer), tightArcs(outer.outer, radius), radius);
}
