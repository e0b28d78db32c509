import { type Bound, count, requireBounds, size } from '../bounds.js';
import type { HelmWheelOptions } from '../helm-wheel-options.js';
import { seamBounds } from '../seam-bounds.js';

/** Every number a wheel is made of, with its documented range. */
function bounds({ rim, spokes, hub, trim, edges, fit }: HelmWheelOptions): Bound[] {
  return [
    size('rim.outside', rim.outside, 1),
    size('rim.band', rim.band, 0.1, rim.outside / 2 - 0.1),
    count('rim.felloes', rim.felloes, 3, 24),
    count('rim.layers', rim.layers, 1, 24),
    size('rim.thickness', rim.thickness),
    ...seamBounds('rim.seam', rim.seam),
    count('spokes.count', spokes.count, 3, 36),
    size('spokes.width', spokes.width),
    size('spokes.overall', spokes.overall, rim.outside),
    size('spokes.thickness', spokes.thickness),
    size('hub.diameter', hub.diameter, 1),
    size('hub.thickness', hub.thickness),
    size('trim.band', trim?.band),
    count('trim.segments', trim?.segments, 3, 24),
    size('trim.thickness', trim?.thickness),
    size('trim.plugs.diameter', trim?.plugs?.diameter),
    count('trim.plugs.each', trim?.plugs?.each, 1, 100),
    ...(['rim', 'trim', 'hub'] as const).map(part => size(`edges.${part}.radius`, edges?.[part]?.radius)),
    ...(['lap', 'wedge', 'bore', 'plug', 'seam'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 10)),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export const requireUsable = (options: HelmWheelOptions): void => requireBounds(bounds(options));
