import { findMaterial, material } from './materials.js';
import type { Stock } from './stock.js';

/** What a stock is taken to be when the plan does not say: the panel and the construction lumber most shops have. */
const ASSUMED = { sheet: 'softwood plywood', board: 'coast Douglas-fir' } as const;

/** The material a stock is weighed as, and whether that is only assumed. */
export function weighedAs(stock: Stock): { readonly material: string; readonly assumed: boolean } {
  const named = stock.species === undefined ? undefined : findMaterial(stock.species);
  return named ? { material: named.name, assumed: false } : { material: ASSUMED[stock.kind], assumed: true };
}

/** What a stock weighs, kg/mm³. */
export const densityOf = (stock: Stock): number => material(weighedAs(stock).material).density / 1e9;
