import { type Mm, type Radians, toDegrees, toInches, type Unit } from './length.js';

/** Fewest digits: no trailing zeros, no "-0". */
function plain(n: number, decimals: number): string {
  const text = n.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** A length as millimetres: `107.95 mm`. @param decimals at most, 0 to 9; trailing zeros are left off. `parseLength` reads it back. */
export const printMm = (length: Mm, decimals = 2): string => `${plain(length, decimals)} mm`;

/** The finest mark of a shop's rule. */
const SIXTY_FOURTHS = 64;
/** Decimals of a remainder: 0.0001 in is 0.00254 mm; what rounds to less counts as exact. */
const REMAINDER_DECIMALS = 4;

/** A whole number of 64ths of an inch, reduced: 272 is `4-1/4`. */
function printFraction(sixtyFourths: number): string {
  const whole = Math.floor(sixtyFourths / SIXTY_FOURTHS);
  let [over, under] = [sixtyFourths % SIXTY_FOURTHS, SIXTY_FOURTHS];
  if (over === 0) return `${whole}`;
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return whole === 0 ? `${over}/${under}` : `${whole}-${over}/${under}`;
}

/** A length as inches to the nearest 1/64, reduced, with the remainder where it is not exact: `4-1/4 in`, `4-1/4 in +0.003 in`.
 * The remainder is what must be added (or taken away: `-`) to the fraction, to 0.0001 in. `parseLength` reads it back.
 */
export function printInches(length: Mm): string {
  const size = Math.abs(toInches(length));
  const marks = Math.round(size * SIXTY_FOURTHS);
  const flip = length < 0 ? -1 : 1;
  const remainder = plain((size - marks / SIXTY_FOURTHS) * flip, REMAINDER_DECIMALS);
  const main = `${length < 0 && marks > 0 ? '-' : ''}${printFraction(marks)} in`;
  if (remainder === '0') return main;
  return `${main} ${remainder.startsWith('-') ? '' : '+'}${remainder} in`;
}

/** A length in a plan's unit. */
export const printLength = (length: Mm, unit: Unit): string => (unit === 'in' ? printInches(length) : printMm(length));

/** A text with every length in millimetres followed by inches, to the nearest 64th: `18 mm` becomes `18 mm (45/64 in)`. */
export const withInches = (text: string): string =>
  text.replace(/(?<![\w.-])(\d+(?:\.\d+)?) mm\b(?!²| \()/g, (found, size: string) => {
    const marks = Math.round(toInches(Number(size)) * SIXTY_FOURTHS);
    return `${found} (${printFraction(marks)} in)`;
  });

/** An angle as degrees: `22.5 deg`. @param decimals at most; trailing zeros are left off. */
export const printAngle = (angle: Radians, decimals = 3): string => `${plain(toDegrees(angle), decimals)} deg`;
