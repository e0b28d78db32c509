import type { Finding } from '../findings/finding.js';
import { area, bounds } from '../geometry/measure.js';
import { moveOutline } from '../geometry/motion.js';
import type { Mm } from '../units/length.js';
import type { NestedPiece, NestLayout, NestPart, NestPlacement, NestStock } from './job.js';
import { offcutOf } from './offcut.js';
import { rawRegion } from './stock-room.js';

/** Parts by their ids. */
export type PartsById = ReadonlyMap<string, NestPart>;

export const partsById = (parts: readonly NestPart[]): PartsById => new Map(parts.map(p => [p.id, p]));

/** A piece of stock with parts on it: how much of it is used, and what is left whole. @param gap kept from the parts to the offcut, mm */
export function nestedPiece(
  stock: NestStock,
  number: number,
  placements: readonly NestPlacement[],
  parts: PartsById,
  gap: Mm,
): NestedPiece {
  const boxes = placements.map(p => bounds(moveOutline(parts.get(p.part)!.region.outer, p.motion)));
  const used = { x: Math.max(...boxes.map(b => b.maxX)), y: Math.max(...boxes.map(b => b.maxY)) };
  const raw = rawRegion(stock);
  const covered = placements.reduce((sum, p) => sum + area(parts.get(p.part)!.region), 0);
  const offcut = offcutOf(raw, used, gap);
  return { stock: stock.name, number, placements, utilisation: covered / area(raw), ...(offcut && { offcut }) };
}

const noPlace = (part: string, quantity: number): Finding => ({
  level: 'stop',
  rule: 'no-place',
  where: part,
  message: `${part}: ${quantity} found no place on the stock there is`,
  value: quantity,
  limit: 0,
});

/** What a layout comes to. @param left of each part, how many found no place */
export function nestLayout<T extends NestedPiece>(
  pieces: readonly T[],
  left: NestLayout['unplaced'],
  stocks: readonly NestStock[],
): NestLayout & { readonly pieces: readonly T[] } {
  const byName = new Map(stocks.map(s => [s.name, { price: s.price ?? 0, area: area(rawRegion(s)) }]));
  const sum = (each: (p: T) => number): number => pieces.reduce((total, p) => total + each(p), 0);
  const total = sum(p => byName.get(p.stock)!.area);
  const unplaced = left.filter(u => u.quantity > 0);
  return {
    pieces,
    unplaced,
    cost: sum(p => byName.get(p.stock)!.price),
    utilisation: total > 0 ? sum(p => p.utilisation * byName.get(p.stock)!.area) / total : 0,
    findings: unplaced.map(u => noPlace(u.part, u.quantity)),
  };
}
