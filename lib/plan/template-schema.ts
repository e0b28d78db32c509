import * as z from 'zod/mini';
import type { Unit } from '../units/length.js';
import { keys } from './fields.js';
import { stockName } from './prop-fields.js';
import { laser, router } from './stock-schema.js';

/** Templates of thin board for parts worked by hand. */
export const template = (unit: Unit) =>
  keys({
    stock: stockName(),
    cutter: z.discriminatedUnion('kind', [router(unit), laser(unit)], {
      error: 'router (with diameter, reach, pass) or laser (with kerf)',
    }),
  });
