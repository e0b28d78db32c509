import { area } from '../geometry/measure.js';
import type { NestedPiece, NestLayout, NestPart, NestStock } from './job.js';
import { nestLayout } from './nest-layout.js';
import { rawRegion } from './stock-room.js';

/** What a piece of stock costs: its price, or its area where it has none. */
const priceOf = (stock: NestStock): number => stock.price ?? area(rawRegion(stock)) * 1e-6;

/** The parts of a piece of stock as a job of their own. */
const partsOn = (piece: NestedPiece, parts: readonly NestPart[]): NestPart[] =>
  parts.flatMap(part => {
    const quantity = piece.placements.filter(p => p.part === part.id).length;
    return quantity > 0 ? [{ ...part, quantity }] : [];
  });

/** Cheaper stock than a piece's that is not used up. */
function cheaperThan(piece: NestedPiece, pieces: readonly NestedPiece[], stocks: readonly NestStock[]): NestStock[] {
  const own = priceOf(stocks.find(s => s.name === piece.stock)!);
  return stocks.flatMap(stock => {
    const left = (stock.count ?? Infinity) - pieces.filter(p => p.stock === stock.name).length;
    if (priceOf(stock) >= own * (1 - 1e-9) || left < 1) return [];
    return [left === Infinity ? stock : { ...stock, count: left }];
  });
}

const covered = (piece: NestedPiece, parts: readonly NestPart[]): number =>
  partsOn(piece, parts).reduce((sum, p) => sum + p.quantity * area(p.region), 0);

/** Pieces in the order of the stocks, numbered in each as they come. */
const inOrder = (pieces: readonly NestedPiece[], stocks: readonly NestStock[]): NestedPiece[] =>
  stocks.flatMap(s => pieces.filter(p => p.stock === s.name).map((p, i) => ({ ...p, number: i + 1 })));

/** A layout with all that lies on a piece of stock moved to one that costs less, where it goes on it: the emptiest piece first.
 * @param lay lays parts out on stock */
export function onCheaperPieces(
  layout: NestLayout,
  parts: readonly NestPart[],
  stocks: readonly NestStock[],
  lay: (parts: readonly NestPart[], stocks: readonly NestStock[]) => NestLayout,
): NestLayout {
  let pieces = layout.pieces;
  for (const piece of [...layout.pieces].sort((a, b) => covered(a, parts) - covered(b, parts))) {
    const all = cheaperThan(piece, pieces, stocks);
    const room = covered(piece, parts);
    const large = all.filter(s => area(rawRegion(s)) > room);
    if (large.length === 0) continue;
    const tried = lay(
      partsOn(piece, parts).map(({ stock, ...p }) => ({
        ...p,
        stock: large.flatMap(s => (stock && !stock.includes(s.name) ? [] : [s.name])),
      })),
      large,
    );
    if (tried.unplaced.length > 0 || tried.pieces.length > 1) continue;
    pieces = [...pieces.filter(p => p !== piece), ...tried.pieces];
  }
  return pieces === layout.pieces ? layout : nestLayout(inOrder(pieces, stocks), layout.unplaced, stocks);
}
