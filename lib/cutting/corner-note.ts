import type { Finding } from '../findings/finding.js';
import type { Mm, Radians } from '../units/length.js';
import { woodLeft } from './hollow.js';

/** Wood left in a corner is worth a word from here on, mm. */
const WORTH_A_NOTE: Mm = 0.05;

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** One note about the inside corner that keeps the most wood; none where no corner keeps enough to matter.
 * @param turns how far the outline turns in each inside corner   @param what they belong to: 'its outline' */
export function cornerNote(part: string, what: string, turns: readonly Radians[], radius: Mm): Finding[] {
  const left = turns.map(turn => woodLeft(turn, radius)).filter(wood => wood >= WORTH_A_NOTE);
  if (left.length === 0) return [];
  const most = Math.max(...left);
  const corners = left.length === 1 ? '1 inside corner' : `${left.length} inside corners`;
  const message = `${part}: a round cutter ${mm(2 * radius)} wide leaves up to ${mm(most)} of wood in ${corners} of ${what}; square them by hand if a piece must fit there`;
  return [{ level: 'note', rule: 'inside-corner', where: part, message, value: most, limit: WORTH_A_NOTE }];
}
