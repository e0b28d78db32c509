import type { Mm, Radians } from '../units/length.js';
import { arcAlong, biarcAlong, direction, turnFrom } from './biarc.js';
import type { Curve } from './curve.js';
import { arcLength, curvatureSlopes, type Station, smoothRuns, tabulate } from './curve-table.js';
import { GeometryFailure } from './failure.js';
import { distanceToSegment } from './locate.js';
import { type Polyline, type Vertex, vertex } from './outline.js';
import { distance, type Point, subtract } from './point.js';
import { polylineSegments, type Segment } from './segment.js';

/** Arcs in place of a curve, and how far the curve was found to stray from them. */
export interface ArcFit {
  /** tangent-continuous where the curve is, its ends on the curve's ends along the curve's headings */
  readonly line: Polyline;
  /** mm: the largest distance from the curve to the arcs, measured at some 20 points an arc and at each peak between them */
  readonly deviation: Mm;
}

const distanceTo = (edges: readonly Segment[], p: Point): Mm => {
  let least = Infinity;
  for (const s of edges) least = Math.min(least, distanceToSegment(s, p));
  return least;
};

/** A place on the curve with the heading the spline takes there. */
interface Node {
  readonly index: number;
  readonly heading: Radians;
}

/** A stretch of the curve and the arcs laid on it. */
interface Span {
  readonly to: Node;
  readonly line: Polyline;
}

const heldBy = (run: readonly Station[], from: number, to: number, line: Polyline, tolerance: Mm): boolean => {
  const edges = polylineSegments(line);
  for (let k = from + 1; k < to; k++) if (distanceTo(edges, run[k]!.at) > tolerance) return false;
  return true;
};

/** How much more than the curve's ends the arcs may turn there: an S within the tolerance may, a loop may not. */
const SPARE_TURN: Radians = 2;

/** A biarc between two nodes; none where the headings leave none or it loops. */
function lay(run: readonly Station[], from: Node, to: Node): Polyline | undefined {
  const [p, q] = [run[from.index]!, run[to.index]!];
  const turn = Math.abs(q.heading - p.heading);
  if (distance(p.at, q.at) === 0 || turn > Math.PI) return undefined;
  const [t0, t1] = [direction(from.heading), direction(to.heading)];
  const chord = subtract(q.at, p.at);
  const [a, b] = [turnFrom(chord, t0), turnFrom(chord, t1)];
  // the arcs of a biarc turn by (3 a + b) / 2 and (a + 3 b) / 2
  if ((Math.abs(3 * a + b) + Math.abs(a + 3 * b)) / 2 > turn + SPARE_TURN) return undefined;
  return biarcAlong(p.at, t0, q.at, t1);
}

/** The farthest node a biarc from this one reaches within the tolerance: by doubling, then halving. */
function farthest(run: readonly Station[], from: Node, headings: readonly Radians[], tolerance: Mm): Span | undefined {
  const end = run.length - 1;
  const reach = (index: number): Span | undefined => {
    const to = { index, heading: index === end ? run[end]!.heading : headings[index]! };
    const line = lay(run, from, to);
    return line && heldBy(run, from.index, index, line, tolerance) ? { to, line } : undefined;
  };
  const whole = reach(end);
  if (whole) return whole;
  let best: Span | undefined;
  let step = 1;
  let beyond = end;
  for (; from.index + step < end; step *= 2) {
    const span = reach(from.index + step);
    if (span) best = span;
    else if (best) {
      beyond = from.index + step;
      break;
    }
  }
  if (!best) return undefined;
  for (let lo = best.to.index; beyond - lo > 1; ) {
    const middle = (lo + beyond) >> 1;
    const span = reach(middle);
    if (span) {
      best = span;
      lo = middle;
    } else beyond = middle;
  }
  return best;
}

/** Spans one after another, each as long as it can be. Undefined where one cannot be laid at all. */
function march(
  run: readonly Station[],
  first: Node,
  headings: readonly Radians[],
  tolerance: Mm,
  most: number,
): Span[] | undefined {
  const spans: Span[] = [];
  for (let at = first; at.index < run.length - 1; ) {
    const span = spans.length < most ? farthest(run, at, headings, tolerance) : undefined;
    if (!span) return undefined;
    spans.push(span);
    at = span.to;
  }
  return spans;
}

/** A joint's heading strays no more than this from the curve's: beyond, the curve is not what the expansion is about. */
const MOST_ASIDE: Radians = 0.2;

/** Headings the spline may take at the stations. A best spline crosses the curve at every joint at an angle: with the curvature changing by k a
 * millimetre and arcs of length a, the curve's offset from the spline is k a³ / 6 times the Bernoulli polynomial B3, whose slope at the joints gives
 * k a² / 12. `share` 0 takes the curve's own headings. */
function headingsOf(run: readonly Station[], tolerance: Mm, share: number): Radians[] {
  const slopes = curvatureSlopes(run);
  const half = run.at(-1)!.length / 2;
  return run.map((s, i) => {
    const a = Math.min(half, arcLength(slopes[i]!, tolerance));
    const aside = (share * slopes[i]! * a * a) / 12;
    return s.heading - Math.max(-MOST_ASIDE, Math.min(MOST_ASIDE, aside));
  });
}

