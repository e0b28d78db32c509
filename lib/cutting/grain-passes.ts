import { levelSpans } from '../geometry/level.js';
import { bounds, boundsOfAll } from '../geometry/measure.js';
import { movePoint, moveRegion, turning } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import { type Polyline, type Region, vertex } from '../geometry/outline.js';
import { angleOf, distance, type Point, subtract } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import { endOf, movePass, type Pass, ring } from './pass.js';

// Strokes: the pass round the wall, which comes last, takes all of the region C of the tool's centre but C shrunk by the cutter's radius r.
// Over what that leaves run level lines no more than a step s apart. Each point of it is within s / 2 of a line, straight above or below,
// and there at least r - s / 2 inside C; so the strokes end that far off the wall pass, and all is covered as long as s <= 2 r.

/** A level is looked at so little above where it is, mm, that it does not run through a corner: corners lie at round figures. */
const ASIDE: Mm = 1.3e-6;

const spansAt = (regions: readonly Region[], y: Mm): (readonly [Mm, Mm])[] =>
  regions.flatMap(r => levelSpans(r, y + ASIDE)).filter(([from, to]) => to > from);

/** Whether the straight way from one point to another stays in a region. */
function staysIn(region: Region, a: Point, b: Point): boolean {
  const frame = turning(-angleOf(subtract(b, a)));
  const [from, to] = [movePoint(a, frame), movePoint(b, frame)];
  return spansAt([moveRegion(region, frame)], from.y).some(([left, right]) => left <= from.x && right >= to.x);
}

/** Level lines that cover a height, no further apart than a step, each half of that from the next. */
function levels(low: Mm, high: Mm, step: Mm): Mm[] {
  const count = Math.max(1, Math.ceil((high - low) / step));
  return Array.from({ length: count }, (_, i) => low + ((high - low) * (i + 0.5)) / count);
}

/** A stroke from the end nearer to a point. */
const strokeFrom = (at: Point, y: Mm, [left, right]: readonly [Mm, Mm]): readonly [Point, Point] => {
  const ends = [
    { x: left, y },
    { x: right, y },
  ] as const;
  return distance(at, ends[0]) <= distance(at, ends[1]) ? ends : [ends[1], ends[0]];
};

/** Strokes on each level, joined to one of the level before where the way between stays in the region. */
function toAndFro(centres: Region, field: readonly Region[], heights: readonly Mm[]): Point[][] {
  const all: Point[][] = [];
  let before: Point[][] = [];
  for (const y of heights) {
    const here: Point[][] = [];
    for (const span of spansAt(field, y)) {
      const joined = before.find(run => staysIn(centres, run.at(-1)!, strokeFrom(run.at(-1)!, y, span)[0]));
      const run = joined ?? [];
      if (!joined) all.push(run);
      run.push(...strokeFrom(run.at(-1) ?? { x: span[0], y }, y, span));
      before = before.filter(r => r !== joined);
      here.push(run);
    }
    before = here;
  }
  return all;
}

/** Strokes along x and a last pass round the wall, in one piece of where the tool's centre may go. */
function strokesIn(centres: Region, step: Mm, radius: Mm): Pass[] {
  const rest = offset([centres], -radius);
  if (rest.length === 0) return ring(centres);
  const box = boundsOfAll(rest.map(r => bounds(r.outer)));
  const field = offset([centres], step / 2 - radius);
  const strokes = toAndFro(centres, field, levels(box.minY, box.maxY, step)).map((points): Pass => {
    const line: Polyline = points.map(p => vertex(p));
    return { line, closed: false };
  });
  const last = strokes.at(-1);
  return [...strokes, ...ring(centres, last && endOf(last))];
}

/** Straight strokes of the tool's centre along the grain, to and fro where that stays in the pocket, and a last pass round the wall.
 * @param centres where the tool's centre may go: it then covers these grown by the radius, all of it and no more
 * @param step mm, above 0, less than twice the radius   @param grain its direction */
export function grainPasses(centres: readonly Region[], step: Mm, radius: Mm, grain: Radians): Pass[] {
  const level = centres.map(c => moveRegion(c, turning(-grain)));
  return level.flatMap(c => strokesIn(c, step, radius)).map(p => movePass(p, turning(grain)));
}
