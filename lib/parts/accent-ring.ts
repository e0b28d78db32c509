import { requireRange } from '../findings/unusable.js';
import { circle, reverse } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

export interface AccentRingOptions extends PieceOptions {
  /** diameters, mm: above 1, and below the outside one */
  readonly outside: Mm;
  readonly inside: Mm;
}

/** A ring laid on a face, in one piece, round a hub's bore; its middle at the origin. @throws Unusable naming the option */
export function accentRing(o: AccentRingOptions): Part {
  requireRange('outside', o.outside, 1, 20_000);
  requireRange('inside', o.inside, 0.5, o.outside - 0.5);
  const region = { outer: circle(o.outside / 2), openings: [reverse(circle(o.inside / 2))] };
  return piece('accent-ring', 'Accent ring', o, { region });
}
