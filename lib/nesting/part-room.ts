import { flattenRegion } from '../geometry/flatten.js';
import { area, bounds, boundsOfAll } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import { type Region, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import { boxOf, ringArea, type Shape } from './engine/polygon.js';
import type { Kind, Turn } from './engine/poses.js';
import type { NestPart, NestStock } from './job.js';
import { type Lie, liesOn } from './part-turns.js';
import { fillHollows } from './simplify.js';

/** Arcs are followed this closely, as a share of the part's size; polygons stand off them. */
const LOOSE = 0.002;
const FINEST: Mm = 0.02;
/** Hollows are filled up to this share of the area. */
const HOLLOW = 0.005;

/** A part's outline grown by half the gap: rooms side by side keep the gap. */
function grown(region: Region, gap: Mm, join: 'round' | 'mitre'): readonly Region[] {
  return gap > 0 ? offset([region], gap / 2, { join, limit: 3 }) : [region];
}

/** The polygon that stands for a part's room: never less than the room. Mitres spare corners, shallow hollows are filled.
 * @param smallest openings less wide than this are filled: nothing goes in */
export function roomShape(region: Region, gap: Mm, smallest: Mm = 0): Shape {
  const [room] = grown(region, gap, 'mitre');
  const box = bounds(room!.outer);
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const { outer, openings } = flattenRegion(room!, Math.max(FINEST, LOOSE * size), 'outward');
  const wide = openings.filter(o => {
    const { minX, minY, maxX, maxY } = boxOf(o);
    return Math.min(maxX - minX, maxY - minY) >= smallest;
  });
  return { outline: fillHollows(outer, HOLLOW * ringArea(outer)), openings: wide };
}

/** The least width of any part's room, lying as it is drawn: openings less wide take no part. */
export const leastWidth = (parts: readonly NestPart[], gap: Mm): Mm =>
  Math.min(
    ...parts.map(p => {
      const { minX, minY, maxX, maxY } = bounds(p.region.outer);
      const share =
        area(solid(p.region.outer)) / Math.sqrt((maxX - minX) * (maxX - minX) + (maxY - minY) * (maxY - minY));
      return share + gap;
    }),
  );

/** All ways a part may lie on any stock, with the stocks that allow each and the room's true box. */
function turnsOf(part: NestPart, stocks: readonly NestStock[], gap: Mm): Turn[] {
  const room = grown(part.region, gap, 'round');
  const found: { readonly lie: Lie; readonly on: number[] }[] = [];
  stocks.forEach((stock, k) => {
    if (part.stock && !part.stock.includes(stock.name)) return;
    for (const lie of liesOn(part, stock)) {
      const known = found.find(f => f.lie.mirrored === lie.mirrored && Math.abs(f.lie.angle - lie.angle) < 1e-9);
      if (known) known.on.push(k);
      else found.push({ lie, on: [k] });
    }
  });
  return found.map(({ lie: { angle, mirrored }, on }) => {
    const lying = room.map(r => moveRegion(r, { mirrored, turn: angle, x: 0, y: 0 }));
    return { angle, mirrored, on, box: boundsOfAll(lying.map(r => bounds(r.outer))) };
  });
}

/** A part as the engine takes it. @param gap between finished outlines, mm @param smallest as `roomShape` */
export const kindOf = (part: NestPart, stocks: readonly NestStock[], gap: Mm, smallest: Mm): Kind => ({
  shape: roomShape(part.region, gap, smallest),
  turns: turnsOf(part, stocks, gap),
  quantity: part.quantity,
});
