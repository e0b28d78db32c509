import { distanceToSegment, locate } from '../geometry/locate.js';
import type { Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import type { Drill, Part } from './part.js';

/** Least distance of a point from any edge of a region, mm. */
const fromEdges = (region: Region, p: Point): Mm =>
  Math.min(...[region.outer, ...region.openings].flatMap(o => segments(o).map(s => distanceToSegment(s, p))));

/** Holes of a part that leave less than a wall of wood between themselves and its edges or a pocket, or lie off it altogether.
 * @param wall mm */
export const crowdedHoles = (part: Part, wall: Mm): Drill[] =>
  part.features.filter((f): f is Drill => {
    if (f.kind !== 'drill') return false;
    const least = f.diameter / 2 + wall;
    const clear = (region: Region, place: 'inside' | 'outside'): boolean =>
      locate(region, f.at) === place && fromEdges(region, f.at) >= least;
    return !clear(part.region, 'inside') || part.features.some(g => g.kind === 'pocket' && !clear(g.area, 'outside'));
  });
