import type { Finding } from '../../findings/finding.js';
import { stop } from './limit.js';
import { helmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';

/** Every loose piece of a built-up wheel has room for two registration pins. */
export function pinRoom(s: HelmSizes): Finding[] {
  const { unpinned, inner, handle } = helmPins(s);
  const band = s.outer - s.inner;
  const rim =
    unpinned > 0
      ? [
          stop(
            'registration',
            'rim.band',
            band,
            band,
            `${unpinned} pieces of the rim have no stretch wide enough for a registration pin; allowed: fewer felloes or spokes, or a larger wheel`,
          ),
        ]
      : [];
  if (s.spoke.layers === 1) return rim;
  const short = (where: string, value: number, what: string): Finding =>
    stop(
      'registration',
      where,
      value,
      value,
      `the spokes' ${what} pieces have no room for two registration pins; allowed: longer ones, or wider spokes`,
    );
  return [
    ...rim,
    ...(inner.length < 2 ? [short('rim.outside', 2 * s.outer, 'inner')] : []),
    ...(handle.length < 2 ? [short('spokes.overall', 2 * s.tip, 'handle')] : []),
  ];
}
