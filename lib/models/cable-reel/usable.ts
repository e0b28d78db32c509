import { type Bound, count, requireBounds, size } from '../bounds.js';
import type { CableReelOptions } from '../cable-reel-options.js';

/** Every number a reel is made of, with its documented range. */
function bounds({ flange, battens, core, rods, bore, fit }: CableReelOptions): Bound[] {
  const segments = flange.build === 'segments';
  return [
    size('flange.diameter', flange.diameter, 20),
    count('flange.pieces', flange.pieces, segments ? 3 : 2, 24),
    count('flange.layers', flange.layers, 1, 24),
    size('flange.thickness', flange.thickness),
    count('battens.count', battens?.count, 2, 6),
    size('battens.width', battens?.width, 1),
    size('battens.thickness', battens?.thickness),
    size('core.diameter', core.diameter, 5),
    count('core.staves', core.staves, 4, 48),
    size('core.length', core.length, 1),
    size('core.thickness', core.thickness),
    count('rods.count', rods.count, 2, 16),
    size('rods.diameter', rods.diameter),
    size('bore.axle', typeof bore === 'object' ? bore.axle : undefined),
    ...(['bore', 'rod', 'seam'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 10)),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export const requireUsable = (options: CableReelOptions): void => requireBounds(bounds(options));
