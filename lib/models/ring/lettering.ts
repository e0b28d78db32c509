import { polar } from '../../geometry/point.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Lettering } from '../lettering.js';
import type { Arc } from '../registration.js';
import type { RingOptions } from '../ring-options.js';

/** Where a piece of a ring is lettered: in the middle of the widest stretch that nothing crosses, between the pins where there are several
 * layers. @param crossed angles of what crosses it, from its middle, ascending   @param wide width of the widest of them, mm */
export function letteringOn(
  o: RingOptions,
  piece: Arc,
  crossed: readonly Radians[],
  wide: Mm,
  pin: Mm | undefined,
): Lettering {
  const cuts = [-piece.sweep / 2, ...crossed.filter(a => Math.abs(a) < piece.sweep / 2), piece.sweep / 2];
  const gaps = cuts.slice(1).map((to, i) => ({ at: (to + cuts[i]!) / 2, width: to - cuts[i]! }));
  const clear = gaps.reduce((w, g) => (g.width > w.width + 1e-9 ? g : w));
  const at = polar((o.inner + o.outer) / 2, Math.PI / 2 + clear.at);
  const length = (pin !== undefined ? 0.45 : 0.8) * (o.inner * clear.width - wide);
  const band = o.outer - o.inner;
  const height = Math.min(12, pin !== undefined ? (0.4 * band - pin) / 2 : band / 6);
  return { at, height, length, turn: Math.atan2(-at.x, at.y) };
}
