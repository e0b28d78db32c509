import { union } from '../geometry/boolean.js';
import { arcVertices, circle, type Outline, type Region, reverse, solid, vertex } from '../geometry/outline.js';
import { ORIGIN, polar } from '../geometry/point.js';
import { type Leg, legStrip } from '../parts/leg.js';
import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { recessed } from './recess.js';

/** A step along a ring's inner edge, cut from its back: a pane lies in it. Lengths mm. */
export interface Rebate {
  /** of the ring */
  readonly inner: Mm;
  /** radial */
  readonly width: Mm;
  /** from the part's back; what goes past its front is left to the next layer */
  readonly depth: Mm;
  /** angles of the piece's frame, from +y, at which something deeper crosses the rebate: it is cleared in stretches from one to the next */
  readonly crossed: readonly Radians[];
  /** legs of the piece: the rebate runs down their inner edges */
  readonly legs: readonly Leg[];
}

/** How far a rebate is carried past an open edge: more than any cutter's width. */
const PAST: Mm = 60;
const TURN = 2 * Math.PI;

/** A stretch of a ring of any sweep below a full turn. */
const stretch = (inner: Mm, outer: Mm, from: Radians, sweep: Radians): Region =>
  solid([
    ...arcVertices(ORIGIN, outer, from, sweep),
    vertex(polar(outer, from + sweep)),
    ...arcVertices(ORIGIN, inner, from + sweep, -sweep),
    vertex(polar(inner, from)),
  ]);

const turned = (radius: Mm): Outline => {
  const [a, b] = circle(radius);
  return [vertex({ x: 0, y: a!.x }, 1), vertex({ x: 0, y: b!.x }, 1)];
};

/** A ring, or its stretches between angles. */
function stretches(inner: Mm, outer: Mm, crossed: readonly Radians[]): Region[] {
  if (crossed.length === 0) return [{ outer: turned(outer), openings: [reverse(turned(inner))] }];
  const at = crossed.map(a => (((a % TURN) + TURN) % TURN) + Math.PI / 2).sort((a, b) => a - b);
  return at.map((from, i) => {
    const sweep = (at[i + 1] ?? at[0]! + TURN) - from;
    return sweep < TURN
      ? stretch(inner, outer, from, sweep)
      : { outer: turned(outer), openings: [reverse(turned(inner))] };
  });
}

/** A ring's piece with a rebate along its inner edge, and its legs' inner edges. */
export function rebated(part: Part, { inner, width, depth, crossed, legs }: Rebate): Part {
  const edge = inner + width;
  const past = Math.max(inner / 2, inner - PAST);
  const strips = (from: Mm, foot: Mm): Region[] => legs.map(l => solid(legStrip(l, from, edge, { foot, arch: 0 })));
  const zones = stretches(past, edge, crossed);
  return zones.reduce((made, zone) => {
    const [area] = union([zone, ...strips(inner, 1)]);
    const [run] = union([zone, ...strips(past, PAST)]);
    return recessed(made, { zone: area!, run: run!, depth });
  }, part);
}
