import * as z from 'zod/mini';
import { PROP_KINDS } from '../parts/part.js';
import { keys, text, whole } from './fields.js';

function color() {
  const error = 'a colour such as "#5b3a1e", in quotes: # and six digits of base 16';
  return z.string({ error }).check(z.refine(c => /^#[0-9a-f]{6}$/i.test(c), { error }));
}

const finish = () =>
  z.exactOptional(keys({ name: text(60), color: z.exactOptional(color()), coats: z.exactOptional(whole(1, 20)) }));

/** What parts are finished with, by kind. */
export const finishes = () =>
  keys(
    Object.fromEntries(PROP_KINDS.map(kind => [kind, finish()])) as Record<
      (typeof PROP_KINDS)[number],
      ReturnType<typeof finish>
    >,
  );
