import type { Finding } from '../findings/finding.js';
import type { Mm } from '../units/length.js';
import { type InsideCorner, woodLeft } from './hollow.js';

/** Wood left in a corner is worth a word from here on, mm. */
export const WORTH_A_NOTE: Mm = 0.05;

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** One note about the inside corner that keeps the most wood; none where no corner keeps enough to matter.
 * @param corners of a part that stay as the cutter leaves them   @param what they belong to: 'its outline' */
export function cornerNote(part: string, what: string, corners: readonly InsideCorner[], radius: Mm): Finding[] {
  const kept = corners
    .map(({ turn, at }) => ({ wood: woodLeft(turn, radius), at }))
    .filter(c => c.wood >= WORTH_A_NOTE);
  const [first, ...others] = kept;
  if (!first) return [];
  const most = others.reduce((a, b) => (b.wood > a.wood ? b : a), first);
  const many = kept.length === 1 ? '1 inside corner' : `${kept.length} inside corners`;
  const message = `${part}: a round cutter ${mm(2 * radius)} wide leaves up to ${mm(most.wood)} of wood in ${many} of ${what}; square them by hand if a piece must fit there`;
  const place = { part, at: most.at };
  return [{ level: 'note', rule: 'inside-corner', where: part, message, value: most.wood, limit: WORTH_A_NOTE, place }];
}
