import { circle, type Outline, type Polyline, rectangle, vertex } from '../geometry/outline.js';
import { type Point, polar } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { letter, letteringWidth } from './lettering.js';
import type { Paint, PictureShape } from './picture.js';
import { FAINT, INK } from './wood.js';

const line = (...points: readonly Point[]): Polyline => points.map(p => vertex(p));

const strokes = (open: readonly Polyline[], paint: Paint): PictureShape => ({ closed: [], open, paint });

/** Lettering for a picture: as high as asked, or lower if it would be wider than `most`. @param at middle of the text */
export function caption(text: string, at: Point, height: Mm, most: Mm): PictureShape {
  const fitted = Math.min(height, (height * most) / Math.max(most, letteringWidth(text, height)));
  return strokes(letter(text, at, fitted, 0), { stroke: INK, width: fitted / 9 });
}

/** A dimension across the whole prop: a faint circle of that diameter, a line with arrow heads below it, and the text under the line.
 * @param radius half the diameter, mm   @param y where the line lies   @param height of the lettering */
export function overallDimension(text: string, radius: Mm, y: Mm, height: Mm): PictureShape[] {
  const thin = height / 14;
  const head = (side: 1 | -1): Outline => {
    const tip = { x: side * radius, y };
    const back = side > 0 ? Math.PI : 0;
    return [vertex(tip), ...[-1, 1].map(s => vertex(polar(height * 0.9, back + side * s * 0.17, tip)))];
  };
  const extension = (side: 1 | -1): Polyline =>
    line({ x: side * radius, y: -height / 2 }, { x: side * radius, y: y - height / 2 });
  return [
    strokes([extension(-1), extension(1)], { stroke: FAINT, width: thin }),
    { closed: [circle(radius)], open: [], paint: { stroke: FAINT, width: thin, dashes: [height / 2, height / 4] } },
    strokes([line({ x: -radius, y }, { x: radius, y })], { stroke: INK, width: thin }),
    { closed: [head(1), head(-1)], open: [], paint: { fill: INK } },
    caption(text, { x: 0, y: y - height * 1.4 }, height, 2 * radius),
  ];
}

/** One line of a legend: a swatch of a tone, or of dashes, and what it stands for. */
export interface LegendItem {
  readonly text: string;
  readonly paint: Paint;
}

/** Swatches with their words side by side, centred. @param at middle of the row   @param most width, mm: a longer row is set smaller */
export function legend(items: readonly LegendItem[], at: Point, height: Mm, most: Mm): PictureShape[] {
  const widthAt = (h: Mm): Mm => items.reduce((w, i) => w + letteringWidth(i.text, h) + 5.5 * h, -2 * h);
  const h = Math.min(height, (height * most) / Math.max(most, widthAt(height)));
  let x = at.x - widthAt(h) / 2;
  return items.flatMap(({ text, paint }) => {
    const width = letteringWidth(text, h);
    const swatch = { left: x, right: x + 2.4 * h };
    x += width + 5.5 * h;
    const middle = { x: swatch.right + 1.1 * h + width / 2, y: at.y };
    const box = rectangle(swatch.left, at.y - 0.7 * h, swatch.right, at.y + 0.7 * h);
    const dashed = line({ x: swatch.left, y: at.y }, { x: swatch.right, y: at.y });
    return [
      paint.dashes ? strokes([dashed], paint) : { closed: [box], open: [], paint },
      caption(text, middle, h, width),
    ];
  });
}
