import type { Issue } from '../findings/unusable.js';

/** Where a value stands in a plan: keys and places in lists from the top. */
export type Path = readonly (string | number)[];

/** A path as it is said: `spokes.handle.profile[1][0]`; the top is `plan`. */
export const fieldName = (path: Path): string =>
  path.map((step, i) => (typeof step === 'number' ? `[${step}]` : `${i > 0 ? '.' : ''}${show(step)}`)).join('') ||
  'plan';

const LONGEST = 60;

/** Text from outside made fit for a message: one line, no control characters, at most 60 characters. */
export function show(text: string): string {
  const line = text
    .replace(/\s+/g, ' ')
    .replace(/[\p{Cc}\p{Cs}\u2028\u2029]/gu, c => `\\u${(c.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`)
    .trim();
  if (line === '') return 'empty';
  return line.length <= LONGEST ? line : `${line.slice(0, LONGEST - 3)}...`;
}

/** A plan as plain data, with what was written for each field. */
export interface Written {
  readonly value: unknown;
  /** text of the field as the maker wrote it, by field name */
  readonly fields: ReadonlyMap<string, string>;
  readonly issues: readonly Issue[];
}
