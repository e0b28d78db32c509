import type { Part } from '../parts/part.js';
import type { Stock } from '../stock/stock.js';
import { traitsOf } from '../stock/traits.js';
import type { Hardware } from './model.js';

const FLANGED = 'flanged shaft collar';

/** Whether a part is held to its shaft by a flange that is glued on. */
export const isFlanged = (lock: Hardware | undefined): boolean => lock?.name === FLANGED;

/** What holds a part to a shaft that turns: a screw through it, or a flange glued on where screws do not hold. @param use what it does */
export const shaftLock = (use: string, ...stocks: readonly Stock[]): Hardware =>
  takesScrews(...stocks)
    ? { name: 'locking screw', quantity: 1, use }
    : { name: FLANGED, quantity: 1, use: `${use}: its flange glued on` };

/** Whether screws hold in all of these. */
export const takesScrews = (...stocks: readonly Stock[]): boolean => stocks.every(s => traitsOf(s).screws);

/** Stocks that a prop's parts are cut from. */
export const stocksOf = (parts: readonly Part[], stock: readonly Stock[]): Stock[] =>
  stock.filter(s => parts.some(p => p.stock === s.name));

/** The glues to buy for parts of these stocks, each once. */
export function gluesFor(stocks: readonly Stock[]): Hardware[] {
  const names = [...new Set(stocks.map(s => traitsOf(s).glue))];
  const use = (name: string): string => {
    if (names.length === 1) return 'every joint';
    const on = stocks.filter(s => traitsOf(s).glue === name).map(s => s.name);
    return `joints of ${[...new Set(on)].join(', ')}`;
  };
  return names.map(name => ({ name, quantity: 1, use: use(name) }));
}
