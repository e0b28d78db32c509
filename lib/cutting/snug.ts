import { difference } from '../geometry/boolean.js';
import { bounds, segmentLength } from '../geometry/measure.js';
import { offset } from '../geometry/offset.js';
import { type Outline, type Polyline, type Region, vertex } from '../geometry/outline.js';
import { segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import type { Pass } from './pass.js';

// Where a pocket is just as wide as the cutter, as a groove may be and as a pocket is that runs on past a shoulder, the tool's centre has a line
// to go along and no area. A cutter a hair narrower has an area there, a strip as thin as that hair: one of its long sides is the line.

/** A way this much narrower than the cutter lets it through: no machine and no wood can tell. */
const HAIR: Mm = 1e-4;
/** A strip shorter than this is the point of a corner. */
const SHORTEST: Mm = 0.05;

/** Where the centre of a cutter a hair narrower may go. */
export const snugCentres = (area: readonly Region[], radius: Mm): Region[] => offset(area, HAIR / 2 - radius);

const isLong = ({ outer }: Region): boolean => {
  const box = bounds(outer);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY) > SHORTEST;
};

/** The stretches of an outline between edges no longer than a strip is thin. */
function sides(outline: Outline): Polyline[] {
  const edges = segments(outline);
  const isCap = edges.map(s => segmentLength(s) < 10 * HAIR);
  const first = isCap.indexOf(true);
  if (first < 0) return [];
  const runs: Polyline[] = [];
  let run: Polyline = [];
  for (let k = 1; k <= edges.length; k++) {
    const i = (first + k) % edges.length;
    if (!isCap[i]) run = [...run, outline[i]!];
    else if (run.length > 0) {
      runs.push([...run, vertex(outline[i]!)]);
      run = [];
    }
  }
  return runs;
}

/** The line through a strip; a strip that closes on itself or forks is run round. */
function through(strip: Region): Pass {
  const [side, other, ...more] = strip.openings.length === 0 ? sides(strip.outer) : [];
  return side && other && more.length === 0 ? { line: side, closed: false } : { line: strip.outer, closed: true };
}

/** Passes where an area is just as wide as the cutter.
 * @param centres where the tool's centre may go besides   @param radius of the cutter, mm */
export function snugPasses(area: Region, centres: readonly Region[], radius: Mm): Pass[] {
  const strips = difference(snugCentres([area], radius), offset(centres, 2 * HAIR));
  return strips.filter(isLong).map(through);
}
