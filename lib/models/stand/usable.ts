import { type Bound, requireBounds, size } from '../bounds.js';
import type { StandOptions } from '../stand-options.js';

const plain = (field: string, value: number | undefined, min: number, max: number, unit: Bound['unit']): Bound => ({
  field,
  value,
  min,
  max,
  unit,
});

/** Every number a stand is made of, with its documented range. */
function bounds(o: StandOptions): Bound[] {
  const { carries, axle, uprights, foot, base, fit } = o;
  return [
    size('carries.diameter', carries.diameter, 10),
    plain('carries.weight', carries.weight, 0.01, 1000, 'kg'),
    size('carries.depth', carries.depth, 1),
    size('axle.height', axle.height, 10),
    size('axle.bore.axle', 'axle' in axle.bore ? axle.bore.axle : undefined, 0.5),
    size('uprights.head', uprights.head, 1),
    size('uprights.thickness', uprights.thickness),
    size('foot.length', foot.length, 1),
    size('foot.width', foot.width, 1),
    size('foot.height', foot.height, 1),
    size('foot.thickness', foot.thickness),
    size('base.thickness', base?.thickness),
    size('clearance', o.clearance, 1, 1000),
    plain('push', o.push, 1, 2000, 'N'),
    plain('ballast', o.ballast, 0, 2000, 'kg'),
    size('fit.slot', fit?.slot, -10, 10),
    size('fit.bore', fit?.bore, -10, 10),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export const requireUsable = (options: StandOptions): void => requireBounds(bounds(options));
