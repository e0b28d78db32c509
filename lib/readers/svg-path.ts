import { refuse, requireRange } from '../findings/unusable.js';
import type { ArcFit } from '../geometry/arc-spline.js';
import { arcsFromBezier } from '../geometry/curves.js';
import { arcsFromEllipse } from '../geometry/ellipse.js';
import { type Vertex, vertex } from '../geometry/outline.js';
import { distance, type Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { type Affine, placed, placedEllipse } from './affine.js';
import { BRIDGE } from './chain.js';
import { drawingOf, type ReadDrawing } from './drawing.js';
import type { Piece } from './piece.js';
import { centered } from './svg-arc.js';
import { type PathCommand, pathCommands } from './svg-tokens.js';

export interface SvgPathOptions {
  /** mm to one unit of the path; 1 unless given */
  readonly scale?: number;
  /** y of the path points down, as SVG has it, and is turned to point up; true unless given */
  readonly yDown?: boolean;
  /** mm: how far arcs laid for curves may stray from them; 0.01 unless given */
  readonly tolerance?: Mm;
  /** mm: ends up to this far apart are brought together; see `chain` */
  readonly bridge?: Mm;
}

/** How far arcs may stray from a file's curves, unless said otherwise. */
export const CURVE_TOLERANCE: Mm = 0.01;

/** The pen while reading: where it is, in the path's own units, and what the next smooth command mirrors. */
interface Pen {
  at: Point;
  start: Point;
  /** the last control point of a cubic or quadratic just drawn */
  control: Point | undefined;
  controlOf: 'C' | 'Q' | undefined;
  vertices: Vertex[];
  /** the command the subpath starts with, counted from 1 */
  first: number;
}

interface Paper {
  readonly pieces: Piece[];
  /** from the path's units to mm, y up */
  readonly map: Affine;
  readonly place: (p: Point) => Point;
  readonly tolerance: Mm;
  /** what the path is, for the sources of its pieces; empty where there is but one */
  readonly name: string;
  deviation: Mm;
}

const finish = (pen: Pen, paper: Paper, closed: boolean): void => {
  const line = [...pen.vertices, vertex(paper.place(pen.at))];
  pen.vertices = [];
  if (line.length < 2) return;
  const [a, b] = [line[0]!, line.at(-1)!];
  const meets = a.x === b.x && a.y === b.y;
  const source = `${paper.name}subpath from command ${pen.first}`;
  paper.pieces.push(
    closed ? { line: meets ? line.slice(0, -1) : line, closed: true, source } : { line, closed: false, source },
  );
};

const lineTo = (pen: Pen, paper: Paper, to: Point): void => {
  if (distance(pen.at, to) > 0) pen.vertices.push(vertex(paper.place(pen.at)));
  pen.at = to;
};

const lay = (pen: Pen, paper: Paper, fit: ArcFit, to: Point): void => {
  pen.vertices.push(...fit.line.slice(0, -1).map((v, i) => (i === 0 ? vertex(paper.place(pen.at), v.bulge) : v)));
  paper.deviation = Math.max(paper.deviation, fit.deviation);
  pen.at = to;
};

function curveTo(pen: Pen, paper: Paper, controls: readonly Point[]): void {
  const all = [pen.at, ...controls];
  const to = controls.at(-1)!;
  if (all.every(p => distance(p, pen.at) === 0)) return;
  lay(pen, paper, arcsFromBezier(all.map(paper.place), paper.tolerance), to);
}

function arcTo(pen: Pen, paper: Paper, values: readonly number[], to: Point): void {
  const [rx, ry, degrees, large, sweep] = values as [number, number, number, number, number];
  if (distance(pen.at, to) === 0) return;
  const arc = centered({
    from: pen.at,
    to,
    rx,
    ry,
    turn: (degrees * Math.PI) / 180,
    large: large === 1,
    anticlockwise: sweep === 1,
  });
  if (arc) lay(pen, paper, arcsFromEllipse(placedEllipse(paper.map, arc), paper.tolerance), to);
  else lineTo(pen, paper, to);
}

/** The control a smooth command starts with: the last one mirrored in the pen's place, after a curve of its own kind. */
const mirrored = (pen: Pen, kind: 'C' | 'Q'): Point =>
  pen.control && pen.controlOf === kind ? { x: 2 * pen.at.x - pen.control.x, y: 2 * pen.at.y - pen.control.y } : pen.at;

function draw(pen: Pen, paper: Paper, command: PathCommand, index: number): void {
  const kind = command.letter.toUpperCase();
  const base = command.letter === kind ? { x: 0, y: 0 } : pen.at;
  const v = command.values;
  const point = (i: number): Point => ({ x: base.x + v[i]!, y: base.y + v[i + 1]! });
  let control: Point | undefined;
  let controlOf: 'C' | 'Q' | undefined;
  if (kind === 'C' || kind === 'S') {
    const [c1, c2, to] = kind === 'C' ? [point(0), point(2), point(4)] : [mirrored(pen, 'C'), point(0), point(2)];
    curveTo(pen, paper, [c1, c2, to]);
    [control, controlOf] = [c2, 'C'];
  } else if (kind === 'Q' || kind === 'T') {
    const [c, to] = kind === 'Q' ? [point(0), point(2)] : [mirrored(pen, 'Q'), point(0)];
    curveTo(pen, paper, [c, to]);
    [control, controlOf] = [c, 'Q'];
  } else if (kind === 'M') {
    finish(pen, paper, false);
    pen.at = point(0);
    pen.start = pen.at;
    pen.first = index + 1;
  } else if (kind === 'Z') {
    finish(pen, paper, true);
    pen.at = pen.start;
    pen.first = index + 2;
  } else if (kind === 'A') arcTo(pen, paper, v, point(5));
  else if (kind === 'H') lineTo(pen, paper, { x: base.x + v[0]!, y: pen.at.y });
  else if (kind === 'V') lineTo(pen, paper, { x: pen.at.x, y: base.y + v[0]! });
  else lineTo(pen, paper, point(0));
  pen.control = control;
  pen.controlOf = controlOf;
}

/** The pieces of SVG path data under a map to mm, and how far arcs laid for its curves stray. @param name what its pieces' sources begin with
 * @throws Unusable with the character's place */
export function pathPieces(
  data: string,
  map: Affine,
  tolerance: Mm,
  name = '',
): { readonly pieces: readonly Piece[]; readonly deviation: Mm } {
  const paper: Paper = { pieces: [], map, place: p => placed(map, p), tolerance, name, deviation: 0 };
  const origin = { x: 0, y: 0 };
  const pen: Pen = { at: origin, start: origin, control: undefined, controlOf: undefined, vertices: [], first: 1 };
  pathCommands(data).forEach((command, i) => {
    if (command.values.some(n => !Number.isFinite(n)))
      refuse('path data', `command ${i + 1} has a number out of range`, 'finite numbers');
    draw(pen, paper, command, i);
  });
  finish(pen, paper, false);
  return paper;
}

/** SVG path data (the `d` of a path) as outlines of lines and true arcs: all commands M L H V C S Q T A Z, absolute and relative; circular arcs
 * stay the circles they are, Béziers and elliptical arcs become arcs within the tolerance. Subpaths closed by Z or by their ends are outlines,
 * the rest is chained like any drawing's pieces; nesting decides what is an opening (the even-odd rule).
 * @param data path data only: transforms, units and the viewBox around it are the caller's, by `scale`
 * @throws Unusable with the character's place, or naming an option; GeometryFailure 'self-crossing'
 * Source: W3C, Scalable Vector Graphics (SVG) 2, chapter 9 "Paths". */
export function readSvgPath(data: string, options: SvgPathOptions = {}): ReadDrawing {
  const { scale = 1, yDown = true, tolerance = CURVE_TOLERANCE, bridge = BRIDGE } = options;
  requireRange('scale', scale, 1e-9, 1e9, 'mm a unit');
  const map = { a: scale, b: 0, c: 0, d: yDown ? -scale : scale, e: 0, f: 0 };
  const { pieces, deviation } = pathPieces(data, map, tolerance);
  return drawingOf(pieces, bridge, deviation, []);
}
