import { intersection } from '../geometry/boolean.js';
import { distanceToSegment, encloses } from '../geometry/locate.js';
import { withMates } from '../geometry/mates.js';
import { moveOutline } from '../geometry/motion.js';
import { type Outline, type Region, rectangle, reverse, solid } from '../geometry/outline.js';
import { cross, dot, type Point, polar } from '../geometry/point.js';
import { segments } from '../geometry/segment.js';
import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

// A board that stands across a ring between two rims, raked from the radius, with tabs through slots in the ring. Seen along the axle the
// board is a bar through the middle of the ring's band: u runs along it, outwards, from there. Lengths mm; angles from +y, anticlockwise.

/** The ring's band and the bar across it. */
export interface RakedBar {
  readonly inner: Mm;
  readonly outer: Mm;
  /** from the radius, positive anticlockwise; less than a quarter turn */
  readonly rake: Radians;
  readonly thickness: Mm;
  readonly depth: Mm;
  /** across the joint; half of it on each side */
  readonly clearance: Mm;
  /** wood between a slot and anything else */
  readonly wall: Mm;
}

/** A stretch of the bar. */
export interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
}

const middle = (b: RakedBar): Mm => (b.inner + b.outer) / 2;

/** Where along the bar a tab's slot keeps its wall to both edges of the band; `to` below `from` where it does not.
 * Point at (u, v) from the band's middle radius m: its distance from the centre squared is m² + u² + v² + 2 m (u cos rake - v sin rake). */
export function tabRoom(b: RakedBar): Stretch {
  const m = middle(b);
  const half = (b.thickness + b.clearance) / 2;
  const along = m * Math.cos(b.rake);
  const aside = 2 * m * half * Math.abs(Math.sin(b.rake));
  const reach = (square: number): Mm => Math.sqrt(Math.max(0, along * along - m * m + square)) - along;
  const out = b.outer - b.wall;
  const inn = b.inner + b.wall;
  const grown = b.clearance / 2;
  return {
    from: Math.max(-b.depth / 2, reach(inn * inn + aside) + grown),
    to: Math.min(b.depth / 2, reach(out * out - aside - half * half) - grown),
  };
}

/** What is asked of the tabs on one end: how many, and how wide where that is said. */
export interface TabWish {
  readonly count: number;
  readonly width?: Mm;
}

/** Tabs in a stretch: the outer two at its ends, one alone in its middle; as wide as the gaps between unless said, one alone half as wide
 * as its stretch. None where they do not fit with a wall and the clearance between their slots. */
export function tabsIn(room: Stretch, wish: TabWish, b: RakedBar): readonly Stretch[] | undefined {
  const span = room.to - room.from;
  const { count } = wish;
  const width = wish.width ?? (count === 1 ? span / 2 : span / (2 * count - 1));
  const gap = count === 1 ? 0 : (span - count * width) / (count - 1);
  const least = count === 1 ? 0 : b.wall + b.clearance;
  if (!(width > 0 && width <= span && gap >= least)) return undefined;
  const first = count === 1 ? (room.from + room.to - width) / 2 : room.from;
  return Array.from({ length: count }, (_, i) => {
    const from = first + i * (width + gap);
    return { from, to: from + width };
  });
}

/** The bar's outline at an angle of the ring, u from and to, grown by `by` all round. */
export function barAt(b: RakedBar, angle: Radians, { from, to }: Stretch, by: Mm): Outline {
  const half = b.thickness / 2 + by;
  const radius = Math.PI / 2 + angle;
  return moveOutline(rectangle(from - by, -half, to + by, half), {
    turn: radius + b.rake,
    ...polar(middle(b), radius),
  });
}

/** How near the bar comes to the ring's centre. */
export function barReach(b: RakedBar): Mm {
  const across = Math.max(0, Math.abs(middle(b) * Math.sin(b.rake)) - b.thickness / 2);
  return Math.hypot(Math.max(0, middle(b) * Math.cos(b.rake) - b.depth / 2), across);
}

/** Whether bars at two angles keep this far apart. */
export function barsApart(b: RakedBar, first: Radians, second: Radians, air: Mm): boolean {
  const whole = { from: -b.depth / 2, to: b.depth / 2 };
  const at = (angle: Radians): Region => solid(barAt(b, angle, whole, air / 2));
  return intersection([at(first)], [at(second)]).length === 0;
}

/** Slots of a bar at an angle, anticlockwise, their edges tagged `slot`. */
export const slotsAt = (b: RakedBar, tabs: readonly Stretch[], angle: Radians): Outline[] =>
  tabs.map(tab => withMates(barAt(b, angle, tab, b.clearance / 2), 'slot', [0, 1, 2, 3]));

/** A part with through slots. */
export const withSlots = (part: Part, slots: readonly Outline[]): Part => ({
  ...part,
  region: { ...part.region, openings: [...part.region.openings, ...slots.map(reverse)] },
});

/** Distance from a slot to the line from the centre at an angle; 0 where it crosses it; far where the line runs the other way.
 * @param strip half the width of what lies along the line */
export function fromRay(slot: Outline, angle: Radians, strip: Mm = 0): Mm {
  const along = polar(1, Math.PI / 2 + angle);
  if (slot.some(p => dot(along, p) <= 0)) return Infinity;
  const aside = slot.map(p => cross(along, p));
  return Math.max(0, Math.min(...aside) - strip, -Math.max(...aside) - strip);
}

/** Distance from a point to a slot; 0 inside it. */
export const fromSlot = (slot: Outline, p: Point): Mm =>
  encloses(slot, p) ? 0 : Math.min(...segments(slot).map(s => distanceToSegment(s, p)));
