import type { Outline } from '../geometry/outline.js';
import { cross, dot, type Point, polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import { fromSlot } from './raked-slot.js';

// Screws that hold a bar laid across a ring. The bar along +x from the ring's centre; lengths mm, angles from +x.

export interface LaidBar {
  /** the ring's radii */
  readonly inner: Mm;
  readonly outer: Mm;
  /** of the bar */
  readonly width: Mm;
  /** of a screw */
  readonly diameter: Mm;
  /** what the screws must keep clear of in the ring under it */
  readonly seams: readonly Radians[];
  readonly slots: readonly Outline[];
}

/** From a screw's middle to any edge, in screw diameters: edge distance of wood screws, NDS commentary (from memory). */
export const SCREW_EDGE = 2.5;

function clear(bar: LaidBar, p: Point): boolean {
  const room = SCREW_EDGE * bar.diameter;
  const radius = Math.hypot(p.x, p.y);
  if (bar.width / 2 - Math.abs(p.y) < room - 1e-9) return false;
  if (radius - bar.inner < room || bar.outer - radius < room) return false;
  const offSeam = bar.seams.every(a => {
    const along = polar(1, a);
    return dot(along, p) < 0 || Math.abs(cross(along, p)) >= room;
  });
  return offSeam && bar.slots.every(slot => fromSlot(slot, p) >= room);
}

/** Shares of the band, and of the bar's width off its middle, in the order they are tried. */
const INNER = [0.25, 0.3, 0.2, 0.35, 0.4];
const ASIDE = [0.25, -0.25, 0.2, -0.2, 0.15, -0.15, 0.1, -0.1, 0];

function first(bar: LaidBar, shares: readonly number[], asides: readonly number[]): Point | undefined {
  const band = bar.outer - bar.inner;
  for (const share of shares)
    for (const aside of asides) {
      const p = { x: bar.inner + share * band, y: aside * bar.width };
      if (clear(bar, p)) return p;
    }
  return undefined;
}

/** Two screws across a bar, diagonally, each clear of edges, seams and slots; one, or none, where there is no more room. */
export function laidScrews(bar: LaidBar): Point[] {
  const inner = first(bar, INNER, ASIDE);
  const outer = first(
    bar,
    INNER.map(share => 1 - share),
    ASIDE.map(aside => -aside),
  );
  if (inner && outer) return [inner, outer];
  const one = inner ?? outer ?? first(bar, [0.5], ASIDE);
  return one ? [one] : [];
}
