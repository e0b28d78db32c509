import { BASE, CAPITAL_TOP, type Glyph, type Ink, inkOf, inRow, readGlyph, shifted } from './glyph.js';
import { HERSHEY } from './hershey.js';
import { MARKED_OTHERWISE, MARKS, STROKED } from './marks.js';
import { ALIKE, OWN } from './own-glyphs.js';

const OVER_A_LETTER = 2;
/** Size of raised, lowered and fractions' figures, and of the gap between a fraction's figures and its stroke. */
const FIGURE = 0.58;
const TO_STROKE = -5;

/** Stands for a character the alphabet has not got. */
const UNKNOWN: Glyph = readGlyph('22:47 4s is i7 47');

/** A letter of its own; undefined where it takes others to make it. */
function plain(character: string): Glyph | undefined {
  const text = HERSHEY[character] ?? OWN[character];
  if (text !== undefined) return readGlyph(text);
  const [letter = '', stroke = ''] = STROKED[character] ?? [];
  const base = HERSHEY[letter];
  return base === undefined ? undefined : readGlyph(`${base}/${stroke}`);
}

/** A letter with one more mark. */
function marked(base: Glyph, { place, glyph }: (typeof MARKS)[string]): Glyph {
  const mark = readGlyph(glyph);
  const ink = inkOf(base) ?? { left: 0, right: base.advance, high: CAPITAL_TOP - 2 };
  const centred = (ink.left + ink.right - mark.advance) / 2;
  const with_ = (x: number, y: number, advance = base.advance): Glyph => ({
    strokes: [...base.strokes, ...shifted(mark.strokes, x, y)],
    advance,
  });
  switch (place) {
    case 'over':
      return with_(centred, ink.high + OVER_A_LETTER);
    case 'under':
      return with_(centred, 0);
    case 'lower-right':
      return with_(ink.right - mark.advance, 0);
    case 'upper-right':
      return with_(ink.right + 1, 0, base.advance + mark.advance);
    default:
      return place satisfies never;
  }
}

/** Small i and j lose their dot under a mark. */
const DOTLESS: Readonly<Record<string, string>> = { i: 'ı', j: 'ȷ' };

/** A letter made of another and accents. */
function accented(character: string): Glyph | undefined {
  const [letter = '', ...given] = character.normalize('NFD');
  const marks = given.map(
    m => MARKED_OTHERWISE.find(([letters, from]) => from === m && letters.test(letter))?.[2] ?? m,
  );
  const dotless = marks.some(m => MARKS[m]?.place === 'over') ? DOTLESS[letter] : undefined;
  const base = plain(dotless ?? letter);
  if (!base || marks.length === 0 || !marks.every(m => m in MARKS)) return undefined;
  return marks.reduce((glyph, m) => marked(glyph, MARKS[m]!), base);
}

const RAISED = /^[²³¹⁰ⁱ⁴-ⁿªº]$/u;
const LOWERED = /^[₀-₎]$/u;

/** Figures smaller, standing on the line or hanging from the capitals' top. */
const small = (glyph: Glyph, raised: boolean): Glyph => ({
  strokes: shifted(glyph.strokes, 0, raised ? CAPITAL_TOP * (1 - FIGURE) : BASE * (1 - FIGURE), FIGURE),
  advance: glyph.advance * FIGURE,
});

/** Figures over a slanting stroke over figures: what a fraction in one character stands for. */
function fraction(over: Glyph, under: Glyph): Glyph {
  const stroke = readGlyph(OWN['⁄']!);
  const gap: Glyph = { strokes: [], advance: TO_STROKE };
  return inRow([small(over, true), gap, stroke, gap, small(under, false)]);
}

/** All the letters of a text that stands for one character. */
function all(text: string): Glyph | undefined {
  const glyphs = clusters(text).map(glyphOf);
  return glyphs.every(g => g !== undefined) ? inRow(glyphs) : undefined;
}

/** A character that stands for others: ⅝, ², …, ﬁ. */
function standsFor(character: string): Glyph | undefined {
  const others = ALIKE[character] ?? character.normalize('NFKD');
  const [over = '', under] = others.split('⁄');
  // no more than the same accents again
  if (under === undefined && others.normalize('NFC') === character.normalize('NFC')) return undefined;
  const [first, second] = [all(over), all(under ?? '')];
  if (!first || !second) return undefined;
  if (under !== undefined) return fraction(first, second);
  if (RAISED.test(character)) return small(first, true);
  return LOWERED.test(character) ? small(first, false) : first;
}

/** A letter with its accents, a sign or a fraction; undefined for one the alphabet has not got. */
const glyphOf = (character: string): Glyph | undefined =>
  plain(character) ?? accented(character) ?? standsFor(character);

/** A glyph as it is needed for lettering, and whether it is a box for a character there are no strokes for. */
export interface Character extends Glyph {
  readonly ink: Ink | undefined;
  readonly isBox: boolean;
}

const known = new Map<string, Character>();

/** The glyph of a character, worked out once. */
export function characterOf(text: string): Character {
  const before = known.get(text);
  if (before) return before;
  const glyph = glyphOf(text);
  const drawn = glyph ?? UNKNOWN;
  const made: Character = { ...drawn, ink: inkOf(drawn), isBox: glyph === undefined };
  known.set(text, made);
  return made;
}

/** A text's letters, each with its accents; a fraction with a fraction stroke is one. */
export const clusters = (text: string): string[] => text.normalize('NFC').match(/\d+⁄\d+|\P{M}\p{M}*|\p{M}+/gu) ?? [];
