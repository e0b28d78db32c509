import type { Pass } from '../../lib/cutting/pass.js';
import { polylineSegments, type Region, type Segment, segments } from '../../lib/geometry/index.js';
import { combine, fineArea, fineOffset, finePaths, type Judge } from '../soak/fine-polygons.js';

type Path = ReturnType<typeof finePaths>[number];

/** Chords fine enough for most areas, and those that are tried where the first find something: what is real stays. */
const COARSE: Judge = { chordError: 0.0004, units: 1e4 };
const FINE: Judge = { chordError: 0.00005, units: 1e5 };
/** Thinner than this is chords and rounding, mm. */
const THINNEST = 0.002;

interface XY {
  readonly x: number;
  readonly y: number;
}

const toPath = (points: readonly XY[], { units }: Judge): Path =>
  points.map(p => ({ X: Math.round(p.x * units), Y: Math.round(p.y * units) }));

/** Points of an arc about a centre, its ends included. */
function arcPoints(center: XY, radius: number, from: number, sweep: number, judge: Judge): XY[] {
  const step = 2 * Math.acos(Math.max(0, 1 - judge.chordError / radius));
  const parts = Math.max(1, Math.ceil(Math.abs(sweep) / step));
  return Array.from({ length: parts + 1 }, (_, i) => {
    const a = from + (sweep * i) / parts;
    return { x: center.x + radius * Math.cos(a), y: center.y + radius * Math.sin(a) };
  });
}

const disc = (p: XY, radius: number, judge: Judge): Path =>
  toPath(arcPoints(p, radius, 0, 2 * Math.PI, judge).slice(1), judge);

const oriented = (path: Path, judge: Judge): Path => (fineArea([path], judge) < 0 ? [...path].reverse() : path);

/** What a disc takes between the ends of an edge. */
function band(s: Segment, radius: number, judge: Judge): Path {
  if (s.kind === 'line') {
    const long = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
    const n = { x: ((s.from.y - s.to.y) / long) * radius, y: ((s.to.x - s.from.x) / long) * radius };
    const side = (p: XY, k: number): XY => ({ x: p.x + k * n.x, y: p.y + k * n.y });
    return oriented(toPath([side(s.from, 1), side(s.to, 1), side(s.to, -1), side(s.from, -1)], judge), judge);
  }
  const outer = arcPoints(s.center, s.radius + radius, s.start, s.sweep, judge);
  const inner =
    s.radius > radius ? arcPoints(s.center, s.radius - radius, s.start + s.sweep, -s.sweep, judge) : [s.center];
  return oriented(toPath([...outer, ...inner], judge), judge);
}

const edgesOf = (pass: Pass): Segment[] => (pass.closed ? segments(pass.line) : polylineSegments(pass.line));

/** Everything a disc takes along passes. */
function sweptPaths(passes: readonly Pass[], radius: number, judge: Judge): Path[] {
  const pieces = passes.flatMap(edgesOf).flatMap(s => [band(s, radius, judge), disc(s.from, radius, judge)]);
  const ends = passes.filter(p => !p.closed).map(p => disc(p.line.at(-1)!, radius, judge));
  return combine([...pieces, ...ends], [], 'union');
}

/** Area that is thicker than rounding, mm². */
const real = (paths: Path[], judge: Judge): number =>
  fineArea(fineOffset(fineOffset(paths, -THINNEST / 2, judge), THINNEST / 2, judge), judge);

/** What passes leave of an area that the cutter could get into, and what they take outside it, mm²; by polygons of clipper-lib. */
export function clearedWrong(
  area: Region,
  passes: readonly Pass[],
  width: number,
  judge: Judge = COARSE,
): { readonly left: number; readonly outside: number } {
  const radius = width / 2;
  const whole = finePaths([area], judge);
  const within = fineOffset(fineOffset(whole, -radius, judge), radius, judge);
  const swept = sweptPaths(passes, radius, judge);
  const left = real(combine(within, swept, 'difference'), judge);
  const outside = real(combine(swept, whole, 'difference'), judge);
  const isClean = left === 0 && outside === 0;
  return isClean || judge === FINE ? { left, outside } : clearedWrong(area, passes, width, FINE);
}
