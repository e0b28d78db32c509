import { encloses } from '../locate.js';
import { type Box, bounds, length, signedArea } from '../measure.js';
import type { Outline, Region } from '../outline.js';
import { pointOn, segmentFrom } from '../segment.js';

interface Loop {
  readonly outline: Outline;
  readonly area: number;
  readonly box: Box;
}

const boxHolds = (a: Box, b: Box, slack: number): boolean =>
  a.minX <= b.minX + slack && a.minY <= b.minY + slack && a.maxX >= b.maxX - slack && a.maxY >= b.maxY - slack;

/** Loops into regions: each clockwise loop is an opening of the smallest anticlockwise one round it. Loops thinner than the
 * tolerance are dropped. In order of area, large first, then of place. Undefined where an opening has no outline round it. */
export function nest(outlines: readonly Outline[], tolerance: number): Region[] | undefined {
  const loops: Loop[] = outlines
    .map(outline => ({ outline, area: signedArea(outline), box: bounds(outline) }))
    .filter(l => Math.abs(l.area) > tolerance * length(l.outline))
    .sort(byPlace);
  const outers = loops.filter(l => l.area > 0);
  const openings = new Map<Loop, Outline[]>(outers.map(o => [o, []]));
  for (const hole of loops) {
    if (hole.area > 0) continue;
    const owner = ownerOf(hole, outers, tolerance);
    if (!owner) return undefined;
    openings.get(owner)!.push(hole.outline);
  }
  return outers.map(o => ({ outer: o.outline, openings: openings.get(o)! }));
}

const byPlace = (a: Loop, b: Loop): number =>
  a.box.minX - b.box.minX || a.box.minY - b.box.minY || b.box.maxX - a.box.maxX || b.box.maxY - a.box.maxY;

function ownerOf(hole: Loop, outers: readonly Loop[], tolerance: number): Loop | undefined {
  const round = outers.filter(o => o.area > -hole.area && boxHolds(o.box, hole.box, 4 * tolerance));
  if (round.length <= 1) return round[0];
  const inside = pointOn(segmentFrom(hole.outline[0]!, hole.outline[1]!), 0.5);
  return round
    .filter(o => encloses(o.outline, inside))
    .reduce<Loop | undefined>((best, o) => (best && best.area <= o.area ? best : o), undefined);
}
