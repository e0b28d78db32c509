import type { Part } from '../parts/part.js';
import { partVolume } from '../parts/volume.js';
import type { Stock } from '../stock/stock.js';
import { densityOf } from '../stock/weighed.js';

export { weighedAs } from '../stock/weighed.js';

/** Weight of all the parts of one prop, kg; hardware, glue and finish not counted. */
export function weight(parts: readonly Part[], stock: readonly Stock[]): number {
  return parts.reduce((sum, part) => {
    const from = stock.find(s => s.name === part.stock);
    return sum + (from ? part.quantity * partVolume(part) * densityOf(from) : 0);
  }, 0);
}
