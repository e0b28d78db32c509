import type { Part } from '../parts/part.js';
import { partVolume } from '../parts/volume.js';
import { findMaterial } from '../stock/materials.js';
import type { Stock } from '../stock/stock.js';

/** What a stock is taken to be when the plan does not say: the panel and the construction lumber most shops have. */
const ASSUMED = { sheet: 'softwood plywood', board: 'coast Douglas-fir' } as const;

const MM3_PER_M3 = 1e9;

/** The material a stock is weighed as, and whether that is only assumed. */
export function weighedAs(stock: Stock): { readonly material: string; readonly assumed: boolean } {
  const named = stock.species === undefined ? undefined : findMaterial(stock.species);
  return named ? { material: named.name, assumed: false } : { material: ASSUMED[stock.kind], assumed: true };
}

/** Weight of all the parts of one prop, kg; hardware, glue and finish not counted. */
export function weight(parts: readonly Part[], stock: readonly Stock[]): number {
  return parts.reduce((sum, part) => {
    const from = stock.find(s => s.name === part.stock);
    const density = from ? (findMaterial(weighedAs(from).material)?.density ?? 0) : 0;
    return sum + (part.quantity * partVolume(part) * density) / MM3_PER_M3;
  }, 0);
}
