import type { Mm, Radians } from '../units/length.js';
import { ORIGIN, type Point, polar } from './point.js';

/** A corner of an outline, and how the edge from it to the next corner curves.
 * `bulge` = tan(sweep / 4): 0 a line, positive anticlockwise, |bulge| <= 1 (at most a half circle).
 * Source: the bulge of DXF LWPOLYLINE (group code 42), DXF reference. */
export interface Vertex extends Point {
  readonly bulge: number;
  /** the edge that starts here meets another piece: the name of the joint; see mates.ts */
  readonly mate?: string;
}

/** A closed curve of lines and true arcs: the last vertex joins the first, so it cannot be open. Two half arcs are a circle. */
export type Outline = readonly Vertex[];

/** An open run of lines and arcs, for marks and lettering; the last vertex's bulge is not used. */
export type Polyline = readonly Vertex[];

/** An area: an anticlockwise outer outline less its clockwise openings. */
export interface Region {
  readonly outer: Outline;
  readonly openings: readonly Outline[];
}

export const vertex = (p: Point, bulge = 0, mate?: string): Vertex =>
  mate === undefined ? { x: p.x, y: p.y, bulge } : { x: p.x, y: p.y, bulge, mate };

/** The bulge of an arc of the given signed sweep, -pi to pi. */
export const bulgeOf = (sweep: Radians): number => Math.tan(sweep / 4);

/** A closed polygon through the points, in their order. */
export const polygon = (points: readonly Point[]): Outline => points.map(p => vertex(p));

/** A circle as two half arcs, anticlockwise, starting on the +x side. @param radius mm, above 0 */
export const circle = (radius: Mm, center: Point = ORIGIN): Outline => [
  { x: center.x + radius, y: center.y, bulge: 1 },
  { x: center.x - radius, y: center.y, bulge: 1 },
];

/** A rectangle, anticlockwise from its lower left corner. */
export const rectangle = (x0: Mm, y0: Mm, x1: Mm, y1: Mm): Outline =>
  polygon([
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ]);

/** The same curve run the other way. */
export function reverse(outline: Outline): Outline {
  const n = outline.length;
  return outline.map((_, i) => {
    const at = outline[(2 * n - 1 - i) % n]!;
    const before = outline[(2 * n - 2 - i) % n]!;
    return vertex(at, -before.bulge, before.mate);
  });
}

/** The same open run the other way. */
export const reversePolyline = (line: Polyline): Polyline =>
  line.map((_, i) => {
    const k = line.length - 1 - i;
    const before = line[k - 1];
    return before ? vertex(line[k]!, -before.bulge, before.mate) : vertex(line[k]!);
  });

/** Bulge vertices along an arc of any sweep up to a full turn, without its end point: split so that none passes a half circle. */
export function arcVertices(center: Point, radius: Mm, from: Radians, sweep: Radians): Vertex[] {
  const parts = Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - 1e-12));
  return Array.from({ length: parts }, (_, i) =>
    vertex(polar(radius, from + (sweep * i) / parts, center), bulgeOf(sweep / parts)),
  );
}

/** A region without openings. */
export const solid = (outer: Outline): Region => ({ outer, openings: [] });

/** If an outline is a full circle (two half arcs), its centre and radius. */
export function asCircle(outline: Outline): { readonly center: Point; readonly radius: Mm } | undefined {
  const [a, b] = outline;
  if (outline.length !== 2 || !a || !b || Math.abs(a.bulge) !== 1 || a.bulge !== b.bulge) return undefined;
  return { center: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, radius: Math.hypot(a.x - b.x, a.y - b.y) / 2 };
}

/** A sector of a ring about the origin, anticlockwise, outer arc first: two arcs and two radial lines.
 * @param inner mm, above 0, below outer   @param sweep radians, above 0, at most pi
 * Source: annular sector, Machinery's Handbook, "Areas and dimensions of plane figures". */
export function annularSector(inner: Mm, outer: Mm, from: Radians, sweep: Radians): Outline {
  const b = bulgeOf(sweep);
  return [
    vertex(polar(outer, from), b),
    vertex(polar(outer, from + sweep)),
    vertex(polar(inner, from + sweep), -b),
    vertex(polar(inner, from)),
  ];
}

/** Where a strip of parallel sides along +x crosses a ring about the origin: two lines and two arcs, anticlockwise.
 * @param width mm, below 2 * inner */
export function stripAcrossRing(width: Mm, inner: Mm, outer: Mm): Outline {
  const half = width / 2;
  const corner = (radius: Mm, y: Mm): Point => ({ x: Math.sqrt(radius * radius - half * half), y });
  const bulge = (radius: Mm): number => bulgeOf(2 * Math.asin(half / radius));
  return [
    vertex(corner(inner, -half)),
    vertex(corner(outer, -half), bulge(outer)),
    vertex(corner(outer, half)),
    vertex(corner(inner, half), -bulge(inner)),
  ];
}
