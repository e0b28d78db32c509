import { encloses } from '../locate.js';
import { type Box, bounds } from '../measure.js';
import type { Outline, Region } from '../outline.js';
import { pointOn, segmentFrom } from '../segment.js';
import { closePairs } from './pairs.js';
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
  const owners = outers.length === 1 ? holes.map(() => 0) : ownersAmong(outers, holes, tolerance);
  const openings: Outline[][] = outers.map(() => []);
  for (let k = 0; k < holes.length; k++) {
    const own = openings[owners[k]!];
    if (!own) return undefined;
    own.push(holes[k]!.outline);
  }
  return outers.map((o, k) => ({ outer: o.outline, openings: openings[k]! }));
}

const byPlace = (a: Loop, b: Loop): number => {
  const [v, w] = [a.outline[0]!, b.outline[0]!];
  return v.x - w.x || v.y - w.y || Math.abs(b.area) - Math.abs(a.area);
};

/** For each hole the place in `outers` of the smallest outline round it; -1 where there is none. */
function ownersAmong(outers: readonly Loop[], holes: readonly Loop[], tolerance: number): number[] {
  const boxes = [...outers, ...holes].map(l => bounds(l.outline));
  const columns = {
    minX: boxes.map(b => b.minX),
    minY: boxes.map(b => b.minY),
    maxX: boxes.map(b => b.maxX),
    maxY: boxes.map(b => b.maxY),
  };
  const round: number[][] = holes.map(() => []);
  closePairs(columns, 0, boxes.length, tolerance, (i, j) => {
    const hole = j - outers.length;
    if (i >= outers.length || hole < 0 || outers[i]!.area <= -holes[hole]!.area) return;
    if (holds(boxes[i]!, boxes[j]!, 4 * tolerance)) round[hole]!.push(i);
  });
  return holes.map((hole, k) => smallestRound(hole, outers, round[k]!));
}

function smallestRound(hole: Loop, outers: readonly Loop[], candidates: readonly number[]): number {
  if (candidates.length <= 1) return candidates[0] ?? -1;
  const inside = pointOn(segmentFrom(hole.outline[0]!, hole.outline[1]!), 0.5);
  const round = candidates.filter(i => encloses(outers[i]!.outline, inside));
  return round.reduce((best, i) => (best >= 0 && outers[best]!.area <= outers[i]!.area ? best : i), -1);
}

const holds = (a: Box, b: Box, slack: number): boolean =>
  a.minX <= b.minX + slack && a.minY <= b.minY + slack && a.maxX >= b.maxX - slack && a.maxY >= b.maxY - slack;
