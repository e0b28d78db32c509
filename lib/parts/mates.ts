import { endDirection, startDirection } from '../geometry/along.js';
import type { Outline, Region } from '../geometry/outline.js';
import { cross, distance, dot, type Point } from '../geometry/point.js';
import { type Segment, segments } from '../geometry/segment.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';
import type { Radians } from '../units/length.js';
import type { Part, Pocket } from './part.js';

/** Whether any edge of a region meets another piece. */
export const hasMates = (region: Region): boolean =>
  [region.outer, ...region.openings].some(o => o.some(v => v.mate !== undefined));

/** An outline of a part that other pieces may meet: wood lies on its left round the part and round an opening, on its right in a pocket. */
export type MatingOutline =
  | { readonly where: 'outer' | 'opening'; readonly outline: Outline }
  | { readonly where: 'pocket'; readonly outline: Outline; readonly pocket: Pocket };

/** An edge that meets another piece, and the joint it does so in. */
export interface MatingEdge {
  readonly of: MatingOutline;
  /** the edge starts at this vertex of the outline */
  readonly edge: number;
  readonly segment: Segment;
  readonly mate: string;
}

/** A corner between two edges at least one of which meets another piece. */
export interface MatingCorner {
  readonly of: MatingOutline;
  /** the corner's vertex in the outline */
  readonly vertex: number;
  readonly at: Point;
  /** inside: a corner of a hollow, which a round cutter does not get into; outside: wood stands out */
  readonly side: 'inside' | 'outside';
  /** how far the outline turns there, above 0 to pi */
  readonly turn: Radians;
  /** tags of the edges into the corner and out of it */
  readonly mates: readonly [string | undefined, string | undefined];
}

/** Less than this is no corner but a smooth join that rounding has bent. */
const SMOOTH: Radians = 1e-6;

function matingOutlines(part: Part): MatingOutline[] {
  const pockets = part.features.filter((f): f is Pocket => f.kind === 'pocket');
  return [
    { where: 'outer', outline: part.region.outer },
    ...part.region.openings.map((outline): MatingOutline => ({ where: 'opening', outline })),
    ...pockets.flatMap(pocket =>
      [pocket.area.outer, ...pocket.area.openings].map(
        (outline): MatingOutline => ({
          where: 'pocket',
          outline,
          pocket,
        }),
      ),
    ),
  ];
}

/** Every edge of a part that meets another piece: of its outer outline, its openings, its pockets, in that order. Of a pocket these are walls. */
export const matingEdges = (part: Part): MatingEdge[] =>
  matingOutlines(part).flatMap(of =>
    segments(of.outline).flatMap((segment, edge) => {
      const mate = of.outline[edge]!.mate;
      return mate === undefined ? [] : [{ of, edge, segment, mate }];
    }),
  );

/** How far an outline turns to the left at a vertex, -pi to pi. */
function turnAt(outline: Outline, at: number): Radians {
  const edges = segments(outline);
  const u = endDirection(edges[(at + edges.length - 1) % edges.length]!);
  const v = startDirection(edges[at]!);
  return Math.atan2(cross(u, v), dot(u, v));
}

/** Whether a pocket has wood on both sides of a corner of it: not where it is open, and so runs on past the part's edge. */
const stays = (of: MatingOutline, at: Point, left: Radians): boolean =>
  of.where !== 'pocket' ||
  [of.pocket.beyond.outer, ...of.pocket.beyond.openings].some(o => {
    const same = o.findIndex(v => distance(v, at) < ON_BOUNDARY);
    return same >= 0 && turnAt(o, same) * left > 0;
  });

/** Every corner of a part at an edge that meets another piece, in the order of `matingEdges`; corners of a pocket only where it has wood on
 * both sides. */
export const matingCorners = (part: Part): MatingCorner[] =>
  matingOutlines(part).flatMap(of =>
    of.outline.flatMap((at, vertex): MatingCorner[] => {
      const mates = [of.outline.at(vertex - 1)!.mate, at.mate] as const;
      if (mates.every(m => m === undefined)) return [];
      const left = turnAt(of.outline, vertex);
      if (Math.abs(left) < SMOOTH || !stays(of, at, left)) return [];
      const side = left > 0 === (of.where === 'pocket') ? 'inside' : 'outside';
      return [{ of, vertex, at: { x: at.x, y: at.y }, side, turn: Math.abs(left), mates }];
    }),
  );
