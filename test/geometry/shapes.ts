import { arcVertices, circle, type Outline, polar, type Region, solid, vertex } from '../../lib/geometry/index.js';

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

/** Vertices of all outlines, a circle's two half arcs counted as one. */
export const entities = (regions: readonly Region[]): number => {
  const count = (o: Outline): number => (o.length === 2 && o.every(v => Math.abs(v.bulge) === 1) ? 1 : o.length);
  return regions.flatMap(r => [r.outer, ...r.openings]).reduce((n, o) => n + count(o), 0);
};
