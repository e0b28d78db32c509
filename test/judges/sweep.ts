import library, { type Path, type Paths } from 'clipper-lib';
import type { Outline, Region } from '../../lib/geometry/outline.js';
import { type Corner, flat } from './dxf-outlines.js';
import { clip, UNIT } from './solid.js';

// A disc swept along paths, by clipper-lib: nothing of the project's own offsets or booleans.

/** How far polygons stray from arcs, mm. */
export const FINE = 1e-4;

const { Clipper, ClipType, ClipperOffset, EndType, JoinType } = library;

export const toPath = (corners: readonly Corner[]): Path =>
  corners.map(([x, y]) => ({ X: Math.round(x * UNIT), Y: Math.round(y * UNIT) }));

const anticlockwise = (path: Path): Path => (Clipper.Orientation(path) ? path : [...path].reverse());

function offsetting(paths: Paths, by: number, end: number): Paths {
  if (paths.length === 0) return [];
  const offset = new ClipperOffset(2, FINE * UNIT);
  offset.AddPaths(paths, JoinType.jtRound, end);
  const out: Paths = [];
  offset.Execute(out, by * UNIT);
  return out;
}

/** What a disc touches whose centre goes along closed paths. @param radius mm */
export const swept = (paths: Paths, radius: number): Paths => offsetting(paths, radius, EndType.etClosedLine);

/** An area grown (by > 0) or shrunk, mm; openings run clockwise. */
export const grown = (area: Paths, by: number): Paths => offsetting(area, by, EndType.etClosedPolygon);

/** What a disc covers that stays within an area. Its centre's area and what it touches on the way round that, not that area grown: growing
 * stumbles over edges as short as its whole numbers. */
export function reachable(area: Paths, radius: number): Paths {
  const centres = grown(area, -radius);
  return clip(ClipType.ctUnion, centres, swept(centres, radius));
}

/** The insides of closed paths, whichever way they run. */
export const filled = (paths: Paths): Paths => clip(ClipType.ctUnion, paths.map(anticlockwise), []);

/** The area of outlines that run anticlockwise round it and clockwise round islands in it; areas may overlap. */
export const wound = (paths: Paths): Paths => clip(ClipType.ctUnion, paths, []);

export const minus = (a: Paths, b: Paths): Paths =>
  a.length === 0 || b.length === 0 ? a : clip(ClipType.ctDifference, a, b);
export const both = (a: Paths, b: Paths): Paths =>
  a.length === 0 || b.length === 0 ? [] : clip(ClipType.ctIntersection, a, b);
export const either = (a: Paths, b: Paths): Paths => clip(ClipType.ctUnion, a, b);

export const disc = (x: number, y: number, radius: number): Path =>
  Array.from({ length: 180 }, (_, i) => ({
    X: Math.round((x + radius * Math.cos((i * Math.PI) / 90)) * UNIT),
    Y: Math.round((y + radius * Math.sin((i * Math.PI) / 90)) * UNIT),
  }));

/** An outline of the project as a fine polygon; its edges' ends and bulges are all that is used of it. */
export const finePath = (outline: Outline): Path => toPath(flat(outline, FINE));

export const fineArea = ({ outer, openings }: Region): Paths => [outer, ...openings].map(finePath);

/** Where a polygon is, mm. */
export const placeOf = (path: Path): string => `(${(path[0]!.X / UNIT).toFixed(3)}, ${(path[0]!.Y / UNIT).toFixed(3)})`;
