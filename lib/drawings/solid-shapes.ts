import { flatten } from '../geometry/flatten.js';
import { locate } from '../geometry/locate.js';
import { circle, type Outline, type Polyline, polygon, type Region } from '../geometry/outline.js';
import { cross, type Point, subtract } from '../geometry/point.js';
import { widthAt } from '../parts/bevel.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { throughHoles } from './front-faces.js';
import type { PictureShape } from './picture.js';
import { type Slab, slabsOf } from './slabs.js';
import { dot3, type Point3, seenAt, type View } from './view.js';
import { HOLE_TONE, INK, shaded } from './wood.js';

/** A part made ready to be drawn from any side: outlines as polygons. Heights over its back face. */
export interface Solid {
  readonly part: Part;
  readonly slabs: readonly FlatSlab[];
}

interface FlatSlab {
  readonly low: Mm;
  readonly high: Mm;
  /** polygons of the section, the wood on their left */
  readonly around: readonly (readonly Point[])[];
  readonly above: readonly (readonly Point[])[];
  readonly below: readonly (readonly Point[])[];
  /** ends of through holes in what is open above and below */
  readonly holesAbove: readonly (readonly Point[])[];
  readonly holesBelow: readonly (readonly Point[])[];
}

const outlinesOf = (regions: readonly Region[]): Outline[] => regions.flatMap(r => [r.outer, ...r.openings]);

/** A part as polygons. @param tolerance how far arcs may stray, mm @throws GeometryFailure */
export function solidOf(part: Part, tolerance: Mm): Solid {
  const flat = (regions: readonly Region[]): Point[][] => outlinesOf(regions).map(o => flatten(o, tolerance));
  const holesIn = (regions: readonly Region[]): Point[][] =>
    throughHoles(part)
      .filter(d => regions.some(r => locate(r, d.at) === 'inside'))
      .map(d => flatten(circle(d.diameter / 2, d.at), tolerance));
  const slabs = slabsOf(part).map((s: Slab): FlatSlab => {
    const { low, high, wood, above, below } = s;
    const ends = { holesAbove: holesIn(above), holesBelow: holesIn(below) };
    return { low, high, around: flat(wood), above: flat(above), below: flat(below), ...ends };
  });
  return { part, slabs };
}

/** Where a solid is, how it is looked at, how it is painted. */
export interface Showing {
  readonly view: View;
  /** from a point of the part and a height over its back face to its place in space */
  readonly place: (p: Point, height: Mm) => Point3;
  readonly tone: number;
  /** width of lines, mm */
  readonly line: Mm;
}

/** A stretch of a slab's wall that is seen, without a sharp corner in it. */
interface Wall {
  readonly bottom: readonly Point[];
  readonly top: readonly Point[];
  /** how near the one who looks it is */
  readonly near: Mm;
  readonly light: number;
}

/** Two neighbouring pieces of wall that turn by more than this, radians, meet in an edge that is drawn. */
const SHARP = 0.45;
/** Walls seen at less than this share of their size are not drawn. */
const EDGE_ON = 1e-9;

/** Light from the upper left, in the view's own directions; brightness 0.72 to 1.02. */
function brightness({ view }: Showing, a: Point3, b: Point3, c: Point3): number {
  const u = { x: b.x - a.x, y: b.y - a.y, z: b.z - a.z };
  const v = { x: c.x - a.x, y: c.y - a.y, z: c.z - a.z };
  const n = { x: u.y * v.z - u.z * v.y, y: u.z * v.x - u.x * v.z, z: u.x * v.y - u.y * v.x };
  const size = Math.hypot(n.x, n.y, n.z) || 1;
  const [right, up, towards] = [dot3(n, view.right) / size, dot3(n, view.up) / size, dot3(n, view.towards) / size];
  return 0.87 + 0.15 * (-0.55 * right + 0.6 * up + 0.58 * towards) - 0.1 * Math.max(0, right);
}

interface Quad extends Wall {
  readonly from: Point;
  readonly to: Point;
}

/** The wall over an edge; undefined where it looks away. */
function quad(from: Point, to: Point, slab: FlatSlab, part: Part, s: Showing): Quad | undefined {
  const kept = insets(part, slab);
  const corners = [kept.low(from), kept.low(to), kept.high(to), kept.high(from)] as const;
  const heights = [slab.low, slab.low, slab.high, slab.high] as const;
  const [a, b, c, d] = corners.map((p, i) => s.place(p, heights[i]!)) as [Point3, Point3, Point3, Point3];
  const [p, q, r, t] = [a, b, c, d].map(x => seenAt(s.view, x)) as [Point, Point, Point, Point];
  const size = cross(subtract(r, p), subtract(t, q)) / 2;
  if (size <= EDGE_ON * (Math.abs(p.x) + Math.abs(p.y) + 1)) return undefined;
  const near = (dot3(a, s.view.towards) + dot3(c, s.view.towards)) / 2;
  return { from, to, bottom: [p, q], top: [t, r], near, light: brightness(s, a, b, d) };
}

