import { flatten } from '../geometry/flatten.js';
import { bounds, boundsOfAll } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';

/** How far a shape reaches left and right within a strip across the stock; mm from the shape's lower left corner. */
export interface Strip {
  readonly y0: Mm;
  readonly y1: Mm;
  readonly left: Mm;
  readonly right: Mm;
}

/** A shape as seen by whatever comes along x: its box, and its strips from y = 0 to its height. The shape lies inside its strips. */
export interface Silhouette {
  readonly width: Mm;
  readonly height: Mm;
  readonly strips: readonly Strip[];
}

const MOST_STRIPS = 24;
/** Strips are not worth making lower than this. */
const LEAST_STRIP: Mm = 2;
/** An arc is followed this closely; the polygon stays outside it. */
const LOOSE: Mm = 0.05;
/** Neighbouring strips that differ by less are one. */
const ALIKE: Mm = 0.05;

/** Widens each strip an edge crosses to the edge's reach in it. */
function coverEdge(a: Point, b: Point, pitch: Mm, strips: { left: Mm; right: Mm }[]): void {
  const [low, high] = a.y <= b.y ? [a, b] : [b, a];
  const last = strips.length - 1;
  const first = Math.min(last, Math.max(0, Math.floor(low.y / pitch - 1e-9)));
  const final = Math.min(last, Math.max(0, Math.floor(high.y / pitch + 1e-9)));
  const rise = high.y - low.y;
  const at = (y: Mm): Mm => (rise > 0 ? low.x + ((high.x - low.x) * (y - low.y)) / rise : low.x);
  for (let i = first; i <= final; i += 1) {
    const strip = strips[i]!;
    const ends =
      first === final
        ? [low.x, high.x]
        : [i === first ? low.x : at(i * pitch), i === final ? high.x : at((i + 1) * pitch)];
    strip.left = Math.min(strip.left, ...ends);
    strip.right = Math.max(strip.right, ...ends);
  }
}

/** Joins neighbours that hardly differ. */
function joined(strips: readonly Strip[]): Strip[] {
  const out: Strip[] = [];
  for (const s of strips) {
    const before = out.at(-1);
    if (before && Math.abs(before.left - s.left) < ALIKE && Math.abs(before.right - s.right) < ALIKE) {
      const left = Math.min(before.left, s.left);
      out[out.length - 1] = { y0: before.y0, y1: s.y1, left, right: Math.max(before.right, s.right) };
    } else out.push(s);
  }
  return out;
}

/** The silhouette of outlines that belong together; their box's lower left corner becomes its origin. */
export function silhouette(outlines: readonly Outline[]): Silhouette {
  const box = boundsOfAll(outlines.map(bounds));
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const count = Math.min(MOST_STRIPS, Math.max(1, Math.floor(height / LEAST_STRIP)));
  const pitch = height / count;
  const reach = Array.from({ length: count }, () => ({ left: Infinity, right: -Infinity }));
  for (const outline of outlines) {
    const points = flatten(outline, LOOSE, 'outward').map(p => ({ x: p.x - box.minX, y: p.y - box.minY }));
    points.forEach((p, i) => {
      coverEdge(p, points[(i + 1) % points.length]!, pitch, reach);
    });
  }
  const strips = reach.map((r, i) => ({
    y0: i * pitch,
    y1: i === count - 1 ? height : (i + 1) * pitch,
    // the tangents that stand in for an arc may pass the box, the shape does not
    left: Math.max(0, r.left),
    right: Math.min(width, r.right),
  }));
  return { width, height, strips: joined(strips) };
}
