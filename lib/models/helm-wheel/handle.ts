import type { HandleOptions } from '../../parts/handle.js';
import type { Mm } from '../../units/length.js';
import type { HelmSizes } from './sizes.js';

/** A handle stays straight past the shoulder of its lap by this much; common practice, no source. */
const COLLAR: Mm = 1;

/** Two sides can be shaped where the spoke is one solid piece that can be turned. */
export const shapedTwice = (s: HelmSizes): boolean =>
  s.handle.faces === 2 && s.spoke.layers === 1 && s.method !== 'laser';

/** Sizes of the handle past the rim, seen on the face (half the width) or on the second side (half the thickness). */
export function handleOptions(s: HelmSizes, half: Mm = s.width / 2): HandleOptions {
  const share = half / (s.width / 2);
  const { profile, shape } = s.handle;
  return {
    length: s.tip - s.outer,
    half,
    collar: Math.max(0, s.fit.lap / 2) + COLLAR,
    ...(profile ? { profile: profile.map(([x, y]): [Mm, Mm] => [x, y * share]) } : { shape }),
  };
}
