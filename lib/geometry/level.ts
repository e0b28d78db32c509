import type { Mm } from '../units/length.js';
import type { Region } from './outline.js';
import { type ArcSegment, type Segment, segments } from './segment.js';

const TURN = 2 * Math.PI;

/** Whether an arc passes over an angle of its circle; its start counts, its end does not, so that a vertex counts once. */
function passes(s: ArcSegment, angle: number): boolean {
  const along = s.sweep > 0 ? angle - s.start : s.start - angle;
  return ((along % TURN) + TURN) % TURN < Math.abs(s.sweep);
}

/** x where an edge crosses the level line at y. */
function crossings(s: Segment, y: Mm): Mm[] {
  if (s.kind === 'line') {
    if (s.from.y <= y === s.to.y <= y) return [];
    return [s.from.x + ((s.to.x - s.from.x) * (y - s.from.y)) / (s.to.y - s.from.y)];
  }
  const sine = (y - s.center.y) / s.radius;
  if (Math.abs(sine) >= 1) return [];
  const angle = Math.asin(sine);
  return [angle, Math.PI - angle].filter(a => passes(s, a)).map(a => s.center.x + s.radius * Math.cos(a));
}

/** Stretches of the level line at y that lie in a region, from left to right, mm; exact for lines and arcs.
 * Limits: y must not be that of a vertex or of an arc's highest or lowest point; there the answer may be that of a height beside it. */
export function levelSpans(region: Region, y: Mm): (readonly [Mm, Mm])[] {
  const all = [region.outer, ...region.openings].flatMap(o => segments(o).flatMap(s => crossings(s, y)));
  const sorted = all.sort((a, b) => a - b);
  return Array.from({ length: sorted.length >> 1 }, (_, i) => [sorted[2 * i]!, sorted[2 * i + 1]!] as const);
}
