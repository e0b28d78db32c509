import { flatten } from '../geometry/flatten.js';
import { bounds } from '../geometry/measure.js';
import { circle, type Outline, type Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { widthAt } from '../parts/bevel.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { isIn, throughHoles } from './front-faces.js';
import type { Slab } from './slabs.js';

export type Polygons = readonly (readonly Point[])[];

/** An end of a slab that nothing covers: its polygons, and the through holes in it. */
export interface SolidFace {
  readonly around: Polygons;
  readonly holes: Polygons;
}

/** A slab with straight edges, heights over its part's back face. Its walls run from `bottom` to `top`, which have the same corners, the
 * wood on their left; they differ where long edges lean. */
export interface SolidSlab {
  readonly low: Mm;
  readonly high: Mm;
  readonly bottom: Polygons;
  readonly top: Polygons;
  readonly above: SolidFace;
  readonly below: SolidFace;
}

/** A part made ready to be drawn from any side, its lowest slab first. */
export type Solid = readonly SolidSlab[];

/** Small circles keep this share of their width as a tolerance, so that they stay round: a turn of 0.36 at each corner. */
const ROUND = 1 / 125;

/** Round holes are drawn small: ten corners, sagitta a 40th of the diameter. */
const HOLE = 1 / 40;

const outlinesOf = (regions: readonly Region[]): Outline[] => regions.flatMap(r => [r.outer, ...r.openings]);

/** Where corners are at a height, as long edges that lean leave them. */
function leaning(part: Part, height: Mm): (polygon: readonly Point[]) => readonly Point[] {
  if (!part.bevel) return polygon => polygon;
  const [least, greatest] = widthAt(part, height);
  const middle = (least + greatest) / 2;
  const kept = (x: Mm): Mm => Math.max(Math.min(x, Math.max(greatest, middle)), Math.min(least, middle));
  return polygon => polygon.map(p => ({ x: kept(p.x), y: p.y }));
}

/** A part as polygons. @param tolerance how far arcs may stray, mm */
export function solidOf(part: Part, slabs: readonly Slab[], tolerance: Mm): Solid {
  const polygonOf = (o: Outline): Point[] => {
    const { minX, maxX } = bounds(o);
    return flatten(o, Math.min(tolerance, Math.max(1e-6, (maxX - minX) * ROUND)));
  };
  const drills = throughHoles(part);
  const face = (regions: readonly Region[], lean: ReturnType<typeof leaning>): SolidFace => {
    const outlines = outlinesOf(regions);
    const own = drills.filter(d => isIn(regions, d));
    return {
      around: outlines.map(polygonOf).map(lean),
      holes: own.map(d => flatten(circle(d.diameter / 2, d.at), d.diameter * HOLE)),
    };
  };
  return slabs.map(({ low, high, wood, above, below }) => {
    const around = outlinesOf(wood).map(polygonOf);
    const [leanLow, leanHigh] = [leaning(part, low), leaning(part, high)];
    return {
      low,
      high,
      bottom: around.map(leanLow),
      top: around.map(leanHigh),
      above: face(above, leanHigh),
      below: face(below, leanLow),
    };
  });
}
