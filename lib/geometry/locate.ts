import type { Mm } from '../units/length.js';
import { sideOf } from './arrangement/ray.js';
import type { Outline, Region } from './outline.js';
import { cross, distance, type Point, subtract } from './point.js';
import { type Segment, segments } from './segment.js';
import { ON_BOUNDARY } from './tolerance.js';

export type Place = 'inside' | 'outside' | 'boundary';

/** Distance from a point to an edge, mm. */
export function distanceToSegment(s: Segment, p: Point): Mm {
  const chord = subtract(s.to, s.from);
  const q = subtract(p, s.from);
  const ends = Math.min(distance(p, s.from), distance(p, s.to));
  if (s.kind === 'line') {
    const along = (chord.x * q.x + chord.y * q.y) / (chord.x * chord.x + chord.y * chord.y);
    if (!(along > 0 && along < 1)) return ends;
    return Math.abs(cross(chord, q)) / Math.hypot(chord.x, chord.y);
  }
  // the foot on the circle is on the arc if the point, seen from the centre, lies within the sweep
  const u = subtract(p, s.center);
  const away = Math.hypot(u.x, u.y);
  if (away === 0) return s.radius;
  const foot = { x: s.center.x + (u.x / away) * s.radius, y: s.center.y + (u.y / away) * s.radius };
  const across = Math.sign(s.sweep) * cross(chord, subtract(foot, s.from));
  return across <= 0 ? Math.min(ends, Math.abs(away - s.radius)) : ends;
}

/** How often an outline winds round a point not on it, anticlockwise positive: chords by a ray to +x (half open, so that a
 * vertex counts once), then 1 for each arc that has the point between itself and its chord. */
export function windingNumber(outline: Outline, p: Point): number {
  let winding = 0;
  for (const s of segments(outline)) {
    const side = sideOf(s.from.x, s.from.y, s.to.x, s.to.y, p.x, p.y);
    if (s.from.y <= p.y !== s.to.y <= p.y) {
      if (s.from.y <= p.y && side > 0) winding++;
      if (s.to.y <= p.y && side < 0) winding--;
    }
    if (s.kind === 'arc' && distance(p, s.center) < s.radius && side * s.sweep < 0) winding += Math.sign(s.sweep);
  }
  return winding;
}

/** Whether a point not on the outline is inside it. */
export const encloses = (outline: Outline, p: Point): boolean => windingNumber(outline, p) !== 0;

/** Where a point lies; on the boundary when nearer to it than `within` (1e-6 mm unless given). */
export function locate(region: Region, point: Point, within: Mm = ON_BOUNDARY): Place {
  const outlines = [region.outer, ...region.openings];
  if (outlines.some(o => segments(o).some(s => distanceToSegment(s, point) <= within))) return 'boundary';
  return encloses(region.outer, point) && !region.openings.some(o => encloses(o, point)) ? 'inside' : 'outside';
}
