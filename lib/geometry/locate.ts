import type { Mm } from '../units/length.js';
import { sideOf } from './arrangement/ray.js';
import type { Outline, Region } from './outline.js';
import { cross, distance, type Point, subtract } from './point.js';
import { type Segment, segments } from './segment.js';
import { ON_BOUNDARY } from './tolerance.js';

export type Place = 'inside' | 'outside' | 'boundary';

/** An arc of a radius more than this many chords is a parabola over its chord, to some 1e-10 of its height. */
const FLAT_RADIUS = 1e5;

/** Distance from a point to an edge, mm. */
export function distanceToSegment(s: Segment, p: Point): Mm {
  const chord = subtract(s.to, s.from);
  const q = subtract(p, s.from);
  const ends = Math.min(distance(p, s.from), distance(p, s.to));
  const span = Math.hypot(chord.x, chord.y);
  if (s.kind === 'line' || s.radius > FLAT_RADIUS * span) {
    const along = (chord.x * q.x + chord.y * q.y) / (span * span);
    if (!(along > 0 && along < 1)) return ends;
    // an anticlockwise arc lies to the right of its chord
    const left = s.kind === 'line' ? 0 : -2 * span * Math.tan(s.sweep / 4) * along * (1 - along);
    return Math.abs(cross(chord, q) / span - left);
  }
  // the part of the plane seen from the centre between the arc's ends, which are at most a half turn apart
  const u = subtract(p, s.center);
  const hand = Math.sign(s.sweep);
  const between = hand * cross(subtract(s.from, s.center), u) >= 0 && hand * cross(u, subtract(s.to, s.center)) >= 0;
  return between ? Math.min(ends, Math.abs(Math.hypot(u.x, u.y) - s.radius)) : ends;
}

/** How often an outline winds round a point not on it, anticlockwise positive. */
export const windingNumber = (outline: Outline, p: Point): number => windingOfEdges(segments(outline), p);

/** The same by the outline's edges, for many points: chords by a ray to +x (half open, so that a vertex counts once), then 1 for each arc
 * that has the point between itself and its chord. */
export function windingOfEdges(edges: readonly Segment[], p: Point): number {
  let winding = 0;
  for (const s of edges) {
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
