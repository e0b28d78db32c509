import type * as z from 'zod/mini';
import { fromUnit, type Unit } from '../units/length.js';
import { parseLength } from '../units/parse-length.js';
import { isLength } from './fields.js';

type Schema = z.core.$ZodType;
type Plain = Readonly<Record<string, unknown>>;

/** What a schema is made of, as far as lengths may lie in it. */
interface Def {
  readonly type: string;
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly innerType?: Schema;
  readonly element?: Schema;
  readonly items?: readonly Schema[];
  readonly valueType?: Schema;
  readonly options?: readonly Schema[];
  readonly in?: Schema;
}

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const mapValues = (value: Plain, each: (key: string, item: unknown) => unknown): Plain =>
  Object.fromEntries(Object.entries(value).map(([key, item]) => [key, each(key, item)]));

/** A length as it is written with a unit of its own; what is no length as it is. */
function stated(written: unknown, unit: Unit): unknown {
  if (typeof written === 'number') return `${fromUnit(written, unit)}mm`;
  const parsed = typeof written === 'string' ? parseLength(written, unit) : undefined;
  return parsed?.ok ? `${parsed.value}mm` : written;
}

/** Values with every length that a schema takes written in mm, so that it stays what it is where bare numbers are in another unit.
 * What the schema does not take is left as it is. */
export function statedLengths(schema: Schema, value: unknown, unit: Unit): unknown {
  if (isLength(schema)) return stated(value, unit);
  const def = schema._zod.def as Def;
  if (def.shape && isPlain(value)) {
    const shape = def.shape;
    return mapValues(value, (key, item) => (shape[key] ? statedLengths(shape[key], item, unit) : item));
  }
  if (def.valueType && isPlain(value)) {
    const each = def.valueType;
    return mapValues(value, (_, item) => statedLengths(each, item, unit));
  }
  if (Array.isArray(value) && (def.element || def.items))
    return value.map((item, i) => {
      const each = def.element ?? def.items?.[i];
      return each ? statedLengths(each, item, unit) : item;
    });
  if (def.options) return def.options.reduce((v: unknown, option) => statedLengths(option, v, unit), value);
  const inner = def.innerType ?? def.in;
  return inner ? statedLengths(inner, value, unit) : value;
}
