import { requireRange } from '../findings/unusable.js';
import { circle, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

export interface CapOptions extends PieceOptions {
  /** mm, 1 to 2000 */
  readonly diameter: Mm;
}

/** A round accent laid on a face, over a crossing or a screw; its middle at the origin. @throws Unusable naming the option */
export function cap(o: CapOptions): Part {
  requireRange('diameter', o.diameter, 1, 2000);
  return piece('cap', 'Cap', o, { region: solid(circle(o.diameter / 2)) });
}
