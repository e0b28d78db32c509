import * as z from 'zod/mini';
import type { BoreOptions } from '../models/helm-wheel-options.js';
import { bearings } from '../stock/bearings.js';
import type { Unit } from '../units/length.js';
import { choice, keys, length, named } from './fields.js';

/** A hole in the middle: for an axle, or for a bearing by its name. */
export type Hole = Exclude<BoreOptions, 'none'>;

/** A plan's hole in the middle: `{ axle }` or `{ bearing, seat }`. @param error what is allowed, in words */
export function hole(unit: Unit, error = '{ axle: 15mm } or { bearing: "6202", seat: shoulder }') {
  const shape = {
    axle: z.exactOptional(length(unit, 1, 300)),
    bearing: z.exactOptional(named(bearings.map(b => b.name))),
    seat: z.exactOptional(choice(['through', 'shoulder'])),
  };
  const either = keys(shape, error);
  const toHole = z.transform((written: z.output<typeof either>, context): Hole => {
    const { axle, bearing, seat } = written;
    if (axle !== undefined && bearing === undefined && seat === undefined) return { axle };
    if (bearing !== undefined && axle === undefined) return { bearing, ...(seat && { seat }) };
    context.issues.push({ code: 'custom', message: error, input: written });
    return z.NEVER;
  });
  return z.pipe(either, toHole);
}
