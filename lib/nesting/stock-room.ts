import { difference } from '../geometry/boolean.js';
import { flattenRegion } from '../geometry/flatten.js';
import { area, bounds, boundsOfAll } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import { type Region, rectangle, solid } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import type { Shape } from './engine/polygon.js';
import type { Stock } from './engine/prepared.js';
import type { NestStock } from './job.js';

/** A stock as the engine takes it, and where its rectangle's lower left corner is in the stock's frame. */
export interface Room {
  readonly stock: Stock;
  readonly corner: Point;
}

/** Outlines in the way are followed this closely, mm; polygons stand off them. */
const LOOSE: Mm = 0.2;

/** The raw piece as a region. */
export const rawRegion = (stock: NestStock): Region =>
  stock.kind === 'offcut' ? stock.outline : solid(rectangle(0, 0, stock.length, stock.width));

/** What of it finished outlines may lie in, grown by half the gap as the parts' rooms are. */
function usable(stock: NestStock, gap: Mm): Region[] {
  const by = gap / 2 - (stock.margin ?? 0);
  // grown, a notch would lose its tip: rooms that clear the grown outline might hold parts that do not clear the notch
  if (stock.kind === 'offcut') return offset([stock.outline], Math.min(0, by), { join: 'mitre', limit: 10 });
  const trued = stock.kind === 'board' ? (stock.true ?? 0) : 0;
  const width = stock.width - 2 * trued + 2 * by;
  if (!(stock.length + 2 * by > 0 && width > 0)) return [];
  return [solid(rectangle(-by, trued - by, stock.length + by, stock.width - trued + by))];
}

const shapeOf = (region: Region): Shape => {
  const { outer, openings } = flattenRegion(region, LOOSE, 'outward');
  return { outline: outer, openings };
};

/** The rectangle a stock is searched as and what of it is forbidden; undefined if its margins leave nothing.
 * Parts' rooms keep clear of defects and of an offcut's edge, so parts keep half the gap from them. */
export function roomOf(stock: NestStock, gap: Mm): Room | undefined {
  const free = usable(stock, gap);
  if (free.length === 0) return undefined;
  const box = boundsOfAll(free.map(r => bounds(r.outer)));
  const corner = { x: box.minX, y: box.minY };
  const toCorner = { turn: 0, x: -corner.x, y: -corner.y };
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const defects = stock.defects ?? [];
  const frame = solid(rectangle(box.minX - 1, box.minY - 1, box.maxX + 1, box.maxY + 1));
  const lacking = stock.kind === 'offcut' ? difference([frame], free) : [];
  const forbidden = [...lacking, ...defects].map(r => shapeOf(moveRegion(r, toCorner)));
  const left = defects.length > 0 ? difference(free, defects) : free;
  const room = left.reduce((sum, r) => sum + area(r), 0);
  const price = stock.price ?? area(rawRegion(stock)) * 1e-6;
  const count = stock.count === undefined ? {} : { count: stock.count };
  return { stock: { width, height, forbidden, room, price, ...count }, corner };
}
