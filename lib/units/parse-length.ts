import { type Fraction, NUMBER, parseFraction, spellFractions } from './fraction.js';
import { INCH, type Mm, type Unit } from './length.js';
import type { Parsed } from './parsed.js';

/** What a length may look like, for messages. */
export const LENGTH_FORMS = `a length such as 4-1/4, 4.25, 4 1/4", 4-1/4in, 2ft 6in, 762mm or 76.2cm`;

/** Longest text read as a length. */
const LONGEST = 40;

const TERM = `(${NUMBER}) *(mm|cm|m|inches|inch|in|")?`;
const FEET = `(?:(${NUMBER}) *(?:feet|foot|ft|')(?: *-? *(?=[.\\d]))?)`;
const LENGTH = new RegExp(`^(-?) *${FEET}?(?:${TERM})?(?: *([+-]) *(${NUMBER}) *in)?$`);

const spell = (text: string): string =>
  spellFractions(text.trim().toLowerCase())
    .replace(/''|[\u2033\u201c\u201d]/g, '"')
    .replace(/[\u2032\u2018\u2019]/g, "'");

/** Each unit in mm, as a quotient. */
const UNITS: Readonly<Record<string, Fraction>> = {
  mm: { over: 1, under: 1 },
  cm: { over: 10, under: 1 },
  m: { over: 1000, under: 1 },
};
const METRIC = Object.keys(UNITS);

/** One division, so one rounding. */
function toMm(number: Fraction, mark: string): Mm {
  const unit = UNITS[mark] ?? INCH;
  return (number.over * unit.over) / (number.under * unit.under);
}

const FAILED: Parsed = { ok: false, allowed: LENGTH_FORMS };

/** Feet and inches as one fraction of an inch, so that it is rounded once. */
const withFeet = (feet: Fraction, rest: Fraction): Fraction => ({
  over: feet.over * 12 * rest.under + rest.over * feet.under,
  under: feet.under * rest.under,
});

/** Reads a length: `4-1/4`, `4 1/4"`, `4-1/4in`, `762mm`, `76.2cm`, `1.2m`, `2ft 6in`, `2' 6"`, `2'-6"`, `-0.05mm`, with typographic
 * primes, quotes and fractions (½), and the printed form `4-1/4 in +0.003 in`. A number without a unit is in `unit`; after feet it is inches.
 * @returns mm, rounded once (to the nearest double for decimals up to 12 digits and for fractions), or what is allowed. Any sign, any size:
 * ranges are the caller's. Not read: exponents, decimal commas, sums, metric after feet.
 */
export function parseLength(text: string, unit: Unit): Parsed {
  const found = text.length <= LONGEST ? LENGTH.exec(spell(text)) : null;
  if (!found) return FAILED;
  const [, sign, feet, number, mark, addedSign, added] = found;
  if (feet === undefined && number === undefined) return FAILED;
  if (feet !== undefined && METRIC.includes(mark ?? 'in')) return FAILED;
  const [wide, rest, more] = [feet ?? '0', number ?? '0', added ?? '0'].map(parseFraction);
  if (!wide || !rest || !more) return FAILED;
  const main = feet === undefined ? toMm(rest, mark ?? unit) : toMm(withFeet(wide, rest), 'in');
  const value = (sign === '-' ? -main : main) + (addedSign === '-' ? -1 : 1) * toMm(more, 'in');
  return Number.isFinite(value) ? { ok: true, value: value + 0 } : FAILED;
}
