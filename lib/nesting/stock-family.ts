import { difference } from '../geometry/boolean.js';
import { type Region, rectangle, solid } from '../geometry/outline.js';
import type { Stock } from '../stock/stock.js';
import type { NestStock } from './job.js';

/** A stock of its own and those that are like it: parts of the first may be cut from any of them. */
export type Family = readonly [Stock, ...Stock[]];

/** Stocks by families, in the order of those that are like no other. */
export const familiesOf = (stocks: readonly Stock[]): Family[] =>
  stocks.filter(s => s.like === undefined).map((s): Family => [s, ...stocks.filter(o => o.like === s.name)]);

/** Whether a stock is a rectangle with nothing in it. */
export const isPlainStock = (stock: Stock): boolean => !stock.outline && (stock.defects ?? []).length === 0;

/** What of a stock's box no part may lie on: defects, and what an outline of its own leaves out. */
export function lacking({ length, width, outline, defects = [] }: Stock): Region[] {
  const outside = outline ? difference([solid(rectangle(0, 0, length, width))], [outline]) : [];
  return [...outside, ...defects];
}

/** What is used up first: pieces at hand that are like a stock cost nothing unless they say so. */
const priceOf = ({ price, like, count }: Stock): number | undefined =>
  price ?? (like !== undefined && count !== undefined ? 0 : undefined);

/** A plan's stock as nesting takes it. */
export function nestStockOf(stock: Stock): NestStock {
  const { name, length, width, margin, grain, defects, count, outline } = stock;
  const price = priceOf(stock);
  const any = {
    name,
    margin,
    ...(grain && { grain }),
    ...(defects && { defects }),
    ...(count !== undefined && { count }),
    ...(price !== undefined && { price }),
  };
  if (outline) return { ...any, kind: 'offcut', outline };
  return stock.kind === 'board'
    ? { ...any, kind: 'board', length, width, true: stock.true }
    : { ...any, kind: 'sheet', length, width };
}
