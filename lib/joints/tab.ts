import { difference, union } from '../geometry/boolean.js';
import type { Box } from '../geometry/measure.js';
import { type Region, rectangle, solid } from '../geometry/outline.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';

// A board's tab through a slot of another, and two boards on edge that cross with a notch each. Straight walls, through cuts: any
// method makes them. Boxes in each part's own frame; lengths mm.

const plate = (b: Box, by: Mm = 0): Region => solid(rectangle(b.minX - by, b.minY - by, b.maxX + by, b.maxY + by));

/** A part with its region changed; the change must leave it in one piece. */
function reshaped(part: Part, regions: readonly Region[]): Part {
  const [only] = regions;
  if (!only || regions.length > 1) throw new RangeError(`${part.id} does not stay in one piece`);
  return { ...part, region: only };
}

/** A board with tabs on its edge. @param tabs each touches the edge it grows from, at its full width */
export const tabbed = (part: Part, tabs: readonly Box[]): Part =>
  tabs.length === 0 ? part : reshaped(part, union([part.region, ...tabs.map(t => plate(t))]));

/** A board with slots for tabs. @param tabs what goes through  @param clearance across the joint, half of it on each side */
export const slotted = (part: Part, tabs: readonly Box[], clearance: Mm): Part =>
  tabs.length === 0
    ? part
    : reshaped(
        part,
        difference(
          [part.region],
          tabs.map(t => plate(t, clearance / 2)),
        ),
      );

/** Where a board crosses another, as one of the two sees it. */
export interface Crossing {
  /** middle of the other's thickness, along this one's edge */
  readonly at: Mm;
  /** of the other */
  readonly thickness: Mm;
}

/** The edge of a board that notches are cut from: at a height along an axis, the board to the side that `into` says. */
export interface NotchedEdge {
  /** the axis along the edge */
  readonly along: 'x' | 'y';
  readonly at: Mm;
  /** signed: how deep the notch goes from the edge into the board */
  readonly into: Mm;
}

/** A board notched from one edge for others that cross it, each half way through the other. With the clearance across the joint, half of it
 * on each side, and half of it in depth. */
export function notched(part: Part, edge: NotchedEdge, crossings: readonly Crossing[], clearance: Mm): Part {
  const side = Math.sign(edge.into);
  const [out, floor] = [edge.at - side, edge.at + edge.into + (side * clearance) / 2];
  const [low, high] = [Math.min(out, floor), Math.max(out, floor)];
  const boxes = crossings.map(({ at, thickness }): Region => {
    const half = (thickness + clearance) / 2;
    return edge.along === 'x'
      ? solid(rectangle(at - half, low, at + half, high))
      : solid(rectangle(low, at - half, high, at + half));
  });
  return boxes.length === 0 ? part : reshaped(part, difference([part.region], boxes));
}
