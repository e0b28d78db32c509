import { bounds } from '../geometry/measure.js';
import { PIN_WALL } from '../models/registration.js';
import type { RegisterPin } from '../nesting/sheet.js';
import { partFaces } from '../parts/faces.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';

/** A pin that holds a blank while it is cut; common practice, no source. */
const DIAMETER: Mm = 6;
/** Room for whatever goes round the part: more than any common cutter is wide (1/2 in). */
const CUTTER: Mm = 13;

/** Two pins through the blank of a part worked on both faces, left and right of the part half way up it: as far from the line through its
 * middle, about which it is turned over (x to -x), as each other, so that it drops on the same two pins. None for any other part. */
export function partPins(part: Part): RegisterPin[] {
  if (!partFaces(part).second) return [];
  const { minX, maxX, minY, maxY } = bounds(part.region.outer);
  const off = CUTTER + PIN_WALL + DIAMETER / 2;
  return [minX - off, maxX + off].map(x => ({ at: { x, y: (minY + maxY) / 2 }, diameter: DIAMETER }));
}
