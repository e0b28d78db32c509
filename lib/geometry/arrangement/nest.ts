import { encloses } from '../locate.js';
import { type Box, bounds } from '../measure.js';
import type { Outline, Region } from '../outline.js';
import { pointOn, segmentFrom } from '../segment.js';
import { turningOf } from './turning.js';

interface Loop {
  readonly outline: Outline;
  readonly area: number;
}

/** Loops into regions: each clockwise loop is an opening of the smallest anticlockwise one round it. Loops thinner than the
 * tolerance are dropped. In order of the first vertices. Undefined where an opening has no outline round it. */
export function nest(outlines: readonly Outline[], tolerance: number): Region[] | undefined {
  const loops: Loop[] = [];
  for (const outline of outlines) {
    const { area, chords } = turningOf(outline);
    if (Math.abs(area) > tolerance * chords) loops.push({ outline, area });
  }
  loops.sort(byPlace);
  const outers = loops.filter(l => l.area > 0);
  const holes = loops.filter(l => l.area < 0);
  const owner = outers.length === 1 ? () => outers[0] : ownerAmong(outers, tolerance);
  const openings = new Map<Loop, Outline[]>(outers.map(o => [o, []]));
  for (const hole of holes) {
    const own = openings.get(owner(hole) ?? hole);
    if (!own) return undefined;
    own.push(hole.outline);
  }
  return outers.map(o => ({ outer: o.outline, openings: openings.get(o)! }));
}

const byPlace = (a: Loop, b: Loop): number => {
  const [v, w] = [a.outline[0]!, b.outline[0]!];
  return v.x - w.x || v.y - w.y || Math.abs(b.area) - Math.abs(a.area);
};

/** Finds the smallest outline round a hole; none where there is none. */
function ownerAmong(outers: readonly Loop[], tolerance: number): (hole: Loop) => Loop | undefined {
  const boxed = outers.map(loop => ({ loop, box: bounds(loop.outline) }));
  return hole => {
    const box = bounds(hole.outline);
    const round = boxed.filter(o => o.loop.area > -hole.area && holds(o.box, box, 4 * tolerance)).map(o => o.loop);
    if (round.length <= 1) return round[0];
    const inside = pointOn(segmentFrom(hole.outline[0]!, hole.outline[1]!), 0.5);
    return round
      .filter(o => encloses(o.outline, inside))
      .reduce<Loop | undefined>((best, o) => (best && best.area <= o.area ? best : o), undefined);
  };
}

const holds = (a: Box, b: Box, slack: number): boolean =>
  a.minX <= b.minX + slack && a.minY <= b.minY + slack && a.maxX >= b.maxX - slack && a.maxY >= b.maxY - slack;
