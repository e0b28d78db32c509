import type { Finding } from '../../findings/finding.js';
import { difference } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { type Region, solid } from '../../geometry/outline.js';
import { hasMates } from '../../parts/mates.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import { middleOfLargest } from './narrow.js';

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** A gap in the outer outline narrower than the cutter: a warning, or a stop if another piece meets an edge there.
 * @param centres the outline grown by the radius */
export function narrowNotch(part: Part, centres: readonly Region[], radius: Mm): Finding[] {
  const stays = difference(offset(centres, -radius), [solid(part.region.outer)]);
  const level = stays.some(hasMates) ? 'stop' : 'warn';
  const message = `${part.id} has a notch the cutter, ${mm(2 * radius)} wide, cannot get into; a narrower cutter or a wider notch is needed`;
  const place = middleOfLargest(part.id, stays);
  return [{ level, rule: 'cutter-too-wide', where: part.id, message, value: 2 * radius, ...place }];
}
