import { angle, type Bound, count, requireBounds, size } from '../bounds.js';
import type { CartWheelOptions } from '../cart-wheel-options.js';
import { seamBounds } from '../seam-bounds.js';

const TAU = 2 * Math.PI;

function rimBounds({ rim }: CartWheelOptions): Bound[] {
  return [
    size('rim.outside', rim.outside, 1),
    size('rim.band', rim.band, 0.1, rim.outside / 2 - 0.1),
    count('rim.felloes', rim.felloes, 3, 36),
    count('rim.layers', rim.layers, 1, 24),
    size('rim.thickness', rim.thickness),
  ];
}

function seamAt({ rim: { seam } }: CartWheelOptions): Bound[] {
  const at = typeof seam?.at === 'object' ? seam.at.angle : undefined;
  return [...seamBounds('rim.seam', seam), angle('rim.seam.at', at, -TAU, TAU)];
}

function spokeBounds({ spokes }: CartWheelOptions): Bound[] {
  return [
    count('spokes.count', spokes.count, 3, 36),
    size('spokes.width', spokes.width),
    size('spokes.taper', spokes.taper, 0, spokes.width - 0.1),
    size('spokes.thickness', spokes.thickness),
    size('spokes.tenon.width', spokes.tenon?.width),
    size('spokes.tenon.length', spokes.tenon?.length),
    size('spokes.tongue.width', spokes.tongue?.width),
    size('spokes.tongue.length', spokes.tongue?.length),
    size('spokes.tongue.thickness', spokes.tongue?.thickness),
  ];
}

function middleBounds({ nave, cap, tyre }: CartWheelOptions): Bound[] {
  const { bore } = nave;
  const strip = tyre === 'none' ? undefined : tyre;
  return [
    size('nave.diameter', nave.diameter, 1),
    size('nave.length', nave.length),
    size('nave.bore.axle', typeof bore === 'object' && 'axle' in bore ? bore.axle : undefined),
    size('cap.diameter', cap?.diameter, 1),
    size('cap.thickness', cap?.thickness),
    size('tyre.thickness', strip?.thickness, 0.01, 100),
    size('tyre.width', strip?.width),
  ];
}

function otherBounds({ edges, fit }: CartWheelOptions): Bound[] {
  return [
    ...(['rim', 'spokes', 'nave', 'cap'] as const).map(part => size(`edges.${part}.radius`, edges?.[part]?.radius)),
    ...(['mortise', 'tongue', 'seam', 'bore'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 10)),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export const requireUsable = (options: CartWheelOptions): void =>
  requireBounds([rimBounds, seamAt, spokeBounds, middleBounds, otherBounds].flatMap(bounds => bounds(options)));
