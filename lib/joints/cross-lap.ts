import { difference } from '../geometry/boolean.js';
import { withMates } from '../geometry/mates.js';
import { bounds } from '../geometry/measure.js';
import { type Outline, rectangle, solid } from '../geometry/outline.js';
import type { Face, Part, Pocket } from '../parts/part.js';
import type { Mm } from '../units/length.js';

// Two bars that cross in one plane: each gives half its thickness, or, built of layers, each runs through in half of them and is cut into
// pieces in the others. Bars lie along x in their own frames. Lengths mm.

/** What crosses a bar. */
export interface CrossLap {
  /** middles of the others along it */
  readonly at: readonly Mm[];
  /** width of the others */
  readonly width: Mm;
  /** `fit.lap`: across the joint, half of it on each side */
  readonly clearance: Mm;
}

/** How far a pocket is carried past the bar's edges: more than any cutter's width. */
const PAST: Mm = 60;
const MATE = 'lap';

/** Middles of n bars spaced evenly across an opening: -R + 2 R (i + 1) / (n + 1), from the centre. */
export const spaced = (count: number, opening: Mm): Mm[] =>
  Array.from({ length: count }, (_, i) => -opening + (2 * opening * (i + 1)) / (count + 1));

/** Widest that bars across a round opening of radius R may be: the pitch 2 R / (n + 1) less the wood between, and where bars at a and b from
 * the centre cross, the w for which the crossing's outer corner (a + w / 2, b + w / 2) keeps off the edge: w = sqrt(2 r² - (a - b)²) - (a + b)
 * with r = R - edge. @param counts bars one way and the other */
export function widestBars(opening: Mm, counts: readonly [number, number], between: Mm, edge: Mm): Mm {
  const pitch = (2 * opening) / (Math.max(...counts) + 1) - between;
  if (Math.min(...counts) === 0) return pitch;
  const [a, b] = [spaced(counts[0], opening).at(-1)!, spaced(counts[1], opening).at(-1)!];
  const room = opening - edge;
  return Math.min(pitch, Math.sqrt(Math.max(0, 2 * room * room - (a - b) * (a - b))) - (a + b));
}

const across = (bar: Part, lap: CrossLap, at: Mm, past: Mm): Outline => {
  const half = (lap.width + lap.clearance) / 2;
  const { minY, maxY } = bounds(bar.region.outer);
  return withMates(rectangle(at - half, minY - past, at + half, maxY + past), MATE, [1, 3]);
};

/** A bar with a pocket as deep as half its thickness for each that crosses it; it keeps its ends' wood beside them. */
export function halfLapped(bar: Part, lap: CrossLap, face: Face): Part {
  const pockets = lap.at.map((at): Pocket => {
    const area = solid(across(bar, lap, at, 0));
    return { kind: 'pocket', face, depth: bar.thickness / 2, area, beyond: solid(across(bar, lap, at, PAST)) };
  });
  return { ...bar, features: [...bar.features, ...pockets] };
}

/** The pieces of a bar in a layer where the others run through it, from left to right. Pieces lie loose: a clearance that would press is
 * none. */
export function lapPieces(bar: Part, lap: CrossLap): Part[] {
  const loose = { ...lap, clearance: Math.max(0, lap.clearance) };
  return difference(
    [bar.region],
    loose.at.map(at => solid(across(bar, loose, at, PAST))),
  )
    .map(region => ({ ...bar, region }))
    .sort((a, b) => bounds(a.region.outer).minX - bounds(b.region.outer).minX);
}
