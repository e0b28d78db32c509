import { degrees } from '../../units/length.js';
import { angle, type Bound, count, requireBounds, size } from '../bounds.js';
import type { WaterWheelOptions } from '../water-wheel-options.js';

/** Steepest rake; common practice, no source: past it a slot crosses more of the band than it leaves. */
export const STEEPEST = degrees(45);

/** Every number a wheel is made of, with its documented range. */
function bounds({ rim, paddles, spokes, hub, axle, fit }: WaterWheelOptions): Bound[] {
  return [
    size('rim.outside', rim.outside, 20),
    size('rim.band', rim.band, 1, rim.outside / 2 - 1),
    count('rim.felloes', rim.felloes, 3, 24),
    count('rim.layers', rim.layers, 1, 24),
    size('rim.thickness', rim.thickness),
    count('paddles.count', paddles.count, 3, 60),
    angle('paddles.rake', paddles.rake, -STEEPEST, STEEPEST),
    size('paddles.depth', paddles.depth, 1),
    count('paddles.tabs.count', paddles.tabs?.count, 1, 3),
    size('paddles.tabs.width', paddles.tabs?.width),
    size('paddles.thickness', paddles.thickness),
    count('spokes.count', spokes.count, 3, 24),
    size('spokes.width', spokes.width, 1, 1000),
    size('spokes.thickness', spokes.thickness),
    size('hub.diameter', hub.diameter, 1),
    size('hub.bore.axle', typeof hub.bore === 'object' ? hub.bore.axle : undefined),
    size('hub.thickness', hub.thickness),
    size('axle.length', axle.length, 1),
    ...(['slot', 'wedge', 'bore', 'seam'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 10)),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export const requireUsable = (options: WaterWheelOptions): void => requireBounds(bounds(options));
