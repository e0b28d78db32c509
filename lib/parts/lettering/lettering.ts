import type { Box } from '../../geometry/measure.js';
import { movePolyline } from '../../geometry/motion.js';
import type { Polyline } from '../../geometry/outline.js';
import type { Point } from '../../geometry/point.js';
import type { Mm, Radians } from '../../units/length.js';
import { clusters, glyphOf, glyphOrBox } from './alphabet.js';
import { BASE, CAPITAL, CAPITAL_TOP, type Glyph, inkOf, inRow, shifted } from './glyph.js';

const MIDDLE = (BASE + CAPITAL_TOP) / 2;

const lineOf = (text: string): Glyph => inRow(clusters(text).map(glyphOrBox));

/** Ink of a line on the grid; of one without any, nothing high and as wide as its spaces. */
const extentOf = (line: Glyph) => inkOf(line) ?? { left: 0, right: line.advance, low: MIDDLE, high: MIDDLE };

/** How wide a text is lettered, mm. @param height of a capital, mm */
export function letteringWidth(text: string, height: Mm): Mm {
  const { left, right } = extentOf(lineOf(text));
  return ((right - left) * height) / CAPITAL;
}

/** What lettering covers, mm from its middle: accents and what hangs below the line with it. @param height of a capital, mm */
export function letteringBox(text: string, height: Mm): Box {
  const { left, right, low, high } = extentOf(lineOf(text));
  const scale = height / CAPITAL;
  const half = ((right - left) * scale) / 2;
  return { minX: -half, maxX: half, minY: (low - MIDDLE) * scale, maxY: (high - MIDDLE) * scale };
}

/** A letter of a line. */
export interface Letter {
  readonly text: string;
  /** from the middle of the line to the letter's own, mm */
  readonly x: Mm;
}

/** The letters of a line one by one, spaces left out. @param height of a capital, mm */
export function lettersOf(text: string, height: Mm): Letter[] {
  const { left, right } = extentOf(lineOf(text));
  let x = -(left + right) / 2;
  return clusters(text).flatMap((character): Letter[] => {
    const glyph = glyphOrBox(character);
    const ink = inkOf(glyph);
    const from = x;
    x += glyph.advance;
    return ink ? [{ text: character, x: ((from + (ink.left + ink.right) / 2) * height) / CAPITAL }] : [];
  });
}

/** The characters of a text that there are no strokes for, each once. */
export const withoutStrokes = (text: string): string[] => [
  ...new Set(clusters(text).filter(c => glyphOf(c) === undefined)),
];

/** A line of text as single strokes to be cut, marked or drawn: capitals and small letters with accents, figures and signs. A
 * character there are no strokes for becomes an upright box.
 * @param at middle of the lettering, half way up a capital   @param height of a capital, mm   @param turn anticlockwise, about `at` */
export function letter(text: string, at: Point, height: Mm, turn: Radians): Polyline[] {
  const line = lineOf(text);
  const { left, right } = extentOf(line);
  const scale = height / CAPITAL;
  const centred = shifted(line.strokes, (-scale * (left + right)) / 2, -scale * MIDDLE, scale);
  return centred.map(s => movePolyline(s, { turn, x: at.x, y: at.y }));
}
