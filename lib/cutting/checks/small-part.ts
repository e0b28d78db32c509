import type { Finding } from '../../findings/finding.js';
import { area, centroid } from '../../geometry/measure.js';
import { solid } from '../../geometry/outline.js';
import type { Part } from '../../parts/part.js';
import type { Method } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';

const HOLD: Readonly<Record<Method, string>> = {
  router: 'tabs hold it where they find room; else tape it down or screw it to the bed outside its lines',
  laser: 'tape it from below, or it may fall through or tip into the beam',
  hand: 'work it while it is still part of a larger piece, and saw it off last',
};

/** A part too small to hold while it is cut: its outline has less area than a square of that side. */
export function smallPart(part: Part, side: Mm, method: Method): Finding[] {
  const outline = solid(part.region.outer);
  const value = Math.sqrt(area(outline));
  if (value >= side) return [];
  const has = Number((value * value).toFixed(0));
  const message = `${part.id} is small, ${has} mm², and hard to hold while it is cut: ${HOLD[method]}; allowed: least.part, ${Number(side.toFixed(2))} mm square, or more`;
  const place = { part: part.id, at: centroid(outline) };
  return [{ level: 'note', rule: 'small-part', where: part.id, message, value, limit: side, place }];
}
