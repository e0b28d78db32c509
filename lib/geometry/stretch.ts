import type { Mm } from '../units/length.js';
import { pointAlong } from './along.js';
import { segmentLength } from './measure.js';
import { bulgeOf, type Outline, type Polyline, type Vertex, vertex } from './outline.js';
import { type Segment, segments } from './segment.js';

/** The start of the part of an edge between two shares of its length, with the bulge and the tag that part has. */
const partStart = (s: Segment, from: number, to: number, mate: string | undefined): Vertex =>
  vertex(pointAlong(s, from), s.kind === 'arc' ? bulgeOf(s.sweep * (to - from)) : 0, mate);

/** The same closed curve begun somewhere along one of its edges.
 * @param share 0 up to 1 of the edge's length; 0 is its first vertex   @param edge number of the vertex the edge starts at */
export function begunAt(outline: Outline, edge: number, share: number): Outline {
  const turned = [...outline.slice(edge), ...outline.slice(0, edge)];
  const first = turned[0];
  if (!first || share <= 0) return turned;
  const s = segments(outline)[edge]!;
  return [partStart(s, share, 1, first.mate), ...turned.slice(1), partStart(s, 0, share, first.mate)];
}

/** What an edge gives to a stretch. @param span the edge's own, in lengths along the outline */
function within(s: Segment, mate: string | undefined, span: readonly [Mm, Mm], from: Mm, to: Mm): Vertex[] {
  const [low, high] = [Math.max(span[0], from), Math.min(span[1], to)];
  const whole = span[1] - span[0];
  if (!(high > low)) return [];
  return [partStart(s, (low - span[0]) / whole, (high - span[0]) / whole, mate)];
}

/** A stretch of a closed curve as an open run.
 * @param from,to lengths along the outline from its first vertex, mm: 0 <= from < to, at most a whole round after `from` */
export function stretch(outline: Outline, from: Mm, to: Mm): Polyline {
  const edges = segments(outline);
  const run: Vertex[] = [];
  let along = 0;
  let end = vertex(outline[0]!);
  // twice round, for a stretch across the first vertex
  for (let i = 0; i < 2 * edges.length; i++) {
    const s = edges[i % edges.length]!;
    const span = [along, along + segmentLength(s)] as const;
    run.push(...within(s, outline[i % edges.length]!.mate, span, from, to));
    if (to > span[0]) end = vertex(pointAlong(s, Math.min(1, (to - span[0]) / (span[1] - span[0]))));
    along = span[1];
  }
  return [...run, end];
}
