/** Inside the library a length is millimetres, an angle radians; y points up, anticlockwise is positive. */
export type Mm = number;
export type Radians = number;

/** The unit of a plan's bare numbers. */
export type Unit = 'mm' | 'in';

/** Exact: the yard-and-pound agreement of 1959 makes an inch 25.4 mm, here 127/5 so that one division is the only rounding. */
export const INCH = { over: 127, under: 5 };

/** Inches to mm: the nearest double where `n` x 127 is exact, as it is for every fraction of the shop. */
export const inches = (n: number): Mm => (n * INCH.over) / INCH.under;

/** Mm to inches. */
export const toInches = (length: Mm): number => (length * INCH.under) / INCH.over;

/** A bare number in a plan's unit, to mm. */
export const fromUnit = (n: number, unit: Unit): Mm => (unit === 'in' ? inches(n) : n);

/** Degrees to radians. */
export const degrees = (n: number): Radians => (n * Math.PI) / 180;

/** Radians to degrees. */
export const toDegrees = (angle: Radians): number => (angle * 180) / Math.PI;

/** Mm to a bare number in a unit. */
export const toUnit = (length: Mm, unit: Unit): number => (unit === 'in' ? toInches(length) : length);
