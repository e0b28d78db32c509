import type { Finding } from '../findings/finding.js';
import { moveRegion } from '../geometry/motion.js';
import { type Polyline, rectangle } from '../geometry/outline.js';
import type { NestedPiece, NestPart, NestStock } from '../nesting/job.js';
import type { Sheet } from '../nesting/sheet.js';
import { nestStockOf } from '../nesting/stock-family.js';
import { rawRegion } from '../nesting/stock-room.js';
import { findingMarks } from './finding-marks.js';
import { layoutPicture, type StockLayout } from './layout-picture.js';
import type { Picture } from './picture.js';
import { woodAt, woodTones } from './wood.js';

const titleOf = (stock: string, number: number, count: number, utilisation: number): string =>
  `${stock} ${number}: ${count} ${count === 1 ? 'part' : 'parts'}, ${(100 * utilisation).toFixed(0)} % used`;

/** What a picture shows of the stock itself. */
function ofStock(stock: NestStock): Pick<StockLayout, 'stock' | 'usable' | 'defects'> {
  const common = { stock: rawRegion(stock), defects: stock.defects ?? [] };
  if (stock.kind === 'offcut') return common;
  const x = stock.margin ?? 0;
  const y = x + (stock.kind === 'board' ? (stock.true ?? 0) : 0);
  return { ...common, usable: rectangle(x, y, stock.length - x, stock.width - y) };
}

/** A nested piece of stock as a picture. @param cuts straight cuts of a layout for hand tools */
export function nestedPicture(
  piece: NestedPiece,
  stock: NestStock,
  parts: readonly NestPart[],
  cuts: readonly Polyline[] = [],
): Picture {
  const kinds = new Map(parts.map((part, i) => [part.id, { part, tone: woodAt(i) }]));
  return layoutPicture({
    title: titleOf(piece.stock, piece.number, piece.placements.length, piece.utilisation),
    ...ofStock(stock),
    parts: piece.placements.map(({ part: id, motion }) => {
      const { part, tone } = kinds.get(id)!;
      return { name: id, region: moveRegion(part.region, motion), tone };
    }),
    rips: cuts,
    pins: [],
    ...(piece.offcut && { offcut: piece.offcut }),
  });
}

/** A sheet of cut parts as a picture: finished outlines, as seen with the first face up. @param findings those with a place are marked */
export function sheetPicture(sheet: Sheet, findings: readonly Finding[] = []): Picture {
  const tones = woodTones(sheet.placements.map(p => p.cut.part));
  return layoutPicture({
    title: titleOf(sheet.stock.name, sheet.number, sheet.placements.length, sheet.utilisation),
    ...ofStock(nestStockOf(sheet.stock)),
    parts: sheet.placements.map(({ cut, motion, copy }) => ({
      name: copy === undefined ? cut.part.id : `${cut.part.id} ${copy}`,
      region: moveRegion(cut.finished, motion),
      tone: tones(cut.part),
    })),
    rips: sheet.rips ?? [],
    pins: sheet.pins ?? [],
    ...(sheet.offcut && { offcut: sheet.offcut }),
    marks: findingMarks(sheet, findings),
  });
}
