import { requireRange } from '../findings/unusable.js';
import { intersection } from '../geometry/boolean.js';
import { withMates } from '../geometry/mates.js';
import { circle, rectangle, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

export interface MullionOptions extends PieceOptions {
  readonly width: Mm;
  /** radius its ends are cut to, about the ring's centre */
  readonly reach: Mm;
  /** of its middle line from the ring's centre, mm, 0 or more */
  readonly off: Mm;
}

/** Length of a bar between arcs of a radius about a point beside it, over its longer edge: 2 sqrt(R² - (off - w / 2)²), over its middle
 * where that is longest. Source: chord of a circle, Machinery's Handbook, "segments of circles". */
export function mullionLength({ width, reach, off }: Pick<MullionOptions, 'width' | 'reach' | 'off'>): Mm {
  const nearest = Math.max(0, off - width / 2);
  return 2 * Math.sqrt(reach * reach - nearest * nearest);
}

/** A bar across a ring: along x, its middle line on y = 0, the ring's centre at (0, -off); its ends follow the ring and are tagged
 * `mullion`. Grain along it. @throws Unusable naming the option */
export function mullion(o: MullionOptions): Part {
  requireRange('mullion reach', o.reach, 0.1, 10_000);
  requireRange('mullion offset', o.off, 0, o.reach - o.width / 2);
  const disc = withMates(circle(o.reach, { x: 0, y: -o.off }), 'mullion', [0, 1]);
  const strip = rectangle(-2 * o.reach, -o.width / 2, 2 * o.reach, o.width / 2);
  const [region] = intersection([solid(strip)], [solid(disc)]);
  return piece('mullion', 'Mullion', o, { region: region! });
}
