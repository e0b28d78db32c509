import type { Finding } from '../../findings/finding.js';
import type { Part } from '../../parts/part.js';
import type { Method } from '../../stock/stock.js';
import { LEAST, type Least } from './least.js';
import { smallPart } from './small-part.js';
import { thinWall } from './thin-wall.js';

/** What no cutter mends: a part that is too small to hold, or has wood too thin to stand once everything is cut.
 * @param least what is not given is LEAST's */
export function checkPart(part: Part, method: Method, least: Partial<Least> = {}): Finding[] {
  const limits = { ...LEAST, ...least };
  return [...thinWall(part, limits.wall), ...smallPart(part, limits.part, method)];
}
