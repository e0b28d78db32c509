import { circle, type Outline, reverse } from '../geometry/outline.js';
import { distance } from '../geometry/point.js';
import { segments } from '../geometry/segment.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';

/** An outline whose edges are all arcs of one circle, however many, as the two half arcs of `circle`; any other as it is. Centres and radii
 * agree to 1e-6 mm. It keeps its direction. */
export function rounded(outline: Outline): Outline {
  const edges = segments(outline);
  const [first] = edges;
  if (first?.kind !== 'arc') return outline;
  const one = edges.every(
    s =>
      s.kind === 'arc' &&
      s.sweep * first.sweep > 0 &&
      distance(s.center, first.center) < ON_BOUNDARY &&
      Math.abs(s.radius - first.radius) < ON_BOUNDARY,
  );
  const turn = edges.reduce((t, s) => t + (s.kind === 'arc' ? Math.abs(s.sweep) : 0), 0);
  if (!one || Math.abs(turn - 2 * Math.PI) > 1e-6) return outline;
  const whole = circle(first.radius, first.center);
  return first.sweep > 0 ? whole : reverse(whole);
}
