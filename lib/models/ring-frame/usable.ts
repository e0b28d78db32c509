import { degrees } from '../../units/length.js';
import { angle, type Bound, count, requireBounds, size } from '../bounds.js';
import type { RingFrameOptions } from '../ring-frame-options.js';
import { seamBounds } from '../seam-bounds.js';

/** The smallest arc that is still told from a board. */
export const LEAST_SWEEP = degrees(5);

/** Every number a ring frame is made of, with its documented range. */
function bounds({ ring, rebate, mullions, legs, edges, fit }: RingFrameOptions): Bound[] {
  return [
    size('ring.outside', ring.outside, 20),
    size('ring.band', ring.band, 1, ring.outside / 2 - 1),
    angle('ring.sweep', ring.sweep, LEAST_SWEEP, 2 * Math.PI),
    count('ring.segments', ring.segments, 1, 24),
    count('ring.layers', ring.layers, 1, 24),
    size('ring.thickness', ring.thickness),
    ...seamBounds('ring.seam', ring.seam),
    size('rebate.width', rebate?.width),
    size('rebate.depth', rebate?.depth),
    count('mullions.upright', mullions?.upright, 0, 5),
    count('mullions.level', mullions?.level, 0, 5),
    size('mullions.width', mullions?.width, 1, 1000),
    size('mullions.thickness', mullions?.thickness),
    size('legs.height', legs?.height, 1),
    size('edges.ring.radius', edges?.ring?.radius),
    ...(['lap', 'pane', 'seam', 'mullion'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 50)),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export const requireUsable = (options: RingFrameOptions): void => requireBounds(bounds(options));
