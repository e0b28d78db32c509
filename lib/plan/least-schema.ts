import * as z from 'zod/mini';
import type { Unit } from '../units/length.js';
import { keys, length } from './fields.js';

/** The thinnest wall after cutting, and the side of the square below whose area a part is too small to hold. */
export const least = (unit: Unit) =>
  keys({ wall: z.exactOptional(length(unit, 0, 50)), part: z.exactOptional(length(unit, 0, 500)) });
