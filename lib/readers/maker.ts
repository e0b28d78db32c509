import { refuse } from '../findings/unusable.js';
import { arcVertices, asCircle, circle, type Outline, type Region, vertex } from '../geometry/outline.js';
import { type Point, polar } from '../geometry/point.js';
import { type ArcSegment, type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { BRIDGE } from './chain.js';
import { drawingOf, type ReadDrawing } from './drawing.js';
import type { Piece } from './piece.js';

/** A point as makerjs has it: two numbers by index. */
export interface MakerPoint {
  readonly [index: number]: number;
}

/** A path of a makerjs model: a line, a circle or an arc (anticlockwise, degrees). */
export interface MakerPath {
  readonly type: string;
  readonly origin: MakerPoint;
  readonly end?: MakerPoint;
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly layer?: string;
}

/** The data of a makerjs model: what its builders return and its functions take. */
export interface MakerModel {
  readonly origin?: MakerPoint;
  readonly units?: string;
  readonly paths?: { readonly [id: string]: MakerPath };
  readonly models?: { readonly [id: string]: MakerModel };
}

/** mm to one unit; exact. Source: makerjs `unitType`; the inch of the international yard and pound agreement, 1959. */
const UNITS: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, inch: 25.4, foot: 304.8 };

const point = (p: MakerPoint | undefined, name: string): Point => {
  const [x, y] = [p?.[0], p?.[1]];
  if (!Number.isFinite(x) || !Number.isFinite(y)) refuse(name, `[${x}, ${y}]`, 'two finite numbers');
  return { x: x!, y: y! };
};

const number = (value: number | undefined, name: string): number =>
  Number.isFinite(value) ? value! : refuse(name, value, 'a finite number');

/** Where a model's own frame lies: mm to a unit, and the place of its origin, mm. */
interface Frame {
  readonly scale: number;
  readonly at: Point;
}

const placed = (p: Point, frame: Frame): Point => ({
  x: frame.at.x + p.x * frame.scale,
  y: frame.at.y + p.y * frame.scale,
});

/** A path as a piece; undefined for a kind this reader does not know. */
function pieceOf(path: MakerPath, frame: Frame, name: string): Piece | undefined {
  const origin = placed(point(path.origin, `${name}.origin`), frame);
  if (path.type === 'line') {
    const end = placed(point(path.end, `${name}.end`), frame);
    return { line: [vertex(origin), vertex(end)], closed: false, source: name };
  }
  if (path.type !== 'circle' && path.type !== 'arc') return undefined;
  const radius = number(path.radius, `${name}.radius`) * frame.scale;
  if (!(radius > 0)) refuse(`${name}.radius`, path.radius, 'above 0');
  if (path.type === 'circle') return { line: circle(radius, origin), closed: true, source: name };
  const start = number(path.startAngle, `${name}.startAngle`);
  const turn = (((number(path.endAngle, `${name}.endAngle`) - start) % 360) + 360) % 360;
  if (turn === 0) return { line: circle(radius, origin), closed: true, source: name };
  const radians = Math.PI / 180;
  const line = arcVertices(origin, radius, start * radians, turn * radians);
  return { line: [...line, vertex(polar(radius, (start + turn) * radians, origin))], closed: false, source: name };
}

/** Every path of a model and the models in it, in their order. */
function gather(model: MakerModel, frame: Frame, name: string, pieces: Piece[], skipped: string[]): void {
  const own = model.origin ? placed(point(model.origin, `${name}.origin`), frame) : frame.at;
  const here = { scale: frame.scale, at: own };
  for (const [id, path] of Object.entries(model.paths ?? {})) {
    const piece = pieceOf(path, here, `${name}.paths.${id}`);
    if (piece) pieces.push(piece);
    else skipped.push(`${name}.paths.${id}: a path of type ${path.type}`);
  }
  for (const [id, child] of Object.entries(model.models ?? {}))
    gather(child, here, `${name}.models.${id}`, pieces, skipped);
}

export interface MakerOptions {
  /** mm: ends up to this far apart are brought together; see `chain` */
  readonly bridge?: Mm;
}

/** A makerjs model, its child models included, as regions: lines and arcs as they are, holes by nesting. The top model's units count
 * (mm where it has none). Only the model's data are read: makerjs itself is not loaded.
 * @throws Unusable naming the path and field; GeometryFailure 'self-crossing' with the place */
export function readMaker(model: MakerModel, options: MakerOptions = {}): ReadDrawing {
  const scale = UNITS[model.units ?? 'mm'] ?? refuse('model.units', model.units, Object.keys(UNITS).join(', '));
  const pieces: Piece[] = [];
  const skipped: string[] = [];
  gather(model, { scale, at: { x: 0, y: 0 } }, 'model', pieces, skipped);
  return drawingOf(pieces, options.bridge ?? BRIDGE, 0, skipped);
}

const pair = (p: Point): [number, number] => [p.x, p.y];
const degrees = (radians: number): number => (radians * 180) / Math.PI;

function arcPath(s: ArcSegment): MakerPath {
  const [from, to] = s.sweep > 0 ? [s.start, s.start + s.sweep] : [s.start + s.sweep, s.start];
  const turn = from < 0 ? 2 * Math.PI : 0;
  return {
    type: 'arc',
    origin: pair(s.center),
    radius: s.radius,
    startAngle: degrees(from + turn),
    endAngle: degrees(to + turn),
  };
}

const edgePath = (s: Segment): MakerPath =>
  s.kind === 'line' ? { type: 'line', origin: pair(s.from), end: pair(s.to) } : arcPath(s);

function outlineModel(outline: Outline): MakerModel {
  const round = asCircle(outline);
  if (round) return { paths: { circle: { type: 'circle', origin: pair(round.center), radius: round.radius } } };
  return { paths: Object.fromEntries(segments(outline).map((s, i) => [`edge${i + 1}`, edgePath(s)])) };
}

/** Regions as the data of a makerjs model, in mm: one child model a region, in it one an outline (`outer`, `opening1`, ...); arcs stay arcs, a
 * circle is one path. What `readMaker` reads back is the same regions. */
export function toMaker(regions: readonly Region[]): MakerModel {
  const models = regions.map((region, i): [string, MakerModel] => {
    const openings = region.openings.map((o, k): [string, MakerModel] => [`opening${k + 1}`, outlineModel(o)]);
    return [`region${i + 1}`, { models: Object.fromEntries([['outer', outlineModel(region.outer)], ...openings]) }];
  });
  return { units: 'mm', models: Object.fromEntries(models) };
}
