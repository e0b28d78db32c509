import { difference, union } from '../geometry/boolean.js';
import { withMates } from '../geometry/mates.js';
import type { Box } from '../geometry/measure.js';
import { type Region, rectangle, solid } from '../geometry/outline.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { onlyPiece } from './one-piece.js';

// A board's tab through a slot of another, and two boards on edge that cross with a notch each. Straight walls, through cuts: any
// method makes them. Edges that meet the other board are tagged `slot`. Boxes in each part's own frame; lengths mm.

/** A rectangle with some of its edges tagged: 0 below, then anticlockwise. */
const plate = (b: Box, edges: readonly number[] = [0, 1, 2, 3]): Region =>
  solid(withMates(rectangle(b.minX, b.minY, b.maxX, b.maxY), 'slot', edges));

const widened = (b: Box, by: Mm): Box => ({
  minX: b.minX - by,
  minY: b.minY - by,
  maxX: b.maxX + by,
  maxY: b.maxY + by,
});

/** A part with its region changed; the change must leave it in one piece. */
const reshaped = (part: Part, regions: readonly Region[]): Part => ({ ...part, region: onlyPiece(part.id, regions) });

/** A board with tabs on its edge; their flanks meet the other board, their ends lie flush with it.
 * @param tabs each touches the edge it grows from, at its full width  @param out the axis they point along
 * @throws RangeError where one touches nothing */
export const tabbed = (part: Part, tabs: readonly Box[], out: 'x' | 'y'): Part => {
  const flanks = out === 'y' ? [1, 3] : [0, 2];
  const added = tabs.map(t => plate(t, flanks));
  return tabs.length === 0 ? part : reshaped(part, union([part.region, ...added]));
};

/** A board with slots for tabs. @param tabs what goes through  @param clearance across the joint, half of it on each side
 * @throws RangeError where they cut the board in two */
export const slotted = (part: Part, tabs: readonly Box[], clearance: Mm): Part =>
  tabs.length === 0
    ? part
    : reshaped(
        part,
        difference(
          [part.region],
          tabs.map(t => plate(widened(t, clearance / 2))),
        ),
      );

/** Where a board crosses another, as one of the two sees it. */
export interface Crossing {
  /** middle of the other's thickness, along this one's edge */
  readonly at: Mm;
  /** of the other */
  readonly thickness: Mm;
}

/** The edge of a board that notches are cut from. */
export interface NotchedEdge {
  /** the axis along the edge */
  readonly along: 'x' | 'y';
  readonly at: Mm;
  /** signed: how deep the notch goes from the edge into the board */
  readonly into: Mm;
}

/** A board notched from one edge for others that cross it, each half way through the other. With the clearance across the joint, half of it
 * on each side, and half of it in depth. @throws RangeError where a notch cuts the board in two */
export function notched(part: Part, edge: NotchedEdge, crossings: readonly Crossing[], clearance: Mm): Part {
  if (crossings.length === 0) return part;
  const side = Math.sign(edge.into);
  const [out, floor] = [edge.at - side, edge.at + edge.into + (side * clearance) / 2];
  const [low, high] = [Math.min(out, floor), Math.max(out, floor)];
  const boxes = crossings.map(({ at, thickness }): Region => {
    const half = (thickness + clearance) / 2;
    return plate(
      edge.along === 'x'
        ? { minX: at - half, minY: low, maxX: at + half, maxY: high }
        : { minX: low, minY: at - half, maxX: high, maxY: at + half },
    );
  });
  return reshaped(part, difference([part.region], boxes));
}
