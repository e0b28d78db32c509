import * as z from 'zod/mini';
import { GLYPHS } from '../drawings/alphabet.js';
import type { Unit } from '../units/length.js';
import { choice, keys, length, text } from './fields.js';
import { stockName, thickness } from './prop-fields.js';

/** Marks the alphabet has beside letters and digits. */
const MARKS = Object.keys(GLYPHS)
  .filter(c => !/[A-Z0-9 ]/.test(c))
  .join(' ');

/** A name in letters there are strokes for; others are never changed without a word. */
function name() {
  const error = `one line, 1 to 40 characters, each of A to Z, a to z (cut as capitals), 0 to 9, space or ${MARKS}; any other lettering by a script`;
  const lettered = (t: string): boolean => [...t].every(c => c === ' ' || c.toUpperCase() in GLYPHS);
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
