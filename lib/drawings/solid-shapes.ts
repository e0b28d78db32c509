import { type Outline, type Polyline, polygon } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import type { PictureShape } from './picture.js';
import type { Polygons, Solid, SolidFace, SolidSlab } from './solid.js';
import { type Seen, seenPoints } from './view.js';
import { seenWalls, type Wall } from './walls.js';
import { HOLE_TONE, lineOn, shaded } from './wood.js';

/** How a solid is painted. */
export interface SolidPaint {
  readonly tone: number;
  /** width of lines */
  readonly line: Mm;
}

/** A wall's painting: its surface, its ends, and its edges where they are the solid's own. */
function wallShapes(wall: Wall, lowest: boolean, highest: boolean, { tone, line }: SolidPaint): PictureShape[] {
  const { bottom, top } = wall;
  const ink = { stroke: lineOn(tone), width: line };
  const fill = shaded(tone, wall.light);
  const surface = polygon([...bottom, ...[...top].reverse()]);
  if (lowest && highest) return [{ closed: [surface], open: [], paint: { fill, ...ink } }];
  const ends: Polyline[] = [polygon([bottom[0]!, top[0]!]), polygon([bottom.at(-1)!, top.at(-1)!])];
  const rims = [...(lowest ? [polygon(bottom)] : []), ...(highest ? [polygon(top)] : [])];
  return [
    // a stroke of its own tone covers the slab below's line where the wall goes on
    { closed: [surface], open: [], paint: { fill, stroke: fill, width: line } },
    { closed: [], open: [...ends, ...rims], paint: ink },
  ];
}

/** A level face, its holes dark. */
function faceShapes(face: SolidFace, seen: Seen, height: Mm, { tone, line }: SolidPaint): PictureShape[] {
  const outlines = (list: Polygons): Outline[] =>
    list.map((o: readonly Point[]) => polygon(seenPoints(seen, o, height)));
  const shape = (list: Polygons, fill: number): PictureShape[] =>
    list.length === 0 ? [] : [{ closed: outlines(list), open: [], paint: { fill, stroke: lineOn(tone), width: line } }];
  return [...shape(face.around, tone), ...shape(face.holes, HOLE_TONE)];
}

/** Seen at less than this share of their size, faces are lines. */
const EDGE_ON = 1e-6;

/** A solid as seen: walls, then the face that closes them, slab by slab from the farthest; what looks away is left out. */
export function solidShapes(solid: Solid, seen: Seen, paint: SolidPaint): PictureShape[] {
  const facing = seen.view.towards.z;
  const lit = shaded(paint.tone, 0.96 + 0.04 * Math.abs(facing));
  const last = solid.length - 1;
  const slabShapes = (slab: SolidSlab, i: number): PictureShape[] => {
    const sides = seenWalls(slab, seen).flatMap(w => wallShapes(w, i === 0, i === last, paint));
    if (Math.abs(facing) < EDGE_ON) return sides;
    const closed = facing > 0 ? { face: slab.above, height: slab.high } : { face: slab.below, height: slab.low };
    const outermost = i === (facing > 0 ? last : 0);
    const tone = outermost ? lit : shaded(lit, 0.86);
    return [...sides, ...faceShapes(closed.face, seen, closed.height, { ...paint, tone })];
  };
  const shapes = solid.map(slabShapes);
  return (facing >= 0 ? shapes : shapes.reverse()).flat();
}
