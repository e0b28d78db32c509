import library, { type Path, type Paths } from 'clipper-lib';
import { type Corner, type FlatLayers, readFlat } from './dxf-outlines.js';

/** What the judge needs of report.json. Lengths mm, turn in degrees. */
export interface Assembled {
  readonly parts: readonly { readonly id: string; readonly thickness: number }[];
  readonly assembly: readonly {
    readonly part: string;
    readonly turn: number;
    readonly x: number;
    readonly y: number;
    readonly z: number;
    readonly flipped: boolean;
  }[];
}

/** Two pieces (by their place in `assembly`) that take the same room at a height. */
export interface Overlap {
  readonly a: number;
  readonly b: number;
  readonly area: number;
  readonly z: number;
}

const CHORD = 0.002; // mm: how far a polygon may stray from an arc
const UNIT = 1e4; // clipper counts in whole numbers: a tenth of a micrometre
const AREA = 0.05; // mm²: overlap up to this is rounding
const SLAB = 0.01; // mm: slabs thinner than this are rounding of depths in layer names

const { Clipper, ClipType, PolyType, PolyFillType } = library;

function clip(type: number, subject: Paths, other: Paths): Paths {
  const clipper = new Clipper();
  clipper.AddPaths(subject, PolyType.ptSubject, true);
  clipper.AddPaths(other, PolyType.ptClip, true);
  const out: Paths = [];
  clipper.Execute(type, out, PolyFillType.pftNonZero, PolyFillType.pftNonZero);
  return out;
}

const subtract = (from: Paths, less: Paths): Paths =>
  less.length > 0 ? clip(ClipType.ctDifference, from, less) : from;

/** Every outline run anticlockwise, so that fills by winding see it as an area. */
function toPaths(outlines: readonly (readonly Corner[])[] | undefined, mirrored = false): Paths {
  return (outlines ?? []).map(o => {
    const path = o.map(([x, y]) => ({ X: Math.round((mirrored ? -x : x) * UNIT), Y: Math.round(y * UNIT) }));
    return Clipper.Orientation(path) ? path : path.reverse();
  });
}

interface Cleared {
  /** heights over the lower face as the part lies in its own file, seen face up */
  readonly low: number;
  readonly high: number;
  readonly area: Paths;
}

interface Solid {
  readonly thickness: number;
  readonly plate: Paths;
  readonly cleared: readonly Cleared[];
  readonly sections: Map<string, Paths>;
}

/** Pockets by depth: POCKET_19-05 is 19.05 mm deep. */
const pockets = (layers: FlatLayers): (readonly [depth: number, outlines: readonly (readonly Corner[])[]])[] =>
  [...layers].filter(([n]) => n.startsWith('POCKET_')).map(([n, o]) => [Number(n.slice(7).replace('-', '.')), o]);

function solidOf(id: string, thickness: number, files: ReadonlyMap<string, string>): Solid {
  const text = files.get(`parts/${id}.dxf`);
  if (text === undefined) throw new Error(`parts/${id}.dxf is missing`);
  const layers = readFlat(text, CHORD);
  const backText = files.get(`parts/${id}-back.dxf`);
  const back = backText === undefined ? new Map() : readFlat(backText, CHORD);
  return {
    thickness,
    plate: subtract(toPaths(layers.get('OUTSIDE')), toPaths(layers.get('INSIDE'))),
    cleared: [
      ...pockets(layers).map(([depth, o]) => ({ low: thickness - depth, high: thickness, area: toPaths(o) })),
      // the back's frame is the other's mirrored
      ...pockets(back).map(([depth, o]) => ({ low: 0, high: depth, area: toPaths(o, true) })),
    ],
    sections: new Map(),
  };
}

/** The part's plan at a height over its lower face. */
function sectionOf(solid: Solid, height: number): { key: string; paths: Paths } {
  const open = solid.cleared.filter(c => c.low < height && height < c.high);
  const key = open.map(c => solid.cleared.indexOf(c)).join();
  const paths =
    solid.sections.get(key) ??
    subtract(
      solid.plate,
      open.flatMap(c => c.area),
    );
  solid.sections.set(key, paths);
  return { key, paths };
}

