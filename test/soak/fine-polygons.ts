import { createRequire } from 'node:module';
import maker from 'makerjs';
import { type Outline, pointOn, type Region, type Segment, segments } from '../../lib/geometry/index.js';

type Path = { X: number; Y: number }[];

/** The part of clipper-lib that is used here; the package brings no types. */
interface ClipperLibrary {
  readonly Clipper: {
    new (): {
      AddPaths(paths: Path[], kind: number, closed: boolean): void;
      Execute(operation: number, out: Path[], fill: number, clipFill: number): void;
    };
    Area(path: Path): number;
  };
  readonly ClipperOffset: new (
    mitreLimit: number,
    arcTolerance: number,
  ) => { AddPaths(paths: Path[], join: number, end: number): void; Execute(out: Path[], by: number): void };
}

const Clipper: ClipperLibrary = createRequire(import.meta.url)('clipper-lib');
// the library's own numbers for its enumerations
const ROUND_JOIN = 1;
const CLOSED_POLYGON = 4;

/** An independent judge: regions as polygons of very short chords, combined in whole numbers by clipper-lib. */
export interface Judge {
  /** greatest distance between an arc and its chords */
  readonly chordError: number;
  /** whole units in a millimetre */
  readonly units: number;
}

export function finePath(outline: Outline, judge: Judge): Path {
  const path: Path = [];
  for (const s of segments(outline)) {
    const step = s.kind === 'line' ? Math.PI : 2 * Math.acos(Math.max(0, 1 - judge.chordError / s.radius));
    const parts = s.kind === 'line' ? 1 : Math.max(1, Math.ceil(Math.abs(s.sweep) / step));
    for (let i = 0; i < parts; i++) {
      const p = i === 0 ? s.from : pointOn(s, i / parts);
      path.push({ X: Math.round(p.x * judge.units), Y: Math.round(p.y * judge.units) });
    }
  }
  return path;
}

export const finePaths = (regions: readonly Region[], judge: Judge): Path[] =>
  regions.flatMap(r => [r.outer, ...r.openings]).map(o => finePath(o, judge));

export type Operation = 'union' | 'difference' | 'intersection' | 'xor';

const KIND = { union: 1, difference: 2, intersection: 0, xor: 3 } as const;

export function combine(a: Path[], b: Path[], operation: Operation): Path[] {
  const clipper = new Clipper.Clipper();
  clipper.AddPaths(a, 0, true);
  clipper.AddPaths(b, 1, true);
  const out: Path[] = [];
  clipper.Execute(KIND[operation], out, 1, 1);
  return out;
}

export function fineOffset(paths: Path[], by: number, judge: Judge): Path[] {
  const offset = new Clipper.ClipperOffset(2, judge.chordError * judge.units);
  offset.AddPaths(paths, ROUND_JOIN, CLOSED_POLYGON);
  const out: Path[] = [];
  offset.Execute(out, by * judge.units);
  return out;
}

/** The same by another road, for a second opinion: the polygons with a disc and a slab at every chord added, or taken away. Slow. */
export function fineOffsetByPieces(paths: Path[], by: number, judge: Judge): Path[] {
  const r = Math.abs(by) * judge.units;
  const parts = Math.max(8, Math.ceil(Math.PI / Math.acos(1 - judge.chordError / Math.abs(by))));
  const at = (p: { X: number; Y: number }, angle: number) => ({
    X: Math.round(p.X + r * Math.cos(angle)),
    Y: Math.round(p.Y + r * Math.sin(angle)),
  });
  // round each chord: half a disc about its end, half a disc about its start
  const capsules = paths.flatMap(path =>
    path.map((p, i) => {
      const q = path[(i + 1) % path.length]!;
      const right = Math.atan2(q.Y - p.Y, q.X - p.X) - Math.PI / 2;
      const half = Array.from({ length: parts + 1 }, (_, k) => right + (Math.PI * k) / parts);
      return [...half.map(a => at(q, a)), ...half.map(a => at(p, a + Math.PI))];
    }),
  );
  return combine(paths, capsules, by > 0 ? 'union' : 'difference');
}

/** Area in mm² */
export const fineArea = (paths: Path[], judge: Judge): number =>
  paths.reduce((t, p) => t + Clipper.Clipper.Area(p), 0) / judge.units / judge.units;

export const finePerimeter = (paths: Path[], judge: Judge): number =>
  paths.reduce(
    (t, p) =>
      t + p.reduce((s, v, i) => s + Math.hypot(v.X - p[(i + 1) % p.length]!.X, v.Y - p[(i + 1) % p.length]!.Y), 0),
    0,
  ) / judge.units;

/** Whether the outlines of a region neither cross themselves nor each other: its area is the same counted by winding and by parity. */
export function isPlain(region: Region, judge: Judge): boolean {
  const paths = finePaths([region], judge);
  const signed = fineArea(paths, judge);
  const union = (fill: number): number => {
    const clipper = new Clipper.Clipper();
    clipper.AddPaths(paths, 0, true);
    const out: Path[] = [];
    clipper.Execute(1, out, fill, fill);
    return fineArea(out, judge);
  };
  const close = (x: number): boolean => Math.abs(x - signed) < 1e-4 * judge.chordError * finePerimeter(paths, judge);
  // an opening without area is a slit, and dropped on purpose
  const turned = paths.every(
    (p, i) => fineArea([p], judge) * (i === 0 ? 1 : -1) > 0.1 * judge.chordError * finePerimeter([p], judge),
  );
  return turned && signed > 0 && close(union(0)) && close(union(1)) && close(union(2));
}

/** Area covered by one and not the other, mm² */
export const difference = (a: Path[], b: Path[], judge: Judge): number => fineArea(combine(a, b, 'xor'), judge);

type MakerPath = InstanceType<typeof maker.paths.Line> | InstanceType<typeof maker.paths.Arc>;

const toDegrees = (radians: number): number => (radians * 180) / Math.PI;

/** An edge as a path of makerjs. */
export function makerPath(s: Segment): MakerPath {
  if (s.kind === 'line') return new maker.paths.Line([s.from.x, s.from.y], [s.to.x, s.to.y]);
  const [from, to] = s.sweep > 0 ? [s.start, s.start + s.sweep] : [s.start + s.sweep, s.start];
  return new maker.paths.Arc([s.center.x, s.center.y], s.radius, toDegrees(from), toDegrees(to));
}

/** Whether, by an independent library, two edges of a region cross away from their ends. */
export function crosses(region: Region): boolean {
  const edges = [region.outer, ...region.openings].flatMap(segments);
  const paths = edges.map(makerPath);
  const ends = (s: Segment, p: maker.IPoint): number =>
    Math.min(Math.hypot(s.from.x - p[0]!, s.from.y - p[1]!), Math.hypot(s.to.x - p[0]!, s.to.y - p[1]!));
  return paths.some((a, i) =>
    paths.slice(0, i).some((b, j) => {
      const points = maker.path.intersection(a, b)?.intersectionPoints ?? [];
      return points.some(p => ends(edges[i]!, p) > 1e-6 && ends(edges[j]!, p) > 1e-6);
    }),
  );
}
