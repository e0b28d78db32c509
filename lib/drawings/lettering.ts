import { polylineBounds } from '../geometry/measure.js';
import { movePolyline } from '../geometry/motion.js';
import type { Polyline, Vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import { CAP_HEIGHT, GLYPHS, LETTER_GAP, UNKNOWN_GLYPH } from './alphabet.js';

const QUARTER_TURN = Math.tan(Math.PI / 8);

const BULGES: Readonly<Record<string, number>> = { l: QUARTER_TURN, r: -QUARTER_TURN, L: 1, R: -1 };

const corner = (token: string): Vertex => ({
  x: Number.parseInt(token[0] ?? '0', 36),
  y: Number.parseInt(token[1] ?? '0', 36),
  bulge: BULGES[token[2] ?? ''] ?? 0,
});

interface Glyph {
  readonly strokes: readonly Polyline[];
  readonly width: number;
}

function readGlyph(text: string): Glyph {
  const strokes = text.split('/').map(stroke => stroke.split(' ').map(corner));
  // a stroke of one point only holds the width, as in a space
  const width = Math.max(...strokes.flat().map(v => v.x), ...strokes.map(s => polylineBounds(s).maxX));
  return { strokes: strokes.filter(s => s.length > 1), width };
}

const ALPHABET: ReadonlyMap<string, Glyph> = new Map(
  Object.entries(GLYPHS).map(([character, text]) => [character, readGlyph(text)]),
);
const UNKNOWN = readGlyph(UNKNOWN_GLYPH);

/** The glyphs of a text: capitals without accents. */
function glyphs(text: string): Glyph[] {
  const ascii = /^[ -~]*$/.test(text);
  const bare = ascii ? text : text.normalize('NFD').replace(/\p{Mn}/gu, '');
  return [...bare.toUpperCase()].map(character => ALPHABET.get(character) ?? UNKNOWN);
}

/** How wide a text is lettered, mm. @param height of a capital, mm */
export function letteringWidth(text: string, height: Mm): Mm {
  const widths = glyphs(text).map(g => g.width);
  const gaps = Math.max(0, widths.length - 1) * LETTER_GAP;
  return ((widths.reduce((a, b) => a + b, 0) + gaps) * height) / CAP_HEIGHT;
}

/** A line of text as single strokes to be cut, marked or drawn: lines and true arcs, small letters as capitals.
 * A character the alphabet has not got becomes an upright box; accents are left out.
 * @param at middle of the lettering   @param height of a capital, mm   @param turn anticlockwise, about `at` */
export function letter(text: string, at: Point, height: Mm, turn: Radians): Polyline[] {
  const scale = height / CAP_HEIGHT;
  let x = -letteringWidth(text, height) / 2;
  return glyphs(text).flatMap(({ strokes, width }) => {
    const left = x;
    x += (width + LETTER_GAP) * scale;
    const placed = strokes.map(s =>
      s.map(v => ({ x: left + v.x * scale, y: (v.y - CAP_HEIGHT / 2) * scale, bulge: v.bulge })),
    );
    return placed.map(s => movePolyline(s, { turn, x: at.x, y: at.y }));
  });
}
