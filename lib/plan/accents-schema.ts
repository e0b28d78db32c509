import * as z from 'zod/mini';
import { withoutStrokes } from '../parts/lettering/lettering.js';
import type { Unit } from '../units/length.js';
import { choice, keys, length, text } from './fields.js';
import { stockName, thickness } from './prop-fields.js';

/** A name in letters there are strokes for; others are never changed without a word. */
function name() {
  const error =
    'one line, 1 to 40 characters, each a Latin letter with or without an accent, a digit, a fraction, punctuation, a sign or an arrow; any other lettering by a script';
  const lettered = (t: string): boolean => withoutStrokes(t).length === 0;
  return text(40).check(z.refine(lettered, { error }));
}

/** Flat parts laid on a wheel's front for looks. */
export function accents(unit: Unit) {
  const own = { thickness: thickness(unit), stock: stockName() };
  return keys({
    caps: z.exactOptional(keys({ diameter: length(unit, 1, 2000), ...own })),
    ring: z.exactOptional(keys({ outside: length(unit, 1, 6000), inside: length(unit, 0.5, 6000), ...own })),
    name: z.exactOptional(
      keys({
        text: name(),
        height: z.exactOptional(length(unit, 2, 500)),
        band: z.exactOptional(length(unit, 3, 3000)),
        at: z.exactOptional(choice(['top', 'bottom'])),
        ...own,
      }),
    ),
  });
}
