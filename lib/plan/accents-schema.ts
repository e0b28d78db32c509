import * as z from 'zod/mini';
import type { Unit } from '../units/length.js';
import { choice, keys, length, text } from './fields.js';

/** Flat parts laid on a wheel's front for looks. */
export function accents(unit: Unit) {
  const own = { thickness: z.exactOptional(length(unit, 0.2, 300)), stock: text(40) };
  return keys({
    caps: z.exactOptional(keys({ diameter: length(unit, 1, 2000), ...own })),
    ring: z.exactOptional(keys({ outside: length(unit, 1, 6000), inside: length(unit, 0.5, 6000), ...own })),
    name: z.exactOptional(
      keys({
        text: text(40),
        height: z.exactOptional(length(unit, 2, 500)),
        band: z.exactOptional(length(unit, 3, 3000)),
        at: z.exactOptional(choice(['top', 'bottom'])),
        ...own,
      }),
    ),
  });
}
