import type { Box } from '../../geometry/measure.js';
import { mover } from '../../geometry/motion.js';
import { type Polyline, vertex } from '../../geometry/outline.js';
import type { Point } from '../../geometry/point.js';
import type { Mm, Radians } from '../../units/length.js';
import { type Character, characterOf, clusters } from './alphabet.js';
import { BASE, CAPITAL, CAPITAL_TOP, type Ink } from './glyph.js';

const MIDDLE = (BASE + CAPITAL_TOP) / 2;

/** A line of text on the grid, from x = 0 on. */
interface Line {
  readonly letters: readonly { readonly text: string; readonly character: Character; readonly x: number }[];
  /** of one without any, nothing high and as wide as its spaces */
  readonly ink: Ink;
}

function lineOf(text: string): Line {
  let end = 0;
  const letters = clusters(text).map(cluster => {
    const character = characterOf(cluster);
    const x = end;
    end += character.advance;
    return { text: cluster, character, x };
  });
  const inks = letters.flatMap(({ character: { ink }, x }) =>
    ink ? [{ ...ink, left: x + ink.left, right: x + ink.right }] : [],
  );
  if (inks.length === 0) return { letters, ink: { left: 0, right: end, low: MIDDLE, high: MIDDLE } };
  return {
    letters,
    ink: {
      left: Math.min(...inks.map(i => i.left)),
      right: Math.max(...inks.map(i => i.right)),
      low: Math.min(...inks.map(i => i.low)),
      high: Math.max(...inks.map(i => i.high)),
    },
  };
}

/** How wide a text is lettered, mm. @param height of a capital, mm */
export function letteringWidth(text: string, height: Mm): Mm {
  const { left, right } = lineOf(text).ink;
  return ((right - left) * height) / CAPITAL;
}

/** What lettering covers, mm from its middle: accents and what hangs below the line with it. @param height of a capital, mm */
export function letteringBox(text: string, height: Mm): Box {
  const { left, right, low, high } = lineOf(text).ink;
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
  const { letters, ink } = lineOf(text);
  const middle = (ink.left + ink.right) / 2;
  return letters.flatMap(({ text: own, character, x }): Letter[] => {
    if (!character.ink) return [];
    const { left, right } = character.ink;
    return [{ text: own, x: ((x + (left + right) / 2 - middle) * height) / CAPITAL }];
  });
}

/** The characters of a text that there are no strokes for, each once. */
export const withoutStrokes = (text: string): string[] => [
  ...new Set(clusters(text).filter(c => characterOf(c).isBox)),
];

/** A line of text as single strokes to be cut, marked or drawn: capitals and small letters with accents, figures and signs. A
 * character there are no strokes for becomes an upright box.
 * @param at middle of the lettering, half way up a capital   @param height of a capital, mm   @param turn anticlockwise, about `at` */
export function letter(text: string, at: Point, height: Mm, turn: Radians): Polyline[] {
  const { letters, ink } = lineOf(text);
  const middle = (ink.left + ink.right) / 2;
  const scale = height / CAPITAL;
  const move = mover({ turn, x: at.x, y: at.y });
  return letters.flatMap(({ character, x }) =>
    character.strokes.map(stroke =>
      stroke.map(v => vertex(move({ x: (x + v.x - middle) * scale, y: (v.y - MIDDLE) * scale }), v.bulge)),
    ),
  );
}
