import { movePolyline, turning } from '../geometry/motion.js';
import { type Polyline, rectangle, vertex } from '../geometry/outline.js';
import type { Part, Score } from '../parts/part.js';
import { type Dowel, dowelsFor } from '../stock/dowels.js';
import type { Mm, Radians } from '../units/length.js';

/** A round tongue between spoke and rim: a dowel in a hole bored along the spoke's centre line, half of it into the spoke's end, half into
 * the felloe's inner edge, at mid-thickness of both. The holes are bored into edges: no file holds them, the marks and settings say where
 * they go. Lengths mm. */
export interface BoredTongue {
  /** radius of the rim's inner edge */
  readonly inner: Mm;
  readonly diameter: Mm;
  /** of the hole in either piece, from the rim's inner edge on the spoke's centre line */
  readonly depth: Mm;
}

/** Share of the thinner piece's thickness that a dowel takes where no size of the table suits it: between a third and a half, common practice. */
const SHARE = 0.4;

/** The dowel for two pieces of which the thinner is so thick: the thickest of the table that is a third to a half of it and not over `most`,
 * else a rod of two fifths of it. @param most mm: what the spoke's width allows */
export function tongueDowel(thickness: Mm, most: Mm): Mm {
  const listed = dowelsFor(thickness).filter(d => d.diameter <= most);
  const thickest = listed.reduce<Dowel | undefined>((a, b) => (a && a.diameter >= b.diameter ? a : b), undefined);
  return thickest?.diameter ?? Math.min(most, SHARE * thickness);
}

/** Half a mark's tick across the end of a hole. */
const TICK: Mm = 2;

/** A hole as it is marked on a face, along +x from the rim's inner edge: its centre line, and a tick where it ends. */
function marks(joint: BoredTongue, side: 1 | -1): Polyline[] {
  const end = joint.inner + side * joint.depth;
  const line = [vertex({ x: joint.inner, y: 0 }), vertex({ x: end, y: 0 })];
  const tick = [vertex({ x: end, y: -TICK }), vertex({ x: end, y: TICK })];
  return [line, tick];
}

const scored = (part: Part, lines: readonly Polyline[]): Part => ({
  ...part,
  features: [...part.features, ...lines.map((line): Score => ({ kind: 'score', face: 'front', line }))],
});

/** A felloe marked on its front for every hole bored into its inner edge. @param at angles of the spokes in its frame, from +y */
export const boredFelloe = (felloe: Part, joint: BoredTongue, at: readonly Radians[]): Part =>
  scored(
    felloe,
    at.flatMap(angle => marks(joint, 1).map(line => movePolyline(line, turning(Math.PI / 2 + angle)))),
  );

/** A spoke along +x marked on its front for the hole bored into its outer end, with that end to drill by.
 * @param end width of the spoke there, mm */
export const boredSpoke = (spoke: Part, joint: BoredTongue, end: Mm): Part => ({
  ...scored(spoke, marks(joint, -1)),
  end: {
    outline: rectangle(0, 0, end, spoke.thickness),
    holes: [{ at: { x: end / 2, y: spoke.thickness / 2 }, diameter: joint.diameter }],
  },
});
