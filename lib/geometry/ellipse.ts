import { refuse, requireRange } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { type ArcFit, fitArcs } from './arc-spline.js';
import { type EllipseArc, ellipseCurve } from './curve.js';
import { movePolyline } from './motion.js';
import { arcVertices, type Polyline, reversePolyline, type Vertex, vertex } from './outline.js';
import { angleOf, ORIGIN, subtract } from './point.js';
import { polylineSegments, type Segment } from './segment.js';

const FULL = 2 * Math.PI;
const FINEST: Mm = 1e-7;
const COARSEST: Mm = 1e4;
/** Sine of an angle: a heading this near to an axis is along it. */
const SQUARE = 1e-6;
/** Half axes nearer than this share of each other are a circle's. */
const ROUND = 1e-12;

function requireEllipse(e: EllipseArc, tolerance: Mm): void {
  requireRange('tolerance', tolerance, FINEST, COARSEST);
  requireRange('axis', Math.hypot(e.axis.x, e.axis.y), 1e-6, 1e6);
  requireRange('ratio', Math.abs(e.ratio), 1e-6, 1e6, '');
  requireRange('sweep', Math.abs(e.sweep), 1e-9, FULL + 1e-9, 'rad');
  if (!Number.isFinite(e.center.x + e.center.y + e.start)) refuse('ellipse', 'not finite', 'finite centre and start');
}

/** A circle's part, exactly. */
function circular(e: EllipseArc): ArcFit {
  const hand = Math.sign(e.ratio);
  const radius = Math.hypot(e.axis.x, e.axis.y);
  const line = arcVertices(e.center, radius, angleOf(e.axis) + hand * e.start, hand * e.sweep);
  return { line: [...line, vertex(ellipseCurve(e).at(1))], deviation: 0 };
}

const doubled = (bulge: number): number => Math.tan(2 * Math.atan(bulge));

/** A whole ellipse from one quarter: mirrored in both axes, so that the arcs at the axes' ends join across them.
 * The quarter runs anticlockwise from the end of the x axis to that of the y axis, its first and last arcs square to them. */
function mirroredQuarter(quarter: Polyline): Vertex[] {
  const inner = quarter.slice(1, -1);
  const bulges = quarter.slice(0, -1).map(v => v.bulge);
  const last = bulges.length - 1;
  const forth = inner.map((v, i) => vertex(v, i + 1 === last ? doubled(bulges[last]!) : bulges[i + 1]!));
  const back = inner.map((v, i) => vertex(v, i === 0 ? doubled(bulges[0]!) : bulges[i]!)).reverse();
  const by = (list: readonly Vertex[], x: 1 | -1, y: 1 | -1): Vertex[] =>
    list.map(v => vertex({ x: x * v.x, y: y * v.y }, v.bulge));
  return [...by(forth, 1, 1), ...by(back, -1, 1), ...by(forth, -1, -1), ...by(back, 1, -1)];
}

function wholeEllipse(e: EllipseArc, tolerance: Mm): ArcFit {
  const a = Math.hypot(e.axis.x, e.axis.y);
  const quarter = { center: ORIGIN, axis: { x: a, y: 0 }, ratio: Math.abs(e.ratio), start: 0, sweep: Math.PI / 2 };
  const fit = fitArcs(ellipseCurve(quarter), tolerance);
  if (!mirrors(fit.line)) return twoHalves(e, tolerance);
  const ring = mirroredQuarter(fit.line);
  const placed = movePolyline([...ring, vertex(ring[0]!)], { turn: angleOf(e.axis), x: e.center.x, y: e.center.y });
  return { line: e.ratio * e.sweep > 0 ? placed : reversePolyline(placed), deviation: fit.deviation };
}

/** Whether a quarter can be mirrored: it leaves the axes square to them, and its end arcs stay within a half turn when doubled. */
function mirrors(quarter: Polyline): boolean {
  const [first, last] = [quarter[0]!.bulge, quarter.at(-2)!.bulge];
  const limit = Math.tan(Math.PI / 8);
  if (!(first > 0 && first <= limit && last > 0 && last <= limit)) return false;
  const edges = polylineSegments(quarter);
  const heading = (s: Segment, end: 0 | 1): number =>
    s.kind === 'line' ? angleOf(subtract(s.to, s.from)) : s.start + end * s.sweep + Math.PI / 2;
  const square = (angle: number, axis: number): boolean => Math.abs(Math.sin(angle - axis)) < SQUARE;
  const smooth = edges.slice(1).every((s, i) => square(heading(edges[i]!, 1), heading(s, 0)));
  return smooth && square(heading(edges[0]!, 0), Math.PI / 2) && square(heading(edges.at(-1)!, 1), 0);
}

/** A whole ellipse as two halves from one end of its shorter axis to the other: the tight ends lie within, not at the joints. */
function twoHalves(e: EllipseArc, tolerance: Mm): ArcFit {
  const from = Math.abs(e.ratio) <= 1 ? Math.PI / 2 : 0;
  const hand = Math.sign(e.sweep);
  const half = (start: number): ArcFit => fitArcs(ellipseCurve({ ...e, start, sweep: hand * Math.PI }), tolerance);
  const [a, b] = [half(from), half(from + hand * Math.PI)];
  const line = [...a.line.slice(0, -1), ...b.line.slice(0, -1), vertex(a.line[0]!)];
  return { line, deviation: Math.max(a.deviation, b.deviation) };
}

/** An ellipse or part of one as tangent-continuous arcs within a tolerance; a circle's exactly.
 * A whole ellipse is symmetric in both axes where its quarter can be mirrored; its line ends where it starts.
 * @param e half axes 1e-6 to 1e6 mm; sweep up to a full turn
 * @param tolerance mm, 1e-7 to 10000
 * @throws Unusable naming the value; GeometryFailure as `fitArcs`. How few arcs: see `fitArcs`. */
export function arcsFromEllipse(e: EllipseArc, tolerance: Mm): ArcFit {
  requireEllipse(e, tolerance);
  if (Math.abs(Math.abs(e.ratio) - 1) < ROUND) return circular(e);
  return Math.abs(e.sweep) > FULL - 1e-9 ? wholeEllipse(e, tolerance) : fitArcs(ellipseCurve(e), tolerance);
}
