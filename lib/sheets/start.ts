import { length, segmentLength } from '../geometry/measure.js';
import { asCircle, bulgeOf, type Outline, reverse, vertex } from '../geometry/outline.js';
import { polar } from '../geometry/point.js';
import { type Segment, segments } from '../geometry/segment.js';
import { begunAt } from '../geometry/stretch.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';
import type { Mm } from '../units/length.js';
import { FEED, type Feed } from './finishing.js';

/** Compensated outlines run with the wood on their left: conventional as they are, climb the other way. */
export const directed = (outline: Outline, feed: Feed = FEED): Outline =>
  feed === 'conventional' ? outline : reverse(outline);

/** Where along an edge a cut may start: its middle first. */
const SHARES = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875] as const;
/** Where round a circle, in turns. */
const TURNS = [0, 1 / 4, 1 / 2, 3 / 4, 1 / 8, 3 / 8, 5 / 8, 7 / 8] as const;

/** A circle begun elsewhere: four arcs, for two would be a circle again, which has no start. */
function circleStarts(outline: Outline): Outline[] | undefined {
  const round = asCircle(outline);
  if (!round) return undefined;
  const { center, radius } = round;
  const { bulge, mate } = outline[0]!;
  const quarter = (Math.sign(bulge) * Math.PI) / 2;
  return TURNS.map(t =>
    [0, 1, 2, 3].map(i => vertex(polar(radius, 2 * Math.PI * t + i * quarter, center), bulgeOf(quarter), mate)),
  );
}

/** Whether an edge of a tool-centre outline is the cutter's way round an outside corner of the piece. */
export const roundsCorner = (s: Segment, radius: Mm): boolean =>
  s.kind === 'arc' && Math.abs(s.radius - radius) < ON_BOUNDARY;

/** Edges by how well a cut starts on them: those no other piece meets first, lines before arcs, long before short. */
function ranked(outline: Outline, radius: Mm): { readonly edge: number; readonly s: Segment }[] {
  const rank = (edge: number, s: Segment): number =>
    (outline[edge]!.mate === undefined && !roundsCorner(s, radius) ? 0 : 2) + (s.kind === 'line' ? 0 : 1);
  return segments(outline)
    .map((s, edge) => ({ edge, s, rank: rank(edge, s), size: segmentLength(s) }))
    .sort((a, b) => a.rank - b.rank || b.size - a.size || a.edge - b.edge);
}

/** Edges tried for a start, at most. */
const TRIED = 8;

/** The same outline begun where a cut may start, the best place first: away from faces that meet another piece, in the middle of a long
 * straight edge where there is one. @param radius of the cutter, mm */
export function starts(outline: Outline, radius: Mm): Outline[] {
  if (length(outline) === 0) return [outline];
  return (
    circleStarts(outline) ??
    ranked(outline, radius)
      .slice(0, TRIED)
      .flatMap(({ edge }) => SHARES.map(share => begunAt(outline, edge, share)))
  );
}
