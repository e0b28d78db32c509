import { endDirection, startDirection } from '../geometry/along.js';
import { segmentLength } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import { add, distance, type Point, scale, subtract } from '../geometry/point.js';
import { segments } from '../geometry/segment.js';
import { type MatingCorner, matingCorners } from '../parts/mates.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Spur } from './spur.js';

// A round cutter leaves wood in an inside corner, and a square corner does not go in there. Relief takes that wood away, and of the walls
// as little as may be. Of a right angle and a cutter of radius r, `bisector` takes (1 - 1/sqrt 2) r, 0.29 r, off both walls over a length of
// sqrt 2 r; `side` leaves the longer wall as it is and takes r off the shorter one over a length of 2 r.

/** How inside corners are opened for the square corner of another piece: the cutter's centre goes on from where it is when the cutter
 * touches both walls, until the cutter just covers the corner: straight towards it (`bisector`), or along the longer wall, so that only
 * the shorter one is cut into (`side`). */
export type Relief = 'bisector' | 'side' | 'none';

/** A corner to be opened, and the way to it out of a tool-centre outline. */
export interface Opened extends Spur {
  readonly corner: MatingCorner;
  /** the tool-centre outline with the spur's vertex */
  readonly outline: Outline;
}

/** Less wood than this in a corner keeps nothing out. */
const WORTH: Mm = 0.002;
/** A cutter that stays this many times as far off a corner as straight walls keep it does not get near it. */
const FAR = 1.5;

/** Corners of a part where a square corner of another piece goes in: at an edge that meets another piece, which has the same edges and so the
 * same corner; round edges have no corner, and where an edge is free nothing goes in. */
export const cornersToOpen = (part: Part): MatingCorner[] => matingCorners(part).filter(c => c.side === 'inside');

interface Nearest {
  readonly outline: Outline;
  readonly vertex: number;
  readonly reach: Mm;
}

/** The vertex of tool-centre outlines nearest to a corner: there the cutter touches both walls. */
function nearest(centres: readonly Outline[], at: Point): Nearest | undefined {
  let best: Nearest | undefined;
  for (const outline of centres)
    outline.forEach((v, vertex) => {
      const reach = distance(v, at);
      if (!best || reach < best.reach) best = { outline, vertex, reach };
    });
  return best;
}

/** Towards a corner from where the cutter touches both walls, until it just covers the corner. */
export const towards = (corner: Point, from: Point, radius: Mm): Point =>
  add(corner, scale(subtract(from, corner), radius / distance(from, corner)));

/** Over the corner along the longer wall: a radius off it, on the hollow's side. */
function besideLonger({ of, vertex, at }: MatingCorner, radius: Mm): Point {
  const edges = segments(of.outline);
  const before = edges[(vertex + edges.length - 1) % edges.length]!;
  const after = edges[vertex]!;
  const along = segmentLength(before) >= segmentLength(after) ? endDirection(before) : startDirection(after);
  const right = { x: along.y, y: -along.x };
  return add(at, scale(right, of.where === 'pocket' ? -radius : radius));
}

/** How corners are opened from tool-centre outlines. Corners the cutter does not get near stay as they are.
 * @param centres the outlines of the tool's centre that pass the corners   @param radius of the cutter, mm, above 0 */
export function openedFrom(
  corners: readonly MatingCorner[],
  centres: readonly Outline[],
  radius: Mm,
  relief: Relief,
): Opened[] {
  if (relief === 'none') return [];
  return corners.flatMap((corner): Opened[] => {
    const from = nearest(centres, corner.at);
    const straight = radius / Math.cos(corner.turn / 2);
    if (!from || from.reach < radius + WORTH || from.reach > FAR * straight) return [];
    const centre = from.outline[from.vertex]!;
    const to = relief === 'side' ? besideLonger(corner, radius) : towards(corner.at, centre, radius);
    return [{ corner, outline: from.outline, vertex: from.vertex, to }];
  });
}
