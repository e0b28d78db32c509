import { type Issue, Unusable } from '../../findings/unusable.js';
import type { HelmWheelOptions } from '../helm-wheel-options.js';

/** Largest size of anything in a wheel, mm. */
const LARGEST = 20_000;

interface Bound {
  readonly field: string;
  readonly value: number | undefined;
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
}

const size = (field: string, value: number | undefined, min = 0.1, max = LARGEST): Bound => ({
  field,
  value,
  min,
  max,
});
const count = (field: string, value: number | undefined, min: number, max: number): Bound => ({
  field,
  value,
  min,
  max,
  whole: true,
});

/** Every number a wheel is made of, with its documented range. */
function bounds({ rim, spokes, hub, trim, edges, fit }: HelmWheelOptions): Bound[] {
  return [
    size('rim.outside', rim.outside, 1),
    size('rim.band', rim.band, 0.1, rim.outside / 2 - 0.1),
    count('rim.felloes', rim.felloes, 3, 24),
    count('rim.layers', rim.layers, 1, 24),
    size('rim.thickness', rim.thickness),
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
    ...(['lap', 'wedge', 'bore', 'plug'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 10)),
  ];
}

function issue({ field, value, min, max, whole }: Bound): Issue[] {
  if (value === undefined) return [];
  if (value >= min && value <= max && (!whole || Number.isInteger(value))) return [];
  const range = Number.isFinite(max) ? `${min} to ${max}` : `${min} or more`;
  return [{ field, value: `${value}`, allowed: whole ? `a whole number, ${range}` : `${range} mm` }];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once. @throws Unusable */
export function requireUsable(options: HelmWheelOptions): void {
  const issues = bounds(options).flatMap(issue);
  if (issues.length > 0) throw new Unusable(issues);
}
