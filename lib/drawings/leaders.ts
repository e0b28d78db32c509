import { circle, type Outline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { letteringWidth } from '../parts/lettering/lettering.js';
import type { Mm } from '../units/length.js';
import { caption, line, strokes } from './caption.js';
import type { PictureShape } from './picture.js';
import { INK } from './wood.js';

/** Whether a point lies in a polygon: how often a ray to the right crosses its edges. */
function covers(polygon: Outline, p: Point): boolean {
  let inside = false;
  let from = polygon.at(-1)!;
  for (const to of polygon) {
    if (from.y > p.y !== to.y > p.y && p.x < from.x + ((to.x - from.x) * (p.y - from.y)) / (to.y - from.y))
      inside = !inside;
    from = to;
  }
  return inside;
}

/** The rightmost corner of what is painted that nothing painted later covers; the rightmost of all if there is none. */
function anchor(shapes: readonly PictureShape[], later: readonly PictureShape[]): Point {
  const corners = shapes.flatMap(s => s.closed.flat()).sort((a, b) => b.x - a.x);
  const open = corners.find(p => !later.some(s => s.closed.some(o => covers(o, p))));
  return open ?? corners[0]!;
}

/** Where the leader of each of several groups of shapes begins. @param drawn straight-edged, in painting order, each with a closed shape */
export const anchors = (drawn: readonly (readonly PictureShape[])[]): Point[] =>
  drawn.map((shapes, i) => anchor(shapes, drawn.slice(i + 1).flat()));

/** Heights of labels in a column: each level with what it names, or as near as the others leave room. @returns y of each */
function column(wanted: readonly Mm[], apart: Mm): Mm[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const ys = [...wanted];
  // pushed up until they clear each other, then the whole column down by half of what that took at most
  let last = -Infinity;
  let pushed = 0;
  for (const i of order) {
    last = Math.max(ys[i]!, last + apart);
    pushed = Math.max(pushed, last - ys[i]!);
    ys[i] = last;
  }
  return ys.map(y => y - pushed / 2);
}

/** A name and what it names. */
export interface Label {
  readonly text: string;
  readonly at: Point;
}

/** Names in a column, each with a line to what it names. @param x where the names begin   @param height of the letters, mm */
export function leaders(labels: readonly Label[], x: Mm, height: Mm): PictureShape[] {
  const ys = column(
    labels.map(l => l.at.y),
    1.9 * height,
  );
  return labels.flatMap(({ text, at }, i) => {
    const y = ys[i]!;
    const width = letteringWidth(text, height);
    return [
      strokes([line(at, { x: x - 1.6 * height, y }, { x: x - 0.6 * height, y })], { stroke: INK, width: height / 14 }),
      { closed: [circle(height / 6, at)], open: [], paint: { fill: INK } },
      caption(text, { x: x + width / 2, y }, height, width),
    ];
  });
}
