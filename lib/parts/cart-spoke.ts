import { refuse, requireRange } from '../findings/unusable.js';
import { bulgeOf, type Outline, solid, vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A spoke between a nave and a rim, without what goes into either. Lengths mm. */
export interface CartSpokeOptions extends PieceOptions {
  /** radius of the nave's edge, on which its foot sits */
  readonly nave: Mm;
  /** radius of the rim's inner edge, on which its outer end bears */
  readonly rim: Mm;
  /** at the foot, measured between its corners on the nave's edge */
  readonly width: Mm;
  /** width between its corners on the rim's inner edge */
  readonly end: Mm;
}

const half = (width: Mm, radius: Mm): Radians => Math.asin(width / 2 / radius);
const corner = (width: Mm, radius: Mm, side: 1 | -1): Point => ({
  x: Math.sqrt(radius * radius - (width * width) / 4),
  y: (side * width) / 2,
});

/** Both ends follow the circles they bear on, so that a shoulder meets its nave or rim all along. */
function outline(o: CartSpokeOptions): Outline {
  return [
    vertex(corner(o.width, o.nave, -1)),
    vertex(corner(o.end, o.rim, -1), bulgeOf(2 * half(o.end, o.rim)), 'tongue'),
    vertex(corner(o.end, o.rim, 1)),
    vertex(corner(o.width, o.nave, 1), -bulgeOf(2 * half(o.width, o.nave)), 'mortise'),
  ];
}

/** One spoke along +x, wheel centre at the origin: straight sides from the nave's edge to the rim's inner edge; symmetric; grain along it.
 * Its tenon and tongue are the joints' to add (`tenoned`, `tongued`).
 * @throws Unusable naming the option */
export function cartSpoke(o: CartSpokeOptions): Part {
  requireRange('nave', o.nave, 1, 10_000);
  requireRange('rim', o.rim, o.nave + 1, 10_000);
  requireRange('width', o.width, 0.1, 1.99 * o.nave);
  requireRange('end', o.end, 0.1, 1.99 * o.rim);
  if (corner(o.width, o.nave, 1).x >= corner(o.end, o.rim, 1).x)
    refuse('end', `${o.end} mm`, 'narrower, so that its corners lie past those of its foot');
  return piece('spoke', 'Spoke', o, { region: solid(outline(o)) });
}
