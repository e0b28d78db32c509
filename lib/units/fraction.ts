/** An exact quotient of two whole numbers; `under` > 0. */
export interface Fraction {
  readonly over: number;
  readonly under: number;
}

/** The vulgar fractions of Unicode (Number Forms and Latin-1), as `over/under`. */
const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Spells vulgar fractions, the fraction slash, the minus sign and Unicode spaces in ASCII: `4½` becomes `4 1/2`. */
export function spellFractions(text: string): string {
  return text
    .replace(/(\d?)([¼-¾⅐-⅞])/g, (_, digit: string, sign: string) => `${digit}${digit && ' '}${VULGAR[sign] ?? sign}`)
    .replace(/⁄/g, '/')
    .replace(/\u2212/g, '-')
    .replace(/[\u00a0\u2000-\u200a\u202f]/g, ' ');
}

/** An unsigned number as written in a shop: `4`, `4.25`, `.5`, `1/16`, `4-1/4`, `4 1/4`; a piece of a regular expression without groups. */
export const NUMBER = String.raw`(?:\d+(?:-| +)\d+ ?/ ?\d+|\d+ ?/ ?\d+|\d+\.?\d*|\.\d+)`;

/** Digits a decimal may have and still be held exactly with room for a conversion. */
const EXACT_DIGITS = 12;

function decimal(text: string): Fraction {
  const [whole = '', part = ''] = text.split('.');
  if (whole.length + part.length > EXACT_DIGITS) return { over: Number(text), under: 1 };
  return { over: Number(whole + part), under: 10 ** part.length };
}

/** Reads text of the form NUMBER, exactly. Undefined for a zero denominator and for a mixed number whose fraction is 1 or more. */
export function parseFraction(text: string): Fraction | undefined {
  const mixed = /^(?:(\d+)(?:-| +))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (!mixed) return decimal(text);
  const [over, under] = [Number(mixed[2]), Number(mixed[3])];
  if (under === 0 || (mixed[1] !== undefined && over >= under)) return undefined;
  return { over: Number(mixed[1] ?? 0) * under + over, under };
}
