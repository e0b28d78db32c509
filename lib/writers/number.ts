import { refuse } from '../findings/unusable.js';

/** The farthest a written coordinate may lie from the origin, mm: a thousand kilometres. */
const FAR = 1e9;

/** Between these sizes a number rounded to 9 decimals prints without an exponent and with at most 15 digits. */
const PLAIN = { least: 1e-6, most: 1e6 };

const withoutEndZeros = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

const within = (size: number): boolean => size >= PLAIN.least && size < PLAIN.most;

/** A length or a coordinate as it stands in a file: mm to 9 decimals, no exponent, no "-0", no zeros at the end.
 * @throws Unusable for NaN, infinity and anything beyond 1e9 */
export function coordinate(value: number): string {
  const size = Math.abs(value);
  if (!(size <= FAR)) refuse('a coordinate', value, 'a number of millimetres from -1e9 to 1e9');
  const rounded = Math.round(value * 1e9) / 1e9 + 0;
  if (within(Math.abs(rounded)) || rounded === 0) return String(rounded);
  return withoutEndZeros(rounded.toFixed(9));
}

/** All digits of a small number, its exponent spelt out as zeros. */
function spelled(value: number): string {
  const [digits = '0', power = '0'] = Math.abs(value).toExponential(14).split('e');
  const zeros = '0'.repeat(-Number(power) - 1);
  return `${value < 0 ? '-' : ''}${withoutEndZeros(`0.${zeros}${digits.replace('.', '')}`)}`;
}

/** A bulge as it stands in a file: 15 significant digits, no exponent, no "-0".
 * @throws Unusable unless -1 <= value <= 1: an arc of more than a half turn is two */
export function bulge(value: number): string {
  const size = Math.abs(value);
  if (!(size <= 1)) refuse('a bulge', value, 'a number from -1 to 1');
  if (size >= 0.1) return String(Math.round(value * 1e15) / 1e15);
  if (size >= PLAIN.least) return String(Number(value.toPrecision(15)));
  return size === 0 ? '0' : spelled(value);
}