/** Long edges that lean in: where a point of the outline is at a slab's lower and upper end. */
function insets(part: Part, slab: FlatSlab): { low: (p: Point) => Point; high: (p: Point) => Point } {
  const at = (height: Mm): ((p: Point) => Point) => {
    if (!part.bevel) return p => p;
    const [least, greatest] = widthAt(part, height);
    const middle = (least + greatest) / 2;
    return p => ({ x: Math.max(Math.min(p.x, Math.max(greatest, middle)), Math.min(least, middle)), y: p.y });
  };
  return { low: at(slab.low), high: at(slab.high) };
}

const turnBetween = (a: Quad, b: Quad): number => {
  const [u, v] = [subtract(a.to, a.from), subtract(b.to, b.from)];
  return Math.abs(Math.atan2(cross(u, v), u.x * v.x + u.y * v.y));
};

const joined = (a: Quad, b: Quad): Quad => ({
  ...a,
  to: b.to,
  from: b.from,
  bottom: [...a.bottom, b.bottom[1]!],
  top: [...a.top, b.top[1]!],
  near: Math.max(a.near, b.near),
  light: (a.light + b.light) / 2,
});

/** The walls along a polygon that are seen; each stretch without a sharp corner is one. */
function walls(around: readonly Point[], slab: FlatSlab, part: Part, s: Showing): Wall[] {
  const quads = around.map((p, i) => quad(p, around[(i + 1) % around.length]!, slab, part, s));
  // begin behind a gap, so that no stretch is cut where the polygon begins
  const first = quads.findIndex((q, i) => q && !quads.at(i - 1));
  const ordered = first > 0 ? [...quads.slice(first), ...quads.slice(0, first)] : quads;
  const out: Quad[] = [];
  let open = false;
  for (const q of ordered) {
    const last = out.at(-1);
    if (q && open && last && turnBetween(last, q) < SHARP) out[out.length - 1] = joined(last, q);
    else if (q) out.push(q);
    open = q !== undefined;
  }
  return out;
}

/** A wall's painting: its surface, its ends, and the edges at the solid's own lower and upper end. */
function wallShapes(wall: Wall, slab: FlatSlab, solid: Solid, s: Showing): PictureShape[] {
  const { bottom, top } = wall;
  const ink = { stroke: INK, width: s.line };
  const fill = shaded(s.tone, wall.light);
  const surface = polygon([...bottom, ...[...top].reverse()]);
  const lowest = slab === solid.slabs[0];
  const highest = slab === solid.slabs.at(-1);
  if (lowest && highest) return [{ closed: [surface], open: [], paint: { fill, ...ink } }];
  const ends: Polyline[] = [polygon([bottom[0]!, top[0]!]), polygon([bottom.at(-1)!, top.at(-1)!])];
  const rims = [...(lowest ? [polygon(bottom)] : []), ...(highest ? [polygon(top)] : [])];
  return [
    { closed: [surface], open: [], paint: { fill, stroke: fill, width: s.line } },
    { closed: [], open: [...ends, ...rims], paint: ink },
  ];
}

/** A level face of a slab, its holes dark. */
function faceShapes(
  outlines: readonly (readonly Point[])[],
  holes: readonly (readonly Point[])[],
  at: (p: Point) => Point,
  tone: number,
  s: Showing,
): PictureShape[] {
  if (outlines.length === 0) return [];
  const ink = { stroke: INK, width: s.line };
  const shape = (list: readonly (readonly Point[])[], fill: number): PictureShape => ({
    closed: list.map(o => polygon(o.map(at))),
    open: [],
    paint: { ...ink, fill },
  });
  return holes.length === 0 ? [shape(outlines, tone)] : [shape(outlines, tone), shape(holes, HOLE_TONE)];
}

/** A solid as seen: walls, then the face that closes them, slab by slab from the farthest; what looks away is left out. */
export function solidShapes(solid: Solid, s: Showing): PictureShape[] {
  const { part, slabs } = solid;
  const up = s.place({ x: 0, y: 0 }, 1);
  const base = s.place({ x: 0, y: 0 }, 0);
  const facing = dot3({ x: up.x - base.x, y: up.y - base.y, z: up.z - base.z }, s.view.towards);
  const ordered = facing >= 0 ? slabs : [...slabs].reverse();
  const lit = shaded(s.tone, Math.abs(facing) > 0.9 ? 1 : 0.96);
  return ordered.flatMap(slab => {
    const kept = insets(part, slab);
    const seen = slab.around.flatMap(a => walls(a, slab, part, s)).sort((a, b) => a.near - b.near);
    const sides = seen.flatMap(w => wallShapes(w, slab, solid, s));
    if (Math.abs(facing) < 1e-6) return sides;
    const height = facing > 0 ? slab.high : slab.low;
    const inset = facing > 0 ? kept.high : kept.low;
    const outermost = height === (facing > 0 ? slabs.at(-1)!.high : slabs[0]!.low);
    const at = (p: Point): Point => seenAt(s.view, s.place(inset(p), height));
    const face = facing > 0 ? slab.above : slab.below;
    const holes = facing > 0 ? slab.holesAbove : slab.holesBelow;
    return [...sides, ...faceShapes(face, holes, at, outermost ? lit : shaded(lit, 0.86), s)];
  });
}
