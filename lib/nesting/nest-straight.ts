import { refuse } from '../findings/unusable.js';
import { area, type Box, bounds } from '../geometry/measure.js';
import { moveOutline } from '../geometry/motion.js';
import { type Polyline, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { NestedPiece, NestPart, NestPlacement, NestStock } from './job.js';
import { offcutOf } from './offcut.js';
import { type Lie, liesOn } from './part-turns.js';
import { type Blank, type Ripped, rip } from './rips.js';
import { rawRegion } from './stock-room.js';

/** A piece of stock laid out for straight cuts. */
export interface StraightPiece extends NestedPiece {
  /** rips along the stock, then crosscuts in each strip, in the stock's frame: each the saw's near edge */
  readonly cuts: readonly Polyline[];
}

/** A layout for hand tools. */
export interface StraightLayout {
  readonly pieces: readonly StraightPiece[];
}

interface Way {
  readonly lie: Lie;
  readonly box: Box;
}

/** Where sawn blanks may lie. */
interface Usable {
  readonly x: Mm;
  readonly y: Mm;
  readonly length: Mm;
  readonly width: Mm;
}

function usableOf(stock: NestStock): Usable {
  if (stock.kind === 'offcut')
    return refuse(`stock.${stock.name}`, 'an offcut', 'a board or sheet: only those are ripped straight');
  const margin = stock.margin ?? 0;
  const trued = margin + (stock.kind === 'board' ? (stock.true ?? 0) : 0);
  return { x: margin, y: trued, length: stock.length - 2 * margin, width: stock.width - 2 * trued };
}

function waysOf(part: NestPart, stock: NestStock): Way[] {
  const quarter = {
    ...part,
    turns: part.turns === undefined || part.turns === 'free' ? { step: Math.PI / 2 } : part.turns,
  } as const;
  return liesOn(quarter, stock).map(lie => ({
    lie,
    box: bounds(moveOutline(part.region.outer, { mirrored: lie.mirrored, turn: lie.angle, x: 0, y: 0 })),
  }));
}

const line = (x0: Mm, y0: Mm, x1: Mm, y1: Mm): Polyline => [vertex({ x: x0, y: y0 }), vertex({ x: x1, y: y1 })];

function cutsOf(ripped: Ripped, u: Usable, blanks: readonly Blank[]): Polyline[] {
  return ripped.strips.flatMap(s => [
    line(u.x, u.y + s.y + s.width, u.x + u.length, u.y + s.y + s.width),
    ...s.blanks.map(b => {
      const end = u.x + b.x + blanks[b.blank]!.ways[b.way]!.length;
      return line(end, u.y + s.y, end, u.y + s.y + s.width);
    }),
  ]);
}

/** Parts on one kind of board or sheet so that a table saw gets them out in straight cuts: strips ripped along it, then crosscut. Each part
 * takes its box; the stock's count is not looked at. @param kerf of the saw, mm
 * @throws Unusable for an offcut, or a part whose box is larger than the stock */
export function nestStraight(parts: readonly NestPart[], stock: NestStock, kerf: Mm): StraightLayout {
  const u = usableOf(stock);
  const ways = parts.map(p => waysOf(p, stock));
  const blanks = parts.map(
    (p, i): Blank => ({
      quantity: p.quantity,
      ways: ways[i]!.map(({ box }) => ({ length: box.maxX - box.minX, width: box.maxY - box.minY })),
    }),
  );
  const ripped =
    rip(blanks, u.length, u.width, kerf) ??
    refuse(`stock.${stock.name}`, 'too small', 'stock that takes the box of every part');
  const raw = rawRegion(stock);
  return {
    pieces: ripped.map((r, k): StraightPiece => {
      const laid = r.strips.flatMap(s => s.blanks);
      const placements = laid.map((b): NestPlacement => {
        const { lie, box } = ways[b.blank]![b.way]!;
        const motion = {
          ...(lie.mirrored && { mirrored: true }),
          turn: lie.angle,
          x: u.x + b.x - box.minX,
          y: u.y + b.y - box.minY,
        };
        return { part: parts[b.blank]!.id, motion };
      });
      const top = Math.max(...r.strips.map(s => u.y + s.y + s.width));
      const used = { x: Math.max(...r.strips.map(s => u.x + s.used)), y: top };
      const covered = laid.reduce((sum, b) => sum + area(parts[b.blank]!.region), 0);
      const offcut = offcutOf(raw, used, kerf);
      const cuts = cutsOf(r, u, blanks);
      return {
        stock: stock.name,
        number: k + 1,
        placements,
        utilisation: covered / area(raw),
        cuts,
        ...(offcut && { offcut }),
      };
    }),
  };
}
