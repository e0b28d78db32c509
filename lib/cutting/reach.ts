import type { Finding } from '../findings/finding.js';
import type { Part } from '../parts/part.js';
import type { Cutter } from '../stock/stock.js';
import type { Mm } from '../units/length.js';

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** A router's bit that is too short for a part. Pockets are no deeper than what is cut through. @param field of the plan that says the cutter */
export function reachFindings(part: Part, cutter: Cutter, field: string): Finding[] {
  if (cutter.kind !== 'router' || cutter.reach === undefined) return [];
  const limit = part.thickness;
  const { reach: value } = cutter;
  if (value >= limit) return [];
  const where = `${field}.reach`;
  const message = `${where} is ${mm(value)}; ${part.id} of ${part.stock} is ${mm(limit)} thick and cut through; allowed: a cutter that reaches ${mm(limit)}, or ${part.id} of stock no thicker than ${mm(value)}, in more layers where it is built of layers`;
  return [{ level: 'stop', rule: 'cutter-reach', where, message, value, limit }];
}
