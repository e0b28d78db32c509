import { circle, type Outline, type Polyline, vertex } from '../geometry/outline.js';
import { type Point, polar } from '../geometry/point.js';
import { inches, type Mm, toInches } from '../units/length.js';
import { printInches, printMm } from '../units/print-length.js';
import { caption, line, strokes } from './caption.js';
import type { PictureShape } from './picture.js';
import { FAINT, INK } from './wood.js';

/** A size in both units, to a tenth of a mm and a 64th of an inch. */
export const bothUnits = (size: Mm): string =>
  `${printMm(size, 1)} = ${printInches(inches(Math.round(toInches(size) * 64) / 64))}`;

/** A size that is measured: a line with an arrow head at each end, its text beside it. Lengths mm. */
export interface Dimension {
  readonly text: string;
  /** ends of the line */
  readonly from: Point;
  readonly to: Point;
  /** height of the letters */
  readonly height: Mm;
  /** longest the text may be; the line's own length unless given */
  readonly most?: Mm;
}

/** An arrow head at a point, pointing away from another. */
function arrow(tip: Point, other: Point, size: Mm): Outline {
  const back = Math.atan2(other.y - tip.y, other.x - tip.x);
  return [vertex(tip), ...[-0.17, 0.17].map(spread => vertex(polar(size, back + spread, tip)))];
}

/** A dimension that lies level, its text under it, or upright, its text left of it, read from the right. */
export function dimension({ text, from, to, height, most }: Dimension): PictureShape[] {
  const level = from.y === to.y;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const at = level ? { x: middle.x, y: middle.y - height * 1.4 } : { x: middle.x - height * 1.4, y: middle.y };
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const head = Math.min(height * 0.9, length / 3);
  return [
    strokes([line(from, to)], { stroke: INK, width: height / 14 }),
    { closed: [arrow(from, to, head), arrow(to, from, head)], open: [], paint: { fill: INK } },
    caption(text, at, height, most ?? length, level ? 0 : Math.PI / 2),
  ];
}

/** Faint lines from a drawing to its dimensions. */
export const extensions = (lines: readonly Polyline[], height: Mm): PictureShape =>
  strokes(lines, { stroke: FAINT, width: height / 14 });

/** The faint circle a round prop's diameter is measured over. */
export const overCircle = (radius: Mm, height: Mm): PictureShape => ({
  closed: [circle(radius)],
  open: [],
  paint: { stroke: FAINT, width: height / 14, dashes: [height / 2, height / 4] },
});
