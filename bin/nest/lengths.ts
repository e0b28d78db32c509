import { refuse } from '../../lib/findings/unusable.js';
import type { Mm, Unit } from '../../lib/units/length.js';
import { parseLength } from '../../lib/units/parse-length.js';

/** A length as a maker writes it, a bare number in `unit`. @throws Unusable naming the option, unless it is within the range, mm */
export function lengthOf(option: string, text: string, unit: Unit, min: Mm, max: Mm): Mm {
  const parsed = parseLength(text.trim(), unit);
  if (!parsed.ok) return refuse(option, text, parsed.allowed);
  const { value } = parsed;
  return value >= min && value <= max ? value : refuse(option, text, `${min} to ${max} mm`);
}

/** A number without a unit. @throws Unusable unless it is within the range */
export function numberOf(option: string, text: string, min: number, max: number, whole = false): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  const fine = value >= min && value <= max && (!whole || Number.isInteger(value));
  return fine ? value : refuse(option, text, `a ${whole ? 'whole ' : ''}number, ${min} to ${max}`);
}
