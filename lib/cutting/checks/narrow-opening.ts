import type { Finding } from '../../findings/finding.js';
import { difference } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { asCircle, type Outline, reverse, solid } from '../../geometry/outline.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import { widestCutter } from '../hollow.js';
import { middleOfLargest } from './narrow.js';

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** An opening the cutter does not get into, or not everywhere. */
export function narrowOpening(part: Part, opening: Outline, radius: Mm): Finding {
  const hollow = solid(reverse(opening));
  const round = asCircle(opening);
  const value = round ? 2 * round.radius : widestCutter(hollow, 2 * radius);
  const message = `${part.id} has an opening that a cutter of at most ${mm(value)} gets into; the cutter is ${mm(2 * radius)} wide`;
  const place = middleOfLargest(part.id, difference([hollow], offset(offset([hollow], -radius), radius)));
  return { level: 'stop', rule: 'narrow-opening', where: part.id, message, value, limit: 2 * radius, ...place };
}
