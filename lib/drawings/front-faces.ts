import { difference } from '../geometry/boolean.js';
import { bounds, segmentBounds } from '../geometry/measure.js';
import { circle, type Outline, type Polyline, polygon, type Region, reverse, solid } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { type Segment, segments } from '../geometry/segment.js';
import { widthAt } from '../parts/bevel.js';
import type { Drill, Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';

/** What a face seen from the front is: wood, the floor of a pocket, or the plug over a screw. */
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

/** A plug closes the counterbore over a screw in a trim segment. */
const plugged = (part: Part, area: Region): boolean => part.kind === 'trim-segment' && area.openings.length === 0;

interface Hollow {
  readonly area: Region;
  readonly depth: Mm;
  readonly plug: boolean;
}

/** Pockets and blind holes that are open to the front. */
const hollows = (part: Part): Hollow[] =>
  part.features.flatMap((f): Hollow[] => {
    if (f.kind === 'pocket' && f.face === 'front')
      return [{ area: f.area, depth: f.depth, plug: plugged(part, f.area) }];
    if (f.kind === 'drill' && f.from === 'front')
      return [{ area: solid(circle(f.diameter / 2, f.at)), depth: f.depth, plug: false }];
    return [];
  });

export const throughHoles = (part: Part): Drill[] =>
  part.features.filter((f): f is Drill => f.kind === 'drill' && f.from === 'through');

/** Marks that are part of the finished prop: the sectors of a face. Those on other parts are for the maker and go with the sanding. */
const scores = (part: Part): Polyline[] =>
  part.kind !== 'face-segment'
    ? []
    : part.features.flatMap(f => (f.kind === 'score' && f.face === 'front' ? [f.line] : []));

const face = (sort: FaceSort, height: Mm, regions: readonly Region[], marks: readonly Polyline[] = []): FrontFace[] =>
  regions.length === 0 ? [] : [{ sort, height, outlines: regions.flatMap(outlinesOf), marks }];

/** The floor of one depth, less what is deeper or open. */
function floorAt(part: Part, depth: Mm, all: readonly Hollow[], open: readonly Region[]): FrontFace[] {
  const own = all.filter(h => h.depth === depth && !h.plug).map(h => h.area);
  const deeper = all.filter(h => h.depth > depth).map(h => h.area);
  return own.length === 0 ? [] : face('floor', part.thickness - depth, difference(own, [...deeper, ...open]));
}

/** Faces of a lying part, heights over its back face. Through holes are open. */
function lyingFaces(part: Part): FrontFace[] {
  const { thickness, region } = part;
  const holes = throughHoles(part).map(d => circle(d.diameter / 2, d.at));
  const all = hollows(part);
  if (all.length === 0) {
    const outlines = [...outlinesOf(region), ...holes.map(reverse)];
    return [{ sort: 'wood', height: thickness, outlines, marks: scores(part) }];
  }
  const open = [...region.openings.map(reverse), ...holes].map(solid);
  const depths = [...new Set(all.map(h => h.depth))];
  const top = difference([region], [...all.map(h => h.area), ...holes.map(solid)]);
  const plugs = all.filter(h => h.plug).map(h => h.area);
  return [
    ...face('wood', thickness, top, scores(part)),
    ...depths.flatMap(depth => floorAt(part, depth, all, open)),
    ...face('plug', thickness, plugs),
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
export const frontFaces = (part: Part, stands: boolean): FrontFace[] => (stands ? stoodFaces : lyingFaces)(part);

/** All a piece covers from the front, before it is turned and moved. */
export function frontOutlines(part: Part, stands: boolean): Outline[] {
  if (!stands) return outlinesOf(part.region);
  const { minX, maxX } = bounds(part.region.outer);
  return [across(part, minX, maxX)];
}
