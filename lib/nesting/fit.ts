import type { CutPart } from '../cutting/cut-part.js';
import type { Finding } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { Room } from './layout.js';
import { shorterPieces } from './ring-pieces.js';
import type { Turned } from './turns.js';

export const ROUNDING: Mm = 1e-6;
const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

export const fits = (length: Mm, width: Mm, room: Room): boolean =>
  length <= room.length + ROUNDING && width <= room.width + ROUNDING;

/** Where finished outlines may lie: inside the trued edges and the margins; grown by the gap, since parts' rooms are. */
export const usableRoom = (stock: Stock, gap: Mm): Room => ({
  length: stock.length - 2 * stock.margin + gap,
  width: stock.width - 2 * (stock.true + stock.margin) + gap,
});

/** The ways a part may lie in which it fits the stock. */
export const fittingWays = (ways: readonly Turned[], room: Room): Turned[] =>
  ways.filter(w => fits(w.silhouette.width, w.silhouette.height, room));

/** What helps beside larger stock. */
function orShorter({ part }: CutPart, stock: Stock): string {
  const room = usableRoom(stock, 0);
  const across = part.grain === undefined || stock.grain === 'none';
  const pieces = shorterPieces(part, (a, b) => fits(a, b, room) || (across && fits(b, a, room)));
  return pieces === undefined ? '' : `, or ${pieces}`;
}

/** What is missing where a part fits its stock in no way: the stock's width if that is what it takes, else its length. */
export function tooSmall(cut: CutPart, stock: Stock, ways: readonly Turned[], room: Room): Finding {
  const missing = ways.map(w => ({
    length: w.silhouette.width - room.length,
    width: w.silhouette.height - room.width,
  }));
  const least = (side: 'length' | 'width'): Mm => {
    const other = side === 'width' ? 'length' : 'width';
    const better = missing.filter(m => m[other] <= ROUNDING);
    return Math.min(...(better.length > 0 ? better : missing).map(m => m[side]));
  };
  const isWidth = missing.some(m => m.length <= ROUNDING) || !missing.some(m => m.width <= ROUNDING);
  const side = isWidth ? 'width' : 'length';
  const value = stock[side];
  const limit = value + least(side);
  const where = `stock.${stock.name}.${side}`;
  const edges = stock.true > 0 && isWidth ? `trued edges of ${mm(stock.true)} and margins` : 'margins';
  const message = `${where} is ${mm(value)}; ${cut.part.id} needs at least ${mm(limit)} with ${edges} of ${mm(stock.margin)}${orShorter(cut, stock)}`;
  return { level: 'stop', rule: 'stock-too-small', where, message, value, limit };
}

export function tooFew(stock: Stock, needed: number): Finding[] {
  if (stock.count === undefined || needed <= stock.count) return [];
  const where = `stock.${stock.name}.count`;
  const more = needed - stock.count;
  const message = `${where} is ${stock.count}; ${needed} are needed: ${more} more`;
  return [{ level: 'stop', rule: 'too-few', where, message, value: stock.count, limit: needed }];
}
