import { type Issue, Unusable } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';

/** Largest size of anything in a prop, mm. */
const LARGEST: Mm = 20_000;

/** A number of a model's options and its documented range; a value left out is in it. */
export interface Bound {
  readonly field: string;
  readonly value: number | undefined;
  readonly min: number;
  readonly max: number;
  /** what the range is in; mm for a length */
  readonly unit: 'mm' | 'rad' | 'whole' | 'kg' | 'N';
}

/** A length. */
export const size = (field: string, value: Mm | undefined, min: Mm = 0.1, max: Mm = LARGEST): Bound => ({
  field,
  value,
  min,
  max,
  unit: 'mm',
});

/** A whole number of things. */
export const count = (field: string, value: number | undefined, min: number, max: number): Bound => ({
  field,
  value,
  min,
  max,
  unit: 'whole',
});

/** An angle, radians. */
export const angle = (field: string, value: number | undefined, min: number, max: number): Bound => ({
  field,
  value,
  min,
  max,
  unit: 'rad',
});

function issue({ field, value, min, max, unit }: Bound): Issue[] {
  if (value === undefined) return [];
  if (value >= min && value <= max && (unit !== 'whole' || Number.isInteger(value))) return [];
  const range = Number.isFinite(max) ? `${min} to ${max}` : `${min} or more`;
  return [{ field, value: `${value}`, allowed: unit === 'whole' ? `a whole number, ${range}` : `${range} ${unit}` }];
}

/** Refuses numbers out of their documented ranges, NaN among them, all at once. @throws Unusable */
export function requireBounds(bounds: readonly Bound[]): void {
  const issues = bounds.flatMap(issue);
  if (issues.length > 0) throw new Unusable(issues);
}
