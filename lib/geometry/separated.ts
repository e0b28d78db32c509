import type { Mm } from '../units/length.js';
import type { Region } from './outline.js';
import { dot, type Point, subtract } from './point.js';
import { type Segment, segments } from './segment.js';

const TURN = 2 * Math.PI;

/** How far an edge reaches in a direction (a unit vector) from the origin, mm. */
function reach(s: Segment, direction: Point): Mm {
  const ends = Math.max(dot(s.from, direction), dot(s.to, direction));
  if (s.kind === 'line') return ends;
  const angle = Math.atan2(direction.y, direction.x);
  const along = s.sweep > 0 ? angle - s.start : s.start - angle;
  return ((along % TURN) + TURN) % TURN <= Math.abs(s.sweep) ? dot(s.center, direction) + s.radius : ends;
}

const reaches = (edges: readonly Segment[], direction: Point): Mm =>
  edges.reduce((most, s) => Math.max(most, reach(s, direction)), -Infinity);

/** Whether a straight edge of the first has all of the first on one side and all of the second on the other. */
function byEdge(first: readonly Segment[], second: readonly Segment[], slack: Mm): boolean {
  return first.some(s => {
    if (s.kind !== 'line') return false;
    const along = subtract(s.to, s.from);
    const length = Math.hypot(along.x, along.y);
    const outward = { x: along.y / length, y: -along.x / length };
    const inward = { x: -outward.x, y: -outward.y };
    return (
      -reaches(second, inward) >= dot(s.from, outward) - slack &&
      reaches(first, outward) <= dot(s.from, outward) + slack
    );
  });
}

/** Whether a straight edge of either keeps the regions of one apart from those of the other; they may overlap by `slack` (mm) along it.
 * Cheap; where it says no they may still be disjoint. */
export function separated(first: readonly Region[], second: readonly Region[], slack: Mm): boolean {
  const a = first.flatMap(r => segments(r.outer));
  const b = second.flatMap(r => segments(r.outer));
  return byEdge(a, b, slack) || byEdge(b, a, slack);
}
