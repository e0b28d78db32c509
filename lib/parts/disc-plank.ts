import { requireRange } from '../findings/unusable.js';
import { difference } from '../geometry/boolean.js';
import {
  arcVertices,
  circle,
  type Outline,
  type Region,
  reverse,
  solid,
  type Vertex,
  vertex,
} from '../geometry/outline.js';
import { ORIGIN, polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A plank of a round built of parallel planks along x; lengths mm, the round's centre at the origin. */
export interface DiscPlankOptions extends PieceOptions {
  readonly radius: Mm;
  /** its lower and its upper edge, within the round */
  readonly from: Mm;
  readonly to: Mm;
  /** radius of the hole in the round's middle; 0 for none */
  readonly bore: Mm;
}

/** Nearer to the round's top or bottom than this the plank's edge is no edge, only a point of the arc. */
const POINT: Mm = 1e-9;

/** A round between two level lines, anticlockwise from its lower right. */
function strip(radius: Mm, from: Mm, to: Mm): Outline {
  const low = Math.asin(Math.max(-1, from / radius));
  const high = Math.asin(Math.min(1, to / radius));
  const [open, shut] = [radius + from < POINT, radius - to < POINT];
  const arc = (start: Radians, sweep: Radians): Vertex[] => arcVertices(ORIGIN, radius, start, sweep);
  const seam = (angle: Radians): Vertex => vertex(polar(radius, angle), 0, 'seam');
  if (shut) return [...arc(low, Math.PI - 2 * low), seam(Math.PI - low)];
  if (open) return [...arc(Math.PI - high, Math.PI + 2 * high), seam(high)];
  const side = high - low;
  return [...arc(low, side), seam(high), ...arc(Math.PI - high, side), seam(Math.PI - low)];
}

function bored(region: Region, o: DiscPlankOptions): Region[] {
  if (o.bore <= 0 || o.from >= o.bore || o.to <= -o.bore) return [region];
  const hole = circle(o.bore);
  if (o.from < -o.bore && o.to > o.bore) return [{ outer: region.outer, openings: [reverse(hole)] }];
  return difference([region], [solid(hole)]);
}

/** One plank of a round built of parallel planks, cut to the circle and round the hole in the middle; grain along x. Two pieces where
 * the hole cuts it in half. The edges from `from` to `to` meet the neighbours.
 * @throws Unusable naming the option. */
export function discPlank(o: DiscPlankOptions): Part[] {
  requireRange('radius', o.radius, 1, 10_000);
  requireRange('to', o.to, -o.radius, o.radius + POINT);
  requireRange('from', o.from, -o.radius - POINT, o.to - 0.1);
  requireRange('bore', o.bore, 0, o.radius - 0.5);
  return bored(solid(strip(o.radius, o.from, o.to)), o).map(region => piece('plank', 'Plank', o, { region }));
}

/** Edges between the planks of a round, from level `from` to level `to`: `count` planks of one width. */
export const plankEdges = (radius: Mm, count: number): Mm[] =>
  Array.from({ length: count + 1 }, (_, i) => -radius + (2 * radius * i) / count);
