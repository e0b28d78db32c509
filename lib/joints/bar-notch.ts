import { intersection } from '../geometry/boolean.js';
import { withMates } from '../geometry/mates.js';
import { moveOutline } from '../geometry/motion.js';
import { circle, type Region, rectangle, solid } from '../geometry/outline.js';
import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { recessed } from './recess.js';

// The ends of a straight bar let into a ring from behind. A bar runs along `turn` from +x, its middle line `off` to the left of the ring's
// centre. Its notch at the end it points to has parallel walls and ends at an arc about the ring's centre. Lengths mm.

/** One end of a bar in its ring; angles of the ring from +y, anticlockwise. */
export interface BarEnd {
  /** direction from the bar's middle to this end, from +x */
  readonly turn: Radians;
  /** of the bar's middle line, to the left of that direction */
  readonly off: Mm;
}

/** A ring's notches for bars. */
export interface BarNotch {
  readonly inner: Mm;
  /** how far the bar goes in past the ring's inner edge */
  readonly hold: Mm;
  /** wall to wall: the bar and its clearance */
  readonly width: Mm;
}

/** How far a notch is carried past the ring's inner edge: more than any cutter's width. */
const PAST: Mm = 60;
const QUARTER = Math.PI / 2;

/** The stretch of the ring a notch takes up, by angle: between its corners at the ring's inner edge and at the notch's end. */
export function notchSpan({ inner, hold, width }: BarNotch, { turn, off }: BarEnd): { from: Radians; sweep: Radians } {
  const walls = [off - width / 2, off + width / 2];
  const seen = walls.flatMap(wall => [inner, inner + hold].map(radius => Math.asin(wall / radius)));
  const from = Math.min(...seen);
  return { from: turn - QUARTER + from, sweep: Math.max(...seen) - from };
}

/** A ring's piece with a notch from the back. @param end as the piece's frame has it   @param depth from the part's back */
export function barNotched(part: Part, n: BarNotch, end: BarEnd, depth: Mm): Part {
  const low = end.off - n.width / 2;
  const high = end.off + n.width / 2;
  const farthest = Math.max(Math.abs(low), Math.abs(high));
  // where the bar comes to the ring's inner edge, along it
  const start = Math.max(0, Math.sqrt(Math.max(0, n.inner * n.inner - farthest * farthest)) - PAST);
  const strip = withMates(rectangle(start, low, 2 * (n.inner + n.hold), high), 'mullion', [0, 2]);
  const disc = withMates(circle(n.inner + n.hold), 'mullion', [0, 1]);
  const [run] = intersection([solid(moveOutline(strip, { turn: end.turn, x: 0, y: 0 }))], [solid(disc)]);
  const zone: Region = run!;
  return recessed(part, { zone, run: zone, depth });
}
