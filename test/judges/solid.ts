import library, { type Path, type Paths } from 'clipper-lib';
import { type Corner, type FlatLayers, readFlat } from './dxf-outlines.js';
import { strips } from './strips.js';

/** What the judge needs of a part in report.json; mm, degrees. */
export interface ReportedPart {
  readonly id: string;
  readonly thickness: number;
  readonly bevel?: number;
}

export const CHORD = 0.002; // mm: how far a polygon may stray from an arc
export const UNIT = 1e4; // clipper counts in whole numbers: a tenth of a micrometre

const { Clipper, ClipType, PolyType, PolyFillType } = library;

export function clip(type: number, subject: Paths, other: Paths): Paths {
  const clipper = new Clipper();
  clipper.AddPaths(subject, PolyType.ptSubject, true);
  clipper.AddPaths(other, PolyType.ptClip, true);
  const out: Paths = [];
  clipper.Execute(type, out, PolyFillType.pftNonZero, PolyFillType.pftNonZero);
  return out;
}

const subtract = (from: Paths, less: Paths): Paths =>
  less.length > 0 ? clip(ClipType.ctDifference, from, less) : from;

const anticlockwise = (path: Path): Path => (Clipper.Orientation(path) ? path : path.reverse());

/** Every outline run anticlockwise, so that fills by winding see it as an area. */
function toPaths(outlines: readonly (readonly Corner[])[] | undefined, mirrored = false): Paths {
  return (outlines ?? []).map(o => {
    const path = o.map(([x, y]) => ({ X: Math.round((mirrored ? -x : x) * UNIT), Y: Math.round(y * UNIT) }));
    return anticlockwise(path);
  });
}

/** The area of a pocket layer: an outline inside another is an island left standing in it. */
function areaOf(outlines: readonly (readonly Corner[])[], mirrored = false): Paths {
  const clipper = new Clipper();
  clipper.AddPaths(toPaths(outlines, mirrored), PolyType.ptSubject, true);
  const out: Paths = [];
  clipper.Execute(ClipType.ctUnion, out, PolyFillType.pftEvenOdd, PolyFillType.pftEvenOdd);
  return out;
}

interface Cleared {
  /** heights over the lower face as the part lies in its own file, seen face up */
  readonly low: number;
  readonly high: number;
  readonly area: Paths;
}

export interface Solid {
  readonly thickness: number;
  /** how far the edges at least and greatest x come in for each mm towards the back face */
  readonly lean: number;
  readonly plate: Paths;
  readonly cleared: readonly Cleared[];
  readonly sections: Map<string, Paths>;
}

/** Pockets by depth: POCKET_19-05 is 19.05 mm deep. */
const pockets = (layers: FlatLayers): (readonly [depth: number, outlines: readonly (readonly Corner[])[]])[] =>
  [...layers].filter(([n]) => n.startsWith('POCKET_')).map(([n, o]) => [Number(n.slice(7).replace('-', '.')), o]);

export function solidOf({ id, thickness, bevel = 0 }: ReportedPart, files: ReadonlyMap<string, string>): Solid {
  const text = files.get(`parts/${id}.dxf`);
  if (text === undefined) throw new Error(`parts/${id}.dxf is missing`);
  const layers = readFlat(text, CHORD);
  const backText = files.get(`parts/${id}-back.dxf`);
  const back = backText === undefined ? new Map() : readFlat(backText, CHORD);
  return {
    thickness,
    lean: Math.tan((bevel * Math.PI) / 180),
    plate: subtract(toPaths(layers.get('OUTSIDE')), toPaths(layers.get('INSIDE'))),
    cleared: [
      ...pockets(layers).map(([depth, o]) => ({ low: thickness - depth, high: thickness, area: areaOf(o) })),
      // the back's frame is the other's mirrored
      ...pockets(back).map(([depth, o]) => ({ low: 0, high: depth, area: areaOf(o, true) })),
    ],
    sections: new Map(),
  };
}

/** Everything between two x, as wide as the part is at some depth under its front. */
function between(left: number, right: number): Path {
  const far = 1e9;
  return [
    { X: left, Y: -far },
    { X: right, Y: -far },
    { X: right, Y: far },
    { X: left, Y: far },
  ];
}

/** The part's plan at a height over its lower face, in its file's frame. @param depth of that height under the front face */
export function sectionOf(solid: Solid, height: number, depth: number): { key: string; paths: Paths } {
  const open = solid.cleared.filter(c => c.low < height && height < c.high);
  const key = `${open.map(c => solid.cleared.indexOf(c)).join()} ${solid.lean && depth}`;
  const known = solid.sections.get(key);
  if (known) return { key, paths: known };
  const less = open.flatMap(c => c.area);
  const square = subtract(solid.plate, less);
  const [left, , right] = boxOf(solid.plate);
  const inset = solid.lean * depth * UNIT;
  const paths = solid.lean ? clip(ClipType.ctIntersection, square, [between(left + inset, right - inset)]) : square;
  solid.sections.set(key, paths);
  return { key, paths };
}

/** A stood-up part's plan at a level of its file's y: x as in the file, its back at y = 0, its front at -thickness. */
export function stoodSection(solid: Solid, level: number, flipped: boolean): Paths {
  const { thickness, lean, plate, cleared } = solid;
  // depths behind the front: the file shows the face up that is the back where it is flipped
  const y = (height: number): number => -UNIT * (flipped ? thickness - height : height);
  const whole = strips(plate, level, y(0), y(thickness)).map(anticlockwise);
  const less = cleared.flatMap(c => strips(c.area, level, y(c.low), y(c.high))).map(anticlockwise);
  const square = subtract(whole, less);
  if (!lean) return square;
  const [left, , right] = boxOf(plate);
  const inset = lean * thickness * UNIT;
  const trapezium = [
    { X: left, Y: -thickness * UNIT },
    { X: right, Y: -thickness * UNIT },
    { X: right - inset, Y: 0 },
    { X: left + inset, Y: 0 },
  ];
  return clip(ClipType.ctIntersection, square, [trapezium]);
}

export function boxOf(paths: Paths): [number, number, number, number] {
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
