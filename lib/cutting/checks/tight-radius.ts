import type { Finding } from '../../findings/finding.js';
import { pointAlong } from '../../geometry/along.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import { WORTH_A_NOTE } from '../corner-note.js';
import { type TightArc, woodLeft } from '../hollow.js';

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** Whether the cutter leaves enough wood in an arc to matter. */
const matters = ({ arc }: TightArc, radius: Mm): boolean =>
  woodLeft(Math.abs(arc.sweep), radius) - woodLeft(Math.abs(arc.sweep), arc.radius) >= WORTH_A_NOTE;

/** An inside radius smaller than the cutter's, the tightest: a warning, or a stop where another piece meets such an arc.
 * @param arcs of the part that are tighter than the cutter   @param what they belong to: 'its outline' */
export function tightRadius(part: Part, what: string, arcs: readonly TightArc[], radius: Mm): Finding[] {
  const [first, ...others] = arcs.filter(a => matters(a, radius));
  if (!first) return [];
  const { arc } = others.reduce((a, b) => (b.arc.radius < a.arc.radius ? b : a), first);
  const level = [first, ...others].some(a => a.mate !== undefined) ? 'stop' : 'warn';
  const message = `${part.id} has an inside radius of ${mm(arc.radius)} in ${what}, the cutter's is ${mm(radius)}: wood stays there; allowed: a narrower cutter or a larger radius`;
  const place = { part: part.id, at: pointAlong(arc, 0.5) };
  return [{ level, rule: 'tight-radius', where: part.id, message, value: arc.radius, limit: radius, place }];
}
