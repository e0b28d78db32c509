import { requireRange } from '../findings/unusable.js';
import { polygon, rectangle, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A plain board that ties a stand together or lies under it: a cross rail, a shelf, a base plate. Lengths mm. */
export interface StandRailOptions extends PieceOptions {
  /** rail unless given */
  readonly kind?: 'rail' | 'shelf' | 'base-plate';
  /** along x */
  readonly length: Mm;
  /** along y */
  readonly width: Mm;
}

/** A rectangle about the origin, grain along its length. @throws Unusable naming the option */
export function standRail(o: StandRailOptions): Part {
  requireRange('length', o.length, 1, 20_000);
  requireRange('width', o.width, 1, 20_000);
  const region = solid(rectangle(-o.length / 2, -o.width / 2, o.length / 2, o.width / 2));
  return piece(o.kind ?? 'rail', 'Rail', o, { region });
}

/** A rib behind a post. Lengths mm. */
export interface RibOptions extends PieceOptions {
  readonly height: Mm;
  /** at its lower end, and at its upper one */
  readonly bottom: Mm;
  readonly top: Mm;
}

/** A rib as it is drawn to be stood up and turned a quarter: x up from its lower end, y = 0 against the post, back to negative y; grain
 * upright. @throws Unusable naming the option */
export function rib(o: RibOptions): Part {
  requireRange('height', o.height, 1, 20_000);
  requireRange('bottom', o.bottom, 1, 20_000);
  requireRange('top', o.top, 1, o.bottom);
  const corners = [
    { x: 0, y: -o.bottom },
    { x: o.height, y: -o.top },
    { x: o.height, y: 0 },
    { x: 0, y: 0 },
  ];
  return piece('rib', 'Rib', o, { region: solid(polygon(corners)) });
}
