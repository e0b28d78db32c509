import { distanceToSegment } from '../geometry/locate.js';
import { asCircle, type Outline, type Polyline, vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { pointOn, type Segment, segments } from '../geometry/segment.js';
import type { Part, Pocket } from './part.js';

/** Where a pocket's floor ends in the wood: between open edges, or all round. */
export interface LapLine {
  /** for a closed one, back at its start */
  readonly line: Polyline;
  readonly closed: boolean;
}

const ON_EDGE = 1e-6;

const isOn = (edges: readonly Segment[], p: Point): boolean => edges.some(s => distanceToSegment(s, p) < ON_EDGE);

/** The stretches of a pocket's outline that are no edge of the part. */
function inner(outline: Outline, edges: readonly Segment[]): LapLine[] {
  const own = segments(outline);
  const free = own.map(s => !isOn(edges, pointOn(s, 0.5)));
  const n = own.length;
  if (free.every(f => f)) return [{ line: [...outline, vertex(outline[0]!)], closed: true }];
  // begun behind an open edge, so that no stretch runs across the start
  const from = free.indexOf(false);
  const lines: Polyline[] = [];
  let run: Polyline = [];
  for (let i = 1; i <= n; i += 1) {
    const at = (from + i) % n;
    if (free[at]) run = [...run, outline[at]!];
    else if (run.length > 0) {
      lines.push([...run, vertex(outline[at]!)]);
      run = [];
    }
  }
  return lines.map(line => ({ line, closed: false }));
}

/** The lines of a pocket that a maker marks on the wood. */
export function lapLines(part: Part, pocket: Pocket): LapLine[] {
  const edges = [part.region.outer, ...part.region.openings].flatMap(segments);
  return [pocket.area.outer, ...pocket.area.openings].flatMap(o => inner(o, edges));
}

/** Middle of a line that is a full circle. */
export const middleOf = ({ line, closed }: LapLine): Point | undefined =>
  closed ? asCircle(line.slice(0, -1))?.center : undefined;