interface Piece {
  readonly solid: Solid;
  readonly flipped: boolean;
  readonly low: number;
  readonly high: number;
  readonly breaks: readonly number[];
  readonly box: readonly [number, number, number, number];
  readonly move: (paths: Paths) => Paths;
  readonly placed: Map<string, Paths>;
}

function mover(e: Assembled['assembly'][number]): (paths: Paths) => Paths {
  const turn = (e.turn * Math.PI) / 180;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const flip = e.flipped ? -1 : 1;
  const move = (p: Path): Path =>
    p.map(({ X, Y }) => ({
      X: Math.round(c * flip * X - s * Y + e.x * UNIT),
      Y: Math.round(s * flip * X + c * Y + e.y * UNIT),
    }));
  // a mirrored outline runs the other way; all of a section are turned back together
  return paths => (e.flipped ? paths.map(p => move(p).reverse()) : paths.map(move));
}

function boxOf(paths: Paths): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const path of paths)
    for (const { X, Y } of path) {
      if (X < box[0]) box[0] = X;
      if (Y < box[1]) box[1] = Y;
      if (X > box[2]) box[2] = X;
      if (Y > box[3]) box[3] = Y;
    }
  return box;
}

function pieceOf(e: Assembled['assembly'][number], solid: Solid): Piece {
  const move = mover(e);
  const high = e.z + solid.thickness;
  const breaks = solid.cleared.flatMap(c => [c.low, c.high]).map(h => (e.flipped ? high - h : e.z + h));
  const box = boxOf(move(solid.plate));
  return { solid, flipped: e.flipped, low: e.z, high, breaks, box, move, placed: new Map() };
}

function placedSection(piece: Piece, z: number): Paths {
  const { key, paths } = sectionOf(piece.solid, piece.flipped ? piece.high - z : z - piece.low);
  const placed = piece.placed.get(key) ?? piece.move(paths);
  piece.placed.set(key, placed);
  return placed;
}

const perimeter = (path: Path): number =>
  path.reduce((sum, p, i) => {
    const q = path[(i + 1) % path.length]!;
    return sum + Math.hypot(q.X - p.X, q.Y - p.Y);
  }, 0);

/** Area two sections share beyond what chords can feign, mm²: polygons inscribed in one arc may stray across each other all along it. */
function shared(a: Paths, b: Paths): number {
  const both = clip(ClipType.ctIntersection, a, b);
  const area = both.reduce((sum, p) => sum + Clipper.Area(p), 0) / (UNIT * UNIT);
  const around = both.reduce((sum, p) => sum + perimeter(p), 0) / UNIT;
  return area > AREA + CHORD * around ? area : 0;
}

const apart = (a: Piece, b: Piece): boolean =>
  Math.min(a.high, b.high) - Math.max(a.low, b.low) < SLAB ||
  a.box[0] >= b.box[2] ||
  b.box[0] >= a.box[2] ||
  a.box[1] >= b.box[3] ||
  b.box[1] >= a.box[3];

function worst(a: Piece, b: Piece): { area: number; z: number } {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  const heights = [low, ...[...a.breaks, ...b.breaks].filter(z => z > low && z < high), high].sort((p, q) => p - q);
  let found = { area: 0, z: 0 };
  heights.slice(1).forEach((top, i) => {
    const z = (heights[i]! + top) / 2;
    if (top - heights[i]! < SLAB) return;
    const area = shared(placedSection(a, z), placedSection(b, z));
    if (area > found.area) found = { area, z };
  });
  return found;
}

/** Puts written parts together as the report says and finds those that take the same room.
 * @param files written DXF text by path: `parts/ID.dxf`, `parts/ID-back.dxf`
 * @returns none for disjoint solids. Outlines read by dxf-parser, areas compared by clipper-lib, neither the project's own. */
export function overlaps(files: ReadonlyMap<string, string>, report: Assembled): Overlap[] {
  const solids = new Map(report.parts.map(p => [p.id, solidOf(p.id, p.thickness, files)]));
  const pieces = report.assembly.map(e => pieceOf(e, solids.get(e.part)!));
  return pieces.flatMap((first, a) =>
    pieces.slice(a + 1).flatMap((second, k) => {
      if (apart(first, second)) return [];
      const { area, z } = worst(first, second);
      return area > 0 ? [{ a, b: a + 1 + k, area, z }] : [];
    }),
  );
}
