import type { Mm, Unit } from '../units/length.js';
import { parseLength } from '../units/parse-length.js';
import { refuse } from './unusable.js';

/** Reads a length in mm from text such as `4-1/4in`; a number without a unit is in `unit`. @throws Unusable naming field, text and what is allowed. */
export function requireLength(field: string, text: string, unit: Unit): Mm {
  const parsed = parseLength(text, unit);
  return parsed.ok ? parsed.value : refuse(field, text, parsed.allowed);
}
