import * as z from 'zod/mini';
import type { AxleBore } from '../models/axle.js';
import type { Unit } from '../units/length.js';
import { keys, length } from './fields.js';

/** A plan's `bore` for an axle: `none` or `{ axle: 15mm }`. */
export function axleBore(unit: Unit) {
  const error = 'none or { axle: 15mm }';
  const hole = keys({ axle: length(unit, 1, 300) });
  const toBore = z.transform((written: z.output<typeof hole>): AxleBore => written);
  return z.union([z.literal('none'), z.pipe(hole, toBore)], { error });
}
