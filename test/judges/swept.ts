import type { Pass } from '../../lib/cutting/pass.js';
import { polylineSegments, type Region, type Segment, segments } from '../../lib/geometry/index.js';
import { combine, fineArea, fineOffset, finePaths, type Judge } from '../soak/fine-polygons.js';

type Path = ReturnType<typeof finePaths>[number];

const JUDGE: Judge = { chordError: 0.0004, units: 1e4 };
/** Thinner than this is chords and rounding, mm. */
const THINNEST = 0.002;

const toPath = (points: readonly { x: number; y: number }[]): Path =>
  points.map(p => ({ X: Math.round(p.x * JUDGE.units), Y: Math.round(p.y * JUDGE.units) }));

/** Points of an arc about a centre, its ends included. */
function arcPoints(x: number, y: number, radius: number, from: number, sweep: number): { x: number; y: number }[] {
  const step = 2 * Math.acos(Math.max(0, 1 - JUDGE.chordError / radius));
  const parts = Math.max(1, Math.ceil(Math.abs(sweep) / step));
  return Array.from({ length: parts + 1 }, (_, i) => {
    const a = from + (sweep * i) / parts;
    return { x: x + radius * Math.cos(a), y: y + radius * Math.sin(a) };
  });
}

const disc = (p: { x: number; y: number }, radius: number): Path =>
  toPath(arcPoints(p.x, p.y, radius, 0, 2 * Math.PI).slice(1));

const oriented = (path: Path): Path => (fineArea([path], JUDGE) < 0 ? [...path].reverse() : path);

/** What a disc takes between the ends of an edge. */
function band(s: Segment, radius: number): Path {
  if (s.kind === 'line') {
    const long = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
    const n = { x: ((s.from.y - s.to.y) / long) * radius, y: ((s.to.x - s.from.x) / long) * radius };
    const side = (p: { x: number; y: number }, k: number) => ({ x: p.x + k * n.x, y: p.y + k * n.y });
    return oriented(toPath([side(s.from, 1), side(s.to, 1), side(s.to, -1), side(s.from, -1)]));
  }
  const { x, y } = s.center;
  const outer = arcPoints(x, y, s.radius + radius, s.start, s.sweep);
  const inner =
    s.radius > radius ? arcPoints(x, y, s.radius - radius, s.start + s.sweep, -s.sweep) : [{ x: s.center.x, y }];
  return oriented(toPath([...outer, ...inner]));
}

const edgesOf = (pass: Pass): Segment[] => (pass.closed ? segments(pass.line) : polylineSegments(pass.line));

/** Everything a disc takes along passes. */
export function sweptPaths(passes: readonly Pass[], radius: number): Path[] {
  const pieces = passes.flatMap(edgesOf).flatMap(s => [band(s, radius), disc(s.from, radius)]);
  const ends = passes.filter(p => !p.closed).map(p => disc(p.line.at(-1)!, radius));
  return combine([...pieces, ...ends], [], 'union');
}

/** Area that is thicker than rounding, mm². */
const real = (paths: Path[]): number =>
  fineArea(fineOffset(fineOffset(paths, -THINNEST / 2, JUDGE), THINNEST / 2, JUDGE), JUDGE);

/** What passes leave of an area that the cutter could get into, and what they take outside it, mm²; by polygons of clipper-lib. */
export function clearedWrong(
  area: Region,
  passes: readonly Pass[],
  width: number,
): { readonly left: number; readonly outside: number } {
  const radius = width / 2;
  const whole = finePaths([area], JUDGE);
  const within = fineOffset(fineOffset(whole, -radius, JUDGE), radius, JUDGE);
  const swept = sweptPaths(passes, radius);
  return { left: real(combine(within, swept, 'difference')), outside: real(combine(swept, whole, 'difference')) };
}
