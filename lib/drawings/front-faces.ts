import { encloses } from '../geometry/locate.js';
import { bounds, segmentBounds } from '../geometry/measure.js';
import { circle, type Outline, type Polyline, polygon, type Region, reverse } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { type Segment, segments } from '../geometry/segment.js';
import { widthAt } from '../parts/bevel.js';
import type { Drill, Face, Part, PartKind } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { labelStrokes } from './part-drawing.js';
import type { Slab } from './slabs.js';

/** What a face seen from the front is: wood, the floor of a pocket or a blind hole, or the plug over a screw. */
export type FaceSort = 'wood' | 'floor' | 'plug';

/** Something of a part that faces the front, at one height. */
export interface FrontFace {
  readonly sort: FaceSort;
  readonly height: Mm;
  /** anticlockwise outlines and clockwise holes */
  readonly outlines: readonly Outline[];
  /** lines drawn on it */
  readonly marks: readonly Polyline[];
}

const outlinesOf = (region: Region): Outline[] => [region.outer, ...region.openings];

const drills = (part: Part, from: Face | 'through'): Drill[] =>
  part.features.filter((f): f is Drill => f.kind === 'drill' && f.from === from);

/** Holes right through a part. */
export const throughHoles = (part: Part): Drill[] => drills(part, 'through');

/** Whether a hole is in one of several regions. */
export const isIn = (regions: readonly Region[], { at }: Drill): boolean =>
  regions.some(r => encloses(r.outer, at) && !r.openings.some(o => encloses(o, at)));

const rim = (d: Drill): Outline => circle(d.diameter / 2, d.at);

/** Parts whose marks are there to be seen: the sectors of a face and their numbers, a name, a coupon's steps. Those on other parts are for the maker and go
 * with the sanding. */
const MARKED: readonly PartKind[] = ['face-segment', 'name-band', 'ladder-bed', 'comb', 'tongue', 'bore-row', 'sample'];

const scores = (part: Part): Polyline[] =>
  !MARKED.includes(part.kind)
    ? []
    : part.features.flatMap(f => {
        if (f.kind === 'label') return f.shows ? labelStrokes(f, 'front') : [];
        return f.kind === 'score' && f.face === 'front' ? [f.line] : [];
      });

/** Plugs close the counterbores over the screws of a trim segment. */
const isPlugged = (part: Part): boolean => part.kind === 'trim-segment';

/** The face that closes a slab, with the holes in it open. */
function closing(part: Part, { high, above }: Slab, outermost: boolean): FrontFace[] {
  if (above.length === 0) return [];
  const outlines = above.flatMap(outlinesOf);
  if (!outermost && isPlugged(part)) return [{ sort: 'plug', height: part.thickness, outlines, marks: [] }];
  const holes = throughHoles(part).filter(d => isIn(above, d));
  return [
    {
      sort: outermost ? 'wood' : 'floor',
      height: high,
      outlines: [...outlines, ...holes.map(d => reverse(rim(d)))],
      marks: outermost ? scores(part) : [],
    },
  ];
}

/** Faces of a lying part, heights over its back face. Through holes are open. */
function lyingFaces(part: Part, slabs: readonly Slab[]): FrontFace[] {
  const blind = drills(part, 'front').map(rim);
  return [
    ...slabs.flatMap((slab, i) => closing(part, slab, i === slabs.length - 1)),
    ...blind.map((o): FrontFace => ({ sort: 'floor', height: part.thickness, outlines: [o], marks: [] })),
  ];
}

/** Across the thickness of a stood part, between two places of its outline: its front lies at y = -thickness and is the wider face. */
function across(part: Part, from: Mm, to: Mm): Outline {
  const [low, high] = widthAt(part, 0);
  const kept = (x: Mm): Mm => Math.min(high, Math.max(low, x));
  const { thickness } = part;
  const corners: Point[] = [
    { x: from, y: -thickness },
    { x: to, y: -thickness },
    { x: kept(to), y: 0 },
    { x: kept(from), y: 0 },
  ];
  return polygon(corners.filter((p, i) => i < 3 || p.x < corners[2]!.x));
}

/** Whether an edge, wood on its left, is part of a top: it runs to the left, or round a quarter that does. */
const runsOver = (s: Segment): boolean => s.to.x < s.from.x - 1e-6 || (s.kind === 'arc' && s.sweep > 0);

/** Faces of a stood part: its edges that run over wood, each as high as its highest point. Slanted and round ones are drawn flat. */
function stoodFaces(part: Part): FrontFace[] {
  const edges = [part.region.outer, ...part.region.openings].flatMap(segments);
  return edges.filter(runsOver).map(edge => {
    const { minX, maxX, maxY } = segmentBounds(edge);
    return { sort: 'wood', height: maxY, outlines: [across(part, minX, maxX)], marks: [] };
  });
}

/** What of a part is seen from the front, before it is turned and moved; heights as Piece's z is meant. */
export const frontFaces = (part: Part, slabs: readonly Slab[], stands: boolean): FrontFace[] =>
  stands ? stoodFaces(part) : lyingFaces(part, slabs);

/** All a piece covers from the front, before it is turned and moved. */
export function frontOutlines(part: Part, stands: boolean): Outline[] {
  if (!stands) return outlinesOf(part.region);
  const { minX, maxX } = bounds(part.region.outer);
  return [across(part, minX, maxX)];
}
