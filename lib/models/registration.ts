import type { Point } from '../geometry/point.js';
import { polar } from '../geometry/point.js';
import type { Drill, Filling, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { wrap } from './seams.js';

// Pins hold the layers of a built-up wheel in register while the glue sets. Lengths mm.

/** Dowel pins to choose from, thick to thin. */
export const PIN_SIZES: readonly Mm[] = [8, 6, 5, 4, 3, 2];
/** Wood left between a pin and any edge; common practice, no source. */
export const PIN_WALL: Mm = 2;

/** A stretch of the rim, by angle, from one cut to the next. */
export interface Arc {
  readonly from: Radians;
  readonly sweep: Radians;
}

const TURN = 2 * Math.PI;

/** The stretches of a ring between all cuts that any of its layers has there. */
export function arcsBetween(cuts: readonly Radians[]): Arc[] {
  // told apart by rounding, but kept as they are: pins of a regular ring stay regular
  const places = new Map(cuts.map(c => [Math.round(wrap(c) * 1e9), wrap(c)]));
  const sorted = [...places.values()].sort((a, b) => a - b);
  return sorted.map((from, i) => ({ from, sweep: (sorted[i + 1] ?? sorted[0]! + TURN) - from }));
}

/** The angle in the middle of an arc. */
export const middleOf = (a: Arc): Radians => a.from + a.sweep / 2;

/** Whether an angle lies in an arc. */
export const holds = (arc: Arc, angle: Radians): boolean => wrap(angle - arc.from) < arc.sweep;

/** A pair of pins across the rim's band, in one stretch: `spread` is how far each lies from the middle angle, to either side. */
export interface PinPair {
  readonly angle: Radians;
  readonly spread: Radians;
}

/** Pairs of pins, so that each piece has one of them: in the widest stretch of each piece that has none yet, the shortest pieces first, so
 * that a regular wheel keeps its pins regular; spread to the stretch's ends but for a margin.
 * @param pieces the stretch of the ring each loose piece covers   @param free stretches with no cut in them, wider than two margins */
export function pinPairs(pieces: readonly Arc[], free: readonly Arc[], margin: Radians): PinPair[] {
  const chosen: PinPair[] = [];
  for (const piece of [...pieces].sort((a, b) => a.sweep - b.sweep)) {
    if (chosen.some(p => holds(piece, p.angle))) continue;
    const along = (f: Arc): Radians => wrap(middleOf(f) - piece.from);
    const own = free.filter(f => holds(piece, middleOf(f))).sort((f, g) => along(f) - along(g));
    const widest = own.reduce<Arc | undefined>((w, f) => (w && w.sweep >= f.sweep - 1e-6 ? w : f), undefined);
    if (widest) chosen.push({ angle: middleOf(widest), spread: widest.sweep / 2 - margin });
  }
  return chosen;
}

/** Where the two pins of a pair go on a ring: three tenths of the band from either edge, one to each side. */
export const pinsAt = (inner: Mm, outer: Mm, angle: Radians, spread: Radians): Point[] =>
  [
    { share: 0.3, off: -spread },
    { share: 0.7, off: spread },
  ].map(({ share, off }) => polar(inner + share * (outer - inner), angle + off));

/** A part with through holes for pins, or for what else is seen in them. */
export function pinned(part: Part, at: readonly Point[], diameter: Mm, filled?: Filling): Part {
  const holes = at.map(
    (p): Drill => ({
      kind: 'drill',
      at: p,
      diameter,
      from: 'through',
      depth: part.thickness,
      ...(filled && { filled }),
    }),
  );
  return { ...part, features: [...part.features, ...holes] };
}
