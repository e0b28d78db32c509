import { type Box, segmentBounds } from '../geometry/measure.js';
import { movePoint } from '../geometry/motion.js';
import type { Polyline } from '../geometry/outline.js';
import { segmentFrom } from '../geometry/segment.js';
import { letteringBox } from '../parts/lettering/lettering.js';
import type { Mm } from '../units/length.js';
import type { Drawing, TextLine } from './drawing.js';

/** Least x, least y, greatest x, greatest y: grown in place, for a sheet may hold a million lines. */
type Reach = [Mm, Mm, Mm, Mm];

function include(reach: Reach, minX: Mm, minY: Mm, maxX: Mm, maxY: Mm): void {
  if (minX < reach[0]) reach[0] = minX;
  if (minY < reach[1]) reach[1] = minY;
  if (maxX > reach[2]) reach[2] = maxX;
  if (maxY > reach[3]) reach[3] = maxY;
}

function includeLine(reach: Reach, line: Polyline, closed: boolean): void {
  line.forEach((v, i) => {
    include(reach, v.x, v.y, v.x, v.y);
    const next = line[i + 1] ?? (closed ? line[0] : undefined);
    if (v.bulge === 0 || !next) return;
    const { minX, minY, maxX, maxY } = segmentBounds(segmentFrom(v, next));
    include(reach, minX, minY, maxX, maxY);
  });
}

/** A text as our own letters take it: no two fonts are as wide. */
function includeText(reach: Reach, { text, at, height, turn }: TextLine): void {
  const { minX, maxX, minY, maxY } = letteringBox(text, height);
  for (const x of [minX, maxX])
    for (const y of [minY, maxY]) {
      const corner = movePoint({ x, y }, { turn, ...at });
      include(reach, corner.x, corner.y, corner.x, corner.y);
    }
}

/** The upright box round everything in a drawing, arcs to their true extremes; of an empty one, a point at the origin. */
export function drawingExtent(drawing: Drawing): Box {
  const reach: Reach = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { closed, open, texts = [] } of drawing.layers) {
    for (const outline of closed) includeLine(reach, outline, true);
    for (const line of open) includeLine(reach, line, false);
    for (const text of texts) includeText(reach, text);
  }
  const [minX, minY, maxX, maxY] = reach;
  return minX <= maxX ? { minX, minY, maxX, maxY } : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}
