import type { CutPart } from '../cutting/cut-part.js';
import type { Finding } from '../findings/finding.js';
import { type Cutter, cutWidth, type Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { Room } from './layout.js';
import type { Turned } from './turns.js';

/** A machine's bed, mm: length along the stock's. */
export interface Bed {
  readonly length: Mm;
  readonly width: Mm;
}

const ROUNDING: Mm = 1e-6;
const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

const fits = (length: Mm, width: Mm, room: Room): boolean =>
  length <= room.length + ROUNDING && width <= room.width + ROUNDING;

/** Where finished outlines may lie: inside the trued edges and the margins; grown by the gap, since parts' rooms are. */
export const usableRoom = (stock: Stock, gap: Mm): Room => ({
  length: stock.length - 2 * stock.margin + gap,
  width: stock.width - 2 * (stock.true + stock.margin) + gap,
});

/** The ways a part may lie in which it fits the stock. */
export const fittingWays = (ways: readonly Turned[], room: Room): Turned[] =>
  ways.filter(w => fits(w.silhouette.width, w.silhouette.height, room));

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
  const message = `${where} is ${mm(value)}; ${cut.part.id} needs at least ${mm(limit)} with ${edges} of ${mm(stock.margin)}`;
  return { level: 'stop', rule: 'stock-too-small', where, message, value, limit };
}

/** Whether the machine can cut the part as it lies: its outline and half a cut all round, the stock lying along or across the bed. */
export function fitsBed(way: Turned, gap: Mm, cutter: Cutter, bed: Bed): boolean {
  const length = way.silhouette.width - gap + cutWidth(cutter);
  const width = way.silhouette.height - gap + cutWidth(cutter);
  return fits(length, width, bed) || fits(width, length, bed);
}

export function tooLargeForBed(cut: CutPart, ways: readonly Turned[], gap: Mm, bed: Bed): Finding {
  const sizes = ways.map(w => [w.silhouette.width - gap, w.silhouette.height - gap] as const);
  const long = Math.min(...sizes.map(s => Math.max(...s)));
  const short = Math.min(...sizes.map(s => Math.min(...s)));
  const isLong = long + cutWidth(cut.cutter) > Math.max(bed.length, bed.width) + ROUNDING;
  const side = isLong === bed.length >= bed.width ? 'length' : 'width';
  const value = bed[side];
  const limit = (isLong ? long : short) + cutWidth(cut.cutter);
  const where = `bed.${side}`;
  const message = `${where} is ${mm(value)}; ${cut.part.id} needs at least ${mm(limit)}, its cut included`;
  return { level: 'stop', rule: 'bed-too-small', where, message, value, limit };
}

/** Stock that has to be cut down or moved along to be worked on the bed. */
export function overhang(stock: Stock, bed: Bed): Finding[] {
  if (fits(stock.length, stock.width, bed) || fits(stock.width, stock.length, bed)) return [];
  const message = `${stock.name} is ${mm(stock.length)} x ${mm(stock.width)}, the bed ${mm(bed.length)} x ${mm(bed.width)}: cut it down between parts or move it along`;
  return [
    {
      level: 'warn',
      rule: 'stock-over-bed',
      where: `stock.${stock.name}.length`,
      message,
      value: stock.length,
      limit: bed.length,
    },
  ];
}

export function tooFew(stock: Stock, needed: number): Finding[] {
  if (stock.count === undefined || needed <= stock.count) return [];
  const where = `stock.${stock.name}.count`;
  const more = needed - stock.count;
  const message = `${where} is ${stock.count}; ${needed} are needed: ${more} more`;
  return [{ level: 'stop', rule: 'too-few', where, message, value: stock.count, limit: needed }];
}
