import type { Finding } from '../findings/finding.js';
import { named, type Solid } from '../models/solids.js';
import type { Mm } from '../units/length.js';
import { rounded, WITHIN } from './nearness.js';

/** How far two lying pieces of one kind, as thick as each other, are out of flush. */
function step({ form: a, piece: p }: Solid, { form: b, piece: q }: Solid): Mm {
  const alike = a.part.kind === b.part.kind && Math.abs(a.part.thickness - b.part.thickness) <= WITHIN;
  return alike && !a.stands && !b.stands ? Math.abs(p.z - q.z) : 0;
}

function finding(a: Solid, b: Solid, by: Mm): Finding {
  return {
    level: 'warn',
    rule: 'mating',
    where: `${a.piece.part}, ${b.piece.part}`,
    message: `${named(a)} and ${named(b)} meet edge to edge, as thick as each other, with their faces ${rounded(by)} mm out of flush, at heights ${rounded(a.low)} and ${rounded(b.low)} mm; allowed: flush`,
    value: by,
    limit: WITHIN,
  };
}

/** Pieces of one kind, equally thick, that meet edge to edge and are not flush: the first of each two parts.
 * @param met pieces whose tagged faces touch */
export function flush(met: readonly (readonly [Solid, Solid])[]): Finding[] {
  const found = new Map<string, Finding>();
  for (const [a, b] of met) {
    const by = step(a, b);
    const [first, second] = a.low < b.low ? [a, b] : [b, a];
    const key = `${first.piece.part}, ${second.piece.part}`;
    if (by > WITHIN && !found.has(key)) found.set(key, finding(first, second, by));
  }
  return [...found.values()];
}
