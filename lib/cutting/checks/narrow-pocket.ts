import type { Finding } from '../../findings/finding.js';
import { difference } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import type { Region } from '../../geometry/outline.js';
import type { Part, Pocket } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import { middleOfLargest } from './narrow.js';

/** A pocket the cutter does not get into, or not everywhere.
 * @param centres where the centre of a cutter that wide goes   @param widest cutter that gets everywhere, mm */
export function narrowPocket(part: Part, pocket: Pocket, centres: readonly Region[], width: Mm, widest: Mm): Finding {
  const message = `${part.id} has a pocket that a cutter of at most ${widest} mm gets into; the cutter is ${Number(width.toFixed(3))} mm wide`;
  const place = middleOfLargest(part.id, difference([pocket.area], offset(centres, width / 2)));
  return { level: 'stop', rule: 'narrow-pocket', where: part.id, message, value: widest, limit: width, ...place };
}
