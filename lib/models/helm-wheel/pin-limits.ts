import type { Finding } from '../../findings/finding.js';
import { stop } from './limit.js';
import type { HelmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';

/** The two pieces of a built-up spoke have room for two registration pins each; the rim's pieces are the ring's to check. */
export function pinRoom(s: HelmSizes, { inner, handle }: HelmPins): Finding[] {
  if (s.spoke.layers === 1) return [];
  const short = (where: string, value: number, what: string): Finding =>
    stop(
      'registration',
      where,
      value,
      value,
      `the spokes' ${what} pieces have no room for two registration pins; allowed: longer ones, or wider spokes`,
    );
  return [
    ...(inner.length < 2 ? [short('rim.outside', 2 * s.outer, 'inner')] : []),
    ...(handle.length < 2 ? [short('spokes.overall', 2 * s.tip, 'handle')] : []),
  ];
}
