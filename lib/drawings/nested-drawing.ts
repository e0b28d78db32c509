import { moveRegion } from '../geometry/motion.js';
import type { Polyline, Region } from '../geometry/outline.js';
import type { NestedPiece, NestPart, NestStock } from '../nesting/job.js';
import { rawRegion } from '../nesting/stock-room.js';
import type { Drawing } from './drawing.js';
import { type Entry, layerList } from './layer-list.js';

const entriesOf = ({ outer, openings }: Region): Entry[] => [
  { layer: 'OUTSIDE', closed: [outer] },
  { layer: 'INSIDE', closed: openings },
];

/** A piece of stock with finished outlines where they are to be cut, not compensated, and what is never cut: the edge of the stock and its defects.
 * @param cuts straight cuts of a layout for hand tools, as marks */
export function nestedDrawing(
  piece: NestedPiece,
  stock: NestStock,
  parts: readonly NestPart[],
  cuts: readonly Polyline[] = [],
): Drawing {
  const placed = piece.placements.flatMap(p => {
    const part = parts.find(q => q.id === p.part);
    return part ? entriesOf(moveRegion(part.region, p.motion)) : [];
  });
  const raw = rawRegion(stock);
  const defects = (stock.defects ?? []).map(d => d.outer);
  const edge: Entry = { layer: 'STOCK', closed: [raw.outer, ...raw.openings, ...defects] };
  return {
    title: `${piece.stock} ${piece.number}`,
    layers: layerList([...placed, { layer: 'SCORE', open: cuts }, edge]),
  };
}
