import { requireRange } from '../findings/unusable.js';
import { bulgeOf, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import type { PieceOptions } from './piece.js';
import { spoke, type WedgeOptions } from './spoke.js';

export interface LaidSpokeOptions extends WedgeOptions, PieceOptions {
  /** x at which the wedge is cut back flat, mm from the wheel's centre: past its apex, short of its corner */
  readonly flat: Mm;
  /** radii of the rim it is laid on; its outer end follows the rim's edge */
  readonly inner: Mm;
  readonly outer: Mm;
}

/** A spoke laid on a rim's face, along +x from the wheel's centre: wedge, straight shaft, an end round with the rim. Grain along it.
 * @throws Unusable naming the option. */
export function laidSpoke(o: LaidSpokeOptions): Part {
  const half = o.width / 2;
  requireRange('outer', o.outer, half + 0.1, 10_000);
  const end = bulgeOf(-Math.asin(half / o.outer));
  const corner = Math.sqrt(o.outer * o.outer - half * half);
  return spoke({
    ...o,
    rim: o.inner,
    handle: [
      vertex({ x: 0, y: half }),
      vertex({ x: corner - o.inner, y: half }, end),
      vertex({ x: o.outer - o.inner, y: 0 }),
    ],
  });
}