/** A single arc along the curve's start, so that a run may have an odd number of them: from its longest down by tenths. */
function leads(run: readonly Station[], tolerance: Mm): Span[] {
  const [p] = run;
  const single = (index: number): Span | undefined => {
    const to = run[index]!;
    const half = Math.atan2(to.at.y - p!.at.y, to.at.x - p!.at.x) - p!.heading;
    const turn = Math.atan2(Math.sin(half), Math.cos(half));
    if (Math.abs(turn) > Math.PI / 2) return undefined;
    const line = [...arcAlong(p!.at, direction(p!.heading), to.at), vertex(to.at)];
    return heldBy(run, 0, index, line, tolerance) ? { to: { index, heading: p!.heading + 2 * turn }, line } : undefined;
  };
  let last = 0;
  while (last + 1 < run.length - 1 && single(last + 1)) last++;
  const tenths = new Set(Array.from({ length: 6 }, (_, k) => Math.round((last * (10 - k)) / 10)).filter(k => k > 0));
  return [...tenths].flatMap(k => single(k) ?? []);
}

/** Headings tried: the curve's own, and some way to a best spline's. Never all the way: past it a shorter span strays farther than a long one. */
const SHARES = [0, 0.5, 0.75, 0.9];

const arcsIn = (spans: readonly Span[]): number => spans.reduce((t, s) => t + s.line.length - 1, 0);

/** The fewest arcs among the marches tried: with headings of the curve's own and of a best spline, with and without a single arc ahead. */
function layRun(run: readonly Station[], tolerance: Mm): Span[] | undefined {
  let best: Span[] | undefined;
  const consider = (spans: Span[] | undefined): void => {
    if (spans && (!best || arcsIn(spans) < arcsIn(best))) best = spans;
  };
  const choices = SHARES.map(share => headingsOf(run, tolerance, share));
  for (const headings of choices)
    consider(march(run, { index: 0, heading: run[0]!.heading }, headings, tolerance, Infinity));
  const most = best ? best.length - 1 : Infinity;
  for (const lead of leads(run, tolerance))
    for (const headings of choices) {
      const rest = march(run, lead.to, headings, tolerance, most);
      consider(rest && [lead, ...rest]);
    }
  return best;
}

/** The largest distance of the curve from a span's arcs: at many points, and where three show a peak, at the peak of a parabola through them. */
function strayed(curve: Curve, t0: number, t1: number, line: Polyline): Mm {
  const edges = polylineSegments(line);
  const count = 20 * edges.length;
  const at = (k: number): Mm => distanceTo(edges, curve.at(t0 + ((t1 - t0) * k) / count));
  const samples = Array.from({ length: count + 1 }, (_, k) => at(k));
  return samples.reduce((most, d, k) => {
    const [before, after] = [samples[k - 1], samples[k + 1]];
    if (before === undefined || after === undefined || before > d || after > d) return Math.max(most, d);
    const bend = before - 2 * d + after;
    return Math.max(most, d, bend < 0 ? at(k + (before - after) / (2 * bend)) : d);
  }, 0);
}

/** Spans as one run of vertices. */
const chain = (spans: readonly Span[]): Vertex[] => spans.flatMap(s => s.line.slice(0, -1));

/** Length of the curve's chords over 64 equal steps. */
const roughLength = (curve: Curve): Mm =>
  Array.from({ length: 64 }, (_, k) => distance(curve.at(k / 64), curve.at((k + 1) / 64))).reduce((t, d) => t + d, 0);

/** Tangent-continuous arcs within a tolerance of a curve, few of them: spans as long as the tolerance lets them be.
 * How few: with many arcs a best tangent-continuous spline needs (sqrt(3) / 216 / tolerance)^(1/3) times the integral of the cube root of the rate
 * at which the curvature changes; on the curves measured this lays some 1.2 times that at 50 arcs, 1.3 to 1.5 times at 10 to 30, where the two
 * ends, whose directions are given, cost an arc or two (arcs-from-curves.md, test/geometry/curves.test.ts).
 * @param tolerance mm, above 0
 * @throws GeometryFailure `unresolved` where no arcs were found that hold it
 * Sources: biarcs, see biarc.ts; error of arc splines, Meek and Walton, "Approximating smooth planar curves by arc splines", J. Comput. Appl. Math.
 * 59 (1995) 221-231; headings at the joints, worked out here. */
export function fitArcs(curve: Curve, tolerance: Mm): ArcFit {
  // a tolerance near the curve's own size says nothing of how it runs
  const held = Math.min(tolerance, roughLength(curve) / 20);
  // the measure looks between the stations too: where it finds more, or the longest spans led into a hairpin with no way on, hold closer
  for (const share of [0.995, 0.97, 0.9, 0.7, 0.25, 0.06, 0.015]) {
    const tried = held * share;
    const fitted = smoothRuns(tabulate(curve, tried), tried).map(run => ({ run, spans: layRun(run, tried) }));
    if (fitted.some(f => !f.spans)) continue;
    const deviation = fitted.reduce((most, { run, spans }) => Math.max(most, deviationOf(curve, run, spans!)), 0);
    if (!(deviation <= tolerance)) continue;
    const line = fitted.flatMap(f => chain(f.spans!));
    return { line: [...line, vertex(curve.at(1))], deviation };
  }
  throw new GeometryFailure('unresolved', curve.at(0), `no arcs found within ${tolerance} mm of the curve that starts`);
}

function deviationOf(curve: Curve, run: readonly Station[], spans: readonly Span[]): Mm {
  let from = 0;
  // a run's first step may hold the tip of a corner, which wants a closer look
  const tip = strayed(curve, run[0]!.t, run[1]!.t, spans[0]!.line);
  return spans.reduce((most, span) => {
    const d = strayed(curve, run[from]!.t, run[span.to.index]!.t, span.line);
    from = span.to.index;
    return Math.max(most, d);
  }, tip);
}
