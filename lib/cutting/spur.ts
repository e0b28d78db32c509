import { bulgeOf, type Outline, type Vertex, vertex } from '../geometry/outline.js';
import { add, cross, distance, dot, type Point, scale, subtract } from '../geometry/point.js';
import { pointOn, type Segment, segments } from '../geometry/segment.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';
import type { Mm } from '../units/length.js';

// A spur: the way a tool's centre goes out of a corner of its outline and back. It leaves the outline a little before the corner and comes
// back a little after it, so that the outline stays simple and has no edge twice.

/** A way out of a corner of an outline. */
export interface Spur {
  /** the corner is this vertex */
  readonly vertex: number;
  /** where the tool's centre goes */
  readonly to: Point;
}

/** How far from the corner a spur leaves the outline, mm: far above what files round to, far below what anybody sees. */
const BESIDE: Mm = 0.02;
/** Share of an edge that a spur at its end may take. */
const MOST_OF_EDGE = 1 / 3;

const lengthOf = (s: Segment): Mm => (s.kind === 'line' ? distance(s.from, s.to) : Math.abs(s.sweep) * s.radius);

const nearShare = (s: Segment): number => Math.min(MOST_OF_EDGE, BESIDE / lengthOf(s));

/** The share of an edge at a point of its carrier no more than a quarter of its circle past its start or its end; undefined off the
 * carrier. */
function shareAt(s: Segment, p: Point, end: 0 | 1): number | undefined {
  if (s.kind === 'line') {
    const chord = subtract(s.to, s.from);
    const v = subtract(p, s.from);
    const long = Math.hypot(chord.x, chord.y);
    return Math.abs(cross(chord, v)) > ON_BOUNDARY * long ? undefined : dot(chord, v) / (long * long);
  }
  if (Math.abs(distance(p, s.center) - s.radius) > ON_BOUNDARY) return undefined;
  const [from, to] = [subtract(end === 0 ? s.from : s.to, s.center), subtract(p, s.center)];
  const past = Math.atan2(cross(from, to), dot(from, to));
  const share = end + past / s.sweep;
  const whole = (end === 0 ? 1 - share : share) * Math.abs(s.sweep);
  return Math.abs(past) > Math.PI / 2 || whole > Math.PI ? undefined : share;
}

/** What the spurs of one corner make of it. */
interface Turnout {
  /** share of the edge into the corner where it now ends: above 1 where it runs on to the spur's end */
  readonly before: number;
  /** share of the edge out of the corner where it now starts: below 0 where it comes from the spur's end */
  readonly after: number;
  readonly between: readonly Point[];
}

/** Several spurs of one corner come back, each to its own point, between where the first leaves the outline and the last ends. */
function straight(into: Segment, out: Segment, spurs: readonly Spur[]): Turnout {
  const before = 1 - nearShare(into);
  const after = nearShare(out);
  const [a, b] = [pointOn(into, before), pointOn(out, after)];
  const across = subtract(b, a);
  const ordered = spurs.map(s => s.to).sort((p, q) => dot(p, across) - dot(q, across));
  const between = ordered.flatMap((to, i) => (i === 0 ? [to] : [add(a, scale(across, i / ordered.length)), to]));
  return { before, after, between };
}

/** A spur along the carrier of either edge lengthens that edge: the cut stays on the wall. */
function turnout(into: Segment, out: Segment, spurs: readonly Spur[]): Turnout {
  const [only, ...more] = spurs;
  if (!only || more.length > 0) return straight(into, out, spurs);
  const before = shareAt(into, only.to, 1);
  if (before !== undefined && before > 1) return { before, after: nearShare(out), between: [] };
  const after = shareAt(out, only.to, 0);
  if (after !== undefined && after < 0) return { before: 1 - nearShare(into), after, between: [] };
  return straight(into, out, spurs);
}

/** An outline with spurs; edges keep their carriers and tags, those of spurs have none. */
export function withSpurs(outline: Outline, spurs: readonly Spur[]): Outline {
  if (spurs.length === 0) return outline;
  const edges = segments(outline);
  const count = edges.length;
  const turnouts = new Map<number, Turnout>();
  for (const { vertex: at } of spurs) {
    if (turnouts.has(at)) continue;
    const own = spurs.filter(s => s.vertex === at);
    turnouts.set(at, turnout(edges[(at + count - 1) % count]!, edges[at]!, own));
  }
  return outline.flatMap((v, i): Vertex[] => {
    const edge = edges[i]!;
    const [here, next] = [turnouts.get(i), turnouts.get((i + 1) % count)];
    const [from, to] = [here?.after ?? 0, next?.before ?? 1];
    const bulge = edge.kind === 'arc' && (here || next) ? bulgeOf(edge.sweep * (to - from)) : v.bulge;
    return [
      vertex(here ? pointOn(edge, from) : v, bulge, v.mate),
      ...(next ? [pointOn(edge, to), ...next.between].map(p => vertex(p)) : []),
    ];
  });
}

/** What a spur adds to an area of the tool's centre with that outline: between the corner, where the spur leaves the outline and its end. */
export function spurArea(outline: Outline, spur: Spur): Outline {
  const edges = segments(outline);
  const into = edges[(spur.vertex + edges.length - 1) % edges.length]!;
  const out = edges[spur.vertex]!;
  const { before, after, between } = turnout(into, out, [spur]);
  const bend = (s: Segment, share: number): number => (s.kind === 'arc' ? bulgeOf(s.sweep * share) : 0);
  return [
    vertex(outline[spur.vertex]!, bend(into, before - 1)),
    ...[pointOn(into, before), ...between].map(p => vertex(p)),
    vertex(pointOn(out, after), bend(out, -after)),
  ];
}
