import { type Polyline, rectangle, vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { letter, letteringWidth } from '../parts/lettering/lettering.js';
import type { Mm, Radians } from '../units/length.js';
import type { Paint, PictureShape } from './picture.js';
import { INK } from './wood.js';

/** A straight run through points. */
export const line = (...points: readonly Point[]): Polyline => points.map(p => vertex(p));

/** Open runs painted alike. */
export const strokes = (open: readonly Polyline[], paint: Paint): PictureShape => ({ closed: [], open, paint });

/** Lettering for a picture: as high as asked, or lower if it would be wider than `most`.
 * @param at middle of the text   @param turn anticlockwise about it; upright unless given */
export function caption(text: string, at: Point, height: Mm, most: Mm, turn: Radians = 0): PictureShape {
  const fitted = Math.min(height, (height * most) / Math.max(most, letteringWidth(text, height)));
  return strokes(letter(text, at, fitted, turn), { stroke: INK, width: fitted / 9 });
}

/** One line of a legend: a swatch of a tone, or of dashes, and what it stands for. */
export interface LegendItem {
  readonly text: string;
  readonly paint: Paint;
}

/** Of a letter's height: a swatch's length, from it to its words, from item to item, and from row to row. */
const SWATCH = 2.4;
const TO_WORDS = 1.1;
const APART = 2;
const ROW = 2.6;

const itemWidth = (item: LegendItem, h: Mm): Mm => (SWATCH + TO_WORDS) * h + letteringWidth(item.text, h);
const rowWidth = (row: readonly LegendItem[], h: Mm): Mm =>
  row.reduce((w, item) => w + itemWidth(item, h) + APART * h, -APART * h);

/** Items in rows no wider than `most`. */
function rowsOf(items: readonly LegendItem[], h: Mm, most: Mm): LegendItem[][] {
  const rows: LegendItem[][] = [];
  for (const item of items) {
    const last = rows.at(-1);
    if (last && rowWidth([...last, item], h) <= most + 1e-6) last.push(item);
    else rows.push([item]);
  }
  return rows;
}

function legendItem({ text, paint }: LegendItem, left: Mm, y: Mm, h: Mm): PictureShape[] {
  const right = left + SWATCH * h;
  const width = letteringWidth(text, h);
  const box = rectangle(left, y - 0.7 * h, right, y + 0.7 * h);
  const swatch: PictureShape = paint.dashes
    ? strokes([line({ x: left, y }, { x: right, y })], paint)
    : { closed: [box], open: [], paint };
  return [swatch, caption(text, { x: right + TO_WORDS * h + width / 2, y }, h, width)];
}

/** A row that is a little too long is set smaller, down to this share, before another row is begun. */
const SMALLEST = 0.78;

const legendHeight = (items: readonly LegendItem[], height: Mm, most: Mm): Mm =>
  height * Math.min(1, Math.max(SMALLEST, most / rowWidth(items, height)));

/** How far a legend reaches down from the middle of its first row, mm. Parameters as `legend`. */
export function legendDepth(items: readonly LegendItem[], height: Mm, most: Mm): Mm {
  const h = legendHeight(items, height, most);
  return (rowsOf(items, h, most).length - 1) * ROW * h + h;
}

/** Swatches with their words side by side, centred, in as many rows as it takes.
 * @param at middle of the first row   @param height of the letters at most   @param most width of a row, mm */
export function legend(items: readonly LegendItem[], at: Point, height: Mm, most: Mm): PictureShape[] {
  const h = legendHeight(items, height, most);
  return rowsOf(items, h, most).flatMap((row, i) => {
    let left = at.x - rowWidth(row, h) / 2;
    return row.flatMap(item => {
      const shapes = legendItem(item, left, at.y - i * ROW * h, h);
      left += itemWidth(item, h) + APART * h;
      return shapes;
    });
  });
}
