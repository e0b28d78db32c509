import * as z from 'zod/mini';
import { allowedNames } from '../findings/nearest.js';
import { degrees, fromUnit, type Mm, type Radians, toDegrees, toInches, type Unit } from '../units/length.js';
import { ANGLE_FORMS, parseAngle } from '../units/parse-angle.js';
import { LENGTH_FORMS, parseLength } from '../units/parse-length.js';

/** What each field allows, in words; also the description in the plan's JSON Schema. The message of every issue of a schema below is this. */
export const notes = z.registry<{ description: string }>();

const noted = <T extends z.core.$ZodType>(schema: T, description: string): T => {
  notes.add(schema, { description } as never);
  return schema;
};

const lengths = new WeakSet<z.core.$ZodType>();

/** Whether a schema is one that `length` made. */
export const isLength = (schema: z.core.$ZodType): boolean => lengths.has(schema);

/** A range as the maker of a plan in `unit` reads it, rounded inwards: `10 to 6000 mm`, `0.394 to 236.22 in (10 to 6000 mm)`. */
export function rangeText(min: Mm, max: Mm, unit: Unit): string {
  const metric = `${min} to ${max} mm`;
  if (unit === 'mm') return metric;
  return `${Math.ceil(toInches(min) * 1000) / 1000} to ${Math.floor(toInches(max) * 1000) / 1000} in (${metric})`;
}

/** A length: a number in `unit`, or text with or without its own; becomes mm. @param min @param max mm, allowed themselves */
export function length(unit: Unit, min: Mm, max: Mm) {
  const range = rangeText(min, max, unit);
  const allowed = `${LENGTH_FORMS}; ${range}`;
  const toMm = z.transform((written: number | string, context): Mm => {
    const parsed =
      typeof written === 'number' ? { ok: true as const, value: fromUnit(written, unit) } : parseLength(written, unit);
    if (parsed.ok && parsed.value >= min && parsed.value <= max) return parsed.value;
    context.issues.push({ code: 'custom', message: parsed.ok ? range : allowed, input: written });
    return z.NEVER;
  });
  const schema = noted(z.pipe(z.union([z.number(), z.string()], { error: allowed }), toMm), allowed);
  lengths.add(schema);
  return schema;
}

/** A word of a list. */
export function choice<const T extends readonly [string, ...string[]]>(words: T) {
  const list = words.join(', ');
  const error = ({ input }: { readonly input?: unknown }): string =>
    typeof input === 'string' ? allowedNames(input, words) : list;
  return noted(z.enum(words, { error }), list);
}

/** A name of a reference table, given as text or as a number: `"6202"`, 6202. */
export function named(words: readonly string[]) {
  const list = words.join(', ');
  const known = z.transform((written: number | string, context): string => {
    if (words.includes(`${written}`)) return `${written}`;
    context.issues.push({ code: 'custom', message: allowedNames(`${written}`, words), input: written });
    return z.NEVER;
  });
  return noted(z.pipe(z.union([z.string(), z.number()], { error: list }), known), list);
}

/** A whole number. @param min @param max allowed themselves */
export function whole(min: number, max: number) {
  const error = `a whole number, ${min} to ${max}`;
  return noted(z.int({ error }).check(z.gte(min, { error }), z.lte(max, { error })), error);
}

/** A number without a unit. @param min @param max allowed themselves */
export function amount(min: number, max: number) {
  const error = `a number, ${min} to ${max}`;
  return noted(z.number({ error }).check(z.gte(min, { error }), z.lte(max, { error })), error);
}

/** One line of text without control characters. @param longest characters */
export function text(longest: number) {
  const error = `one line of text, 1 to ${longest} characters, in quotes if it looks like a number`;
  const fit = (t: string): boolean =>
    t.trim() !== '' && t.length <= longest && !/[\p{Cc}\p{Cs}\p{Bidi_Control}\u2028\u2029\ufffe\uffff]/u.test(t);
  return noted(z.string({ error }).check(z.refine(fit, { error })), error);
}

/** An angle: text such as `18deg`; becomes radians. @param min @param max radians, allowed themselves */
export function angle(min: Radians, max: Radians) {
  const allowed = `${ANGLE_FORMS}; ${Number(toDegrees(min).toFixed(6))}deg to ${Number(toDegrees(max).toFixed(6))}deg`;
  const toRadians = z.transform((written: string, context): Radians => {
    const parsed = parseAngle(written);
    if (parsed.ok && parsed.value >= min && parsed.value <= max) return parsed.value;
    context.issues.push({ code: 'custom', message: allowed, input: written });
    return z.NEVER;
  });
  return noted(z.pipe(z.string({ error: allowed }), toRadians), allowed);
}

/** Where the first seam lies: a word, or an angle from a spoke's centre line, 0deg to 360deg; the angle becomes radians. */
export function seamPlace() {
  const allowed = `between-spokes, under-spokes, or ${ANGLE_FORMS}; 0deg to 360deg`;
  const toPlace = z.transform((written: string, context) => {
    if (written === 'between-spokes' || written === 'under-spokes') return written;
    const parsed = parseAngle(written);
    if (parsed.ok && parsed.value >= 0 && parsed.value <= degrees(360)) return { angle: parsed.value };
    context.issues.push({ code: 'custom', message: allowed, input: written });
    return z.NEVER;
  });
  return noted(z.pipe(z.string({ error: allowed }), toPlace), allowed);
}

/** Keys and values: every key known, the others refused with the list of those there are. The message of an unknown key is that list.
 * @param otherwise what is allowed where something else than keys is written; the list too unless given */
export function keys<T extends z.core.$ZodShape>(shape: T, otherwise?: string) {
  const list = Object.keys(shape).join(', ');
  return z.strictObject(shape, { error: ({ code }) => (code === 'unrecognized_keys' ? list : (otherwise ?? list)) });
}
