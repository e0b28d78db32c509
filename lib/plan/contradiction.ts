import { type Mm, toInches, type Unit } from '../units/length.js';
import { printInches, printMm } from '../units/print-length.js';

/** Two fields that cannot both hold: the one to change, its value, and what the others leave. */
export interface Contradiction {
  readonly field: string;
  readonly value: string;
  readonly allowed: string;
}

/** A length as the maker of the plan reads it: whole 64ths of an inch where it is, thousandths where it is not. */
export function say(length: Mm, unit: Unit): string {
  if (unit === 'mm') return printMm(length);
  const inches = toInches(length);
  const exact = Math.abs(inches * 64 - Math.round(inches * 64)) < 1e-9;
  return `${exact ? printInches(length) : `${Math.round(inches * 1000) / 1000} in`} (${printMm(length)})`;
}

/** The contradiction of a field unless something holds. */
export const unless = (holds: boolean, field: string, value: string, allowed: string): readonly Contradiction[] =>
  holds ? [] : [{ field, value, allowed }];
