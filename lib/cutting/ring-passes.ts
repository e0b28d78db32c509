import { difference } from '../geometry/boolean.js';
import { locate } from '../geometry/locate.js';
import { area, perimeter } from '../geometry/measure.js';
import { offset } from '../geometry/offset.js';
import type { Region } from '../geometry/outline.js';
import { runsWithin } from '../geometry/runs-within.js';
import type { Mm } from '../units/length.js';
import { endOf, type Pass, ring } from './pass.js';

// Rings: the outline of where the tool's centre may go, then that outline a step further in, and so on. A ring of the region C takes all of it
// but C shrunk by the cutter's radius r. The next ring bounds C shrunk by the step s. With s <= r the one lies in the other, and nothing is
// left between rings. With r < s <= 2 r something may be left in corners and middles; a ring half a step in would take all of that,
// since s / 2 <= r, and of it only the stretches within r of what is left are needed.

/** What is left thinner than this is rounding, mm. */
const THINNEST: Mm = 1e-6;

const thick = (r: Region): boolean => area(r) > THINNEST * perimeter(r);

/** The region within a region where the next ring runs, less the pieces in which the last ring leaves nothing. */
function nextIn(centres: Region, rest: readonly Region[], step: Mm): Region[] {
  return offset([centres], -step).filter(inner => rest.some(r => locate(inner, r.outer[0]!) !== 'outside'));
}

/** What neither a region's own ring nor those within it take. */
function missed(rest: readonly Region[], inner: readonly Region[], radius: Mm): Region[] {
  return difference(rest, offset(inner, radius)).filter(thick);
}

/** Passes in the middle of the pocket first. */
function ringsIn(centres: Region, step: Mm, radius: Mm): Pass[] {
  const rest = offset([centres], -radius);
  if (rest.length === 0) return ring(centres);
  const inner = step > radius ? offset([centres], -step) : nextIn(centres, rest, step);
  const left = step > radius ? missed(rest, inner, radius) : [];
  const extra = left.length === 0 ? [] : runsWithin(offset([centres], -step / 2), offset(left, radius));
  const before = [...inner.flatMap(i => ringsIn(i, step, radius)), ...extra];
  const last = before.at(-1);
  return [...before, ...ring(centres, last && endOf(last))];
}

/** Rings of the tool's centre, from the middle outward, arcs as arcs about the same centres; with what rings leave in corners and middles.
 * @param centres where the tool's centre may go: it then covers these grown by the radius, all of it and no more
 * @param step mm, above 0, at most twice the radius */
export const ringPasses = (centres: readonly Region[], step: Mm, radius: Mm): Pass[] =>
  centres.flatMap(c => ringsIn(c, step, radius));
