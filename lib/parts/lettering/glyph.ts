import { polylineBounds } from '../../geometry/measure.js';
import type { Polyline, Vertex } from '../../geometry/outline.js';

/** Lettering's grid: y of the line letters stand on, of the top of small letters without a stem, and of the top of capitals. */
export const BASE = 7;
export const SMALL_TOP = 21;
export const CAPITAL_TOP = 28;
export const CAPITAL = CAPITAL_TOP - BASE;

/** A letter as strokes on the grid, air on both sides included. */
export interface Glyph {
  readonly strokes: readonly Polyline[];
  /** from its left edge, x = 0, to the next letter's */
  readonly advance: number;
}

const QUARTER_TURN = Math.tan(Math.PI / 8);

const BULGES: Readonly<Record<string, number>> = { l: QUARTER_TURN, r: -QUARTER_TURN, L: 1, R: -1 };

/** A vertex: x and y as digits of base 36, then how the edge to the next one runs: nothing for a line, `l` and `r` for a quarter turn to the
 * left or right, `L` and `R` for a half turn. */
const corner = (token: string): Vertex => ({
  x: Number.parseInt(token[0] ?? '0', 36),
  y: Number.parseInt(token[1] ?? '0', 36),
  bulge: BULGES[token[2] ?? ''] ?? 0,
});

/** A glyph as it is written down: `18:9s 17/9s h7/4e ee` is a capital A, 18 wide. */
export function readGlyph(text: string): Glyph {
  const [advance = '0', strokes = ''] = text.split(':');
  return {
    advance: Number(advance),
    strokes: strokes === '' ? [] : strokes.split('/').map(stroke => stroke.split(' ').map(corner)),
  };
}

/** Strokes scaled about the grid's lower left corner, then moved. */
export const shifted = (strokes: readonly Polyline[], x: number, y: number, scale = 1): Polyline[] =>
  strokes.map(s => s.map(v => ({ x: x + v.x * scale, y: y + v.y * scale, bulge: v.bulge })));

/** Glyphs one after the other as one. */
export function inRow(glyphs: readonly Glyph[]): Glyph {
  let advance = 0;
  const strokes = glyphs.flatMap(glyph => {
    const left = advance;
    advance += glyph.advance;
    return shifted(glyph.strokes, left, 0);
  });
  return { strokes, advance };
}

/** How far ink reaches on the grid. */
export interface Ink {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** A glyph's ink; undefined for a space. */
export function inkOf({ strokes }: Glyph): Ink | undefined {
  if (strokes.length === 0) return undefined;
  const boxes = strokes.map(polylineBounds);
  return {
    left: Math.min(...boxes.map(b => b.minX)),
    right: Math.max(...boxes.map(b => b.maxX)),
    low: Math.min(...boxes.map(b => b.minY)),
    high: Math.max(...boxes.map(b => b.maxY)),
  };
}
