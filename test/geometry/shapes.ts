import {
  arcVertices,
  circle,
  polar,
  type Region,
  type Segment,
  segments,
  solid,
  vertex,
} from '../../lib/geometry/index.js';

/** A sector of a ring from angle a to b, radians, anticlockwise. */
export const sector = (inner: number, outer: number, a: number, b: number): Region =>
  solid([
    ...arcVertices({ x: 0, y: 0 }, outer, a, b - a),
    vertex(polar(outer, b)),
    ...arcVertices({ x: 0, y: 0 }, inner, b, a - b),
    vertex(polar(inner, a)),
  ]);

/** The ring between two circles about a centre. */
export const ring = (inner: number, outer: number, center = { x: 0, y: 0 }): Region => ({
  outer: circle(outer, center),
  openings: [circle(inner, center).map(v => ({ ...v, bulge: -1 }))],
});

/** Lines and arcs of all outlines: what is split only because a bulge holds at most a half turn counts as one, so a circle is one. */
export const entities = (regions: readonly Region[]): number => {
  const goesOn = (a: Segment, b: Segment): boolean =>
    a.kind === 'arc' &&
    b.kind === 'arc' &&
    a.sweep * b.sweep > 0 &&
    Math.abs(a.sweep + b.sweep) > Math.PI &&
    Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y, a.radius - b.radius) < 1e-9 * (1 + a.radius);
  const count = (edges: readonly Segment[]): number =>
    Math.max(1, edges.filter((e, i) => !goesOn(edges.at(i - 1)!, e)).length);
  return regions.flatMap(r => [r.outer, ...r.openings]).reduce((n, o) => n + count(segments(o)), 0);
};
