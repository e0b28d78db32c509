import { refuse } from '../findings/unusable.js';
import { area, type Box, bounds } from '../geometry/measure.js';
import { moveOutline } from '../geometry/motion.js';
import { type Polyline, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { NestedPiece, NestLayout, NestPart, NestPlacement, NestStock } from './job.js';
import { nestedPiece, nestLayout, partsById } from './nest-layout.js';
import { type Lie, liesOn } from './part-turns.js';
import { type Blank, type Ripped, type RippedBlank, rip, type Timber } from './rips.js';
import { rawRegion } from './stock-room.js';

/** A piece of stock laid out for straight cuts. */
export interface StraightPiece extends NestedPiece {
  /** what is left whole crosscut off, rips along the stock, crosscuts in each strip, in the stock's frame: each the saw's near edge */
  readonly cuts: readonly Polyline[];
}

/** A layout for hand tools. */
export type StraightLayout = NestLayout & { readonly pieces: readonly StraightPiece[] };

/** A way for a part to lie, its box so, and the kinds of stock that allow it. */
interface Way {
  readonly lie: Lie;
  readonly box: Box;
  readonly on: number[];
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

function waysOf(part: NestPart, stocks: readonly NestStock[]): Way[] {
  const turns = part.turns === undefined || part.turns === 'free' ? ({ step: Math.PI / 2 } as const) : part.turns;
  const ways: Way[] = [];
  stocks.forEach((stock, k) => {
    if (part.stock?.includes(stock.name) === false) return;
    for (const lie of liesOn({ ...part, turns }, stock)) {
      const known = ways.find(w => w.lie.mirrored === lie.mirrored && Math.abs(w.lie.angle - lie.angle) < 1e-9);
      const motion = { mirrored: lie.mirrored, turn: lie.angle, x: 0, y: 0 };
      if (known) known.on.push(k);
      else ways.push({ lie, box: bounds(moveOutline(part.region.outer, motion)), on: [k] });
    }
  });
  return ways;
}

const line = (x0: Mm, y0: Mm, x1: Mm, y1: Mm): Polyline => [vertex({ x: x0, y: y0 }), vertex({ x: x1, y: y1 })];

/** The cuts of a piece, each the saw's near edge: what is left whole is crosscut off first, then strips are ripped, then crosscut. */
function cutsOf(ripped: Ripped, u: Usable, blanks: readonly Blank[], kerf: Mm, whole: Box | undefined): Polyline[] {
  const far = u.x + u.length;
  const end = whole && whole.minX > u.x && whole.minX - kerf < far ? whole.minX - kerf : far;
  const off = end < far ? [line(end, whole!.minY, end, whole!.maxY)] : [];
  const strips = ripped.strips.flatMap(s => {
    const across = (x: Mm): Polyline => line(u.x + x, u.y + s.y, u.x + x, u.y + s.y + s.width);
    let done = 0;
    const crosscuts = s.blanks.flatMap(b => {
      const to = b.x + blanks[b.blank]!.ways[b.way]!.length;
      // a defect before the piece is cut off first
      const cuts = b.x > done + 1e-6 ? [across(b.x - kerf), across(to)] : [across(to)];
      done = to + kerf;
      return cuts;
    });
    return [line(u.x, u.y + s.y + s.width, end, u.y + s.y + s.width), ...crosscuts];
  });
  return [...off, ...strips];
}

function timberOf(stock: NestStock, { x, y, length, width }: Usable): Timber {
  const defects = (stock.defects ?? []).map(d => {
    const box = bounds(d.outer);
    return { minX: box.minX - x, minY: box.minY - y, maxX: box.maxX - x, maxY: box.maxY - y };
  });
  return { length, width, defects, ...(stock.count !== undefined && { count: stock.count }) };
}

/** Where a box sawn out lies, as a part's place on its stock. */
function placementOf(part: NestPart, { lie, box }: Way, b: RippedBlank, u: Usable): NestPlacement {
  const at = { x: u.x + b.x - box.minX, y: u.y + b.y - box.minY };
  return { part: part.id, motion: { ...(lie.mirrored && { mirrored: true }), turn: lie.angle, ...at } };
}

/** What a unit of area costs, by which stock is preferred. */
const dearness = (stock: NestStock): number => {
  const size = area(rawRegion(stock));
  return (stock.price ?? size * 1e-6) / size;
};

/** Parts on boards and sheets so that a table saw gets them out in straight cuts: strips ripped along the stock, then crosscut; knots are
 * crosscut out. Each part takes its box; stock that costs less by area is taken first. @param kerf of the saw, mm
 * @throws Unusable for an offcut: only boards and sheets are ripped straight */
export function nestStraight(parts: readonly NestPart[], stocks: readonly NestStock[], kerf: Mm): StraightLayout {
  const sorted = [...stocks].sort((a, b) => dearness(a) - dearness(b));
  const usable = sorted.map(usableOf);
  const ways = parts.map(p => waysOf(p, sorted));
  const blanks = parts.map(
    (p, i): Blank => ({
      quantity: p.quantity,
      ways: ways[i]!.map(({ box, on }) => ({ length: box.maxX - box.minX, width: box.maxY - box.minY, on })),
    }),
  );
  const timbers = sorted.map((s, k) => timberOf(s, usable[k]!));
  const { boards, left } = rip(blanks, timbers, kerf);
  const byId = partsById(parts);
  const pieces = boards.map((ripped, i): StraightPiece => {
    const [stock, u] = [sorted[ripped.timber]!, usable[ripped.timber]!];
    const laid = ripped.strips.flatMap(s => s.blanks);
    const placements = laid.map(b => placementOf(parts[b.blank]!, ways[b.blank]![b.way]!, b, u));
    const number = boards.slice(0, i + 1).filter(b => b.timber === ripped.timber).length;
    const piece = nestedPiece(stock, number, placements, byId, kerf);
    return { ...piece, cuts: cutsOf(ripped, u, blanks, kerf, piece.offcut && bounds(piece.offcut)) };
  });
  const unplaced = parts.map((p, i) => ({ part: p.id, quantity: left.filter(l => l === i).length }));
  return nestLayout(pieces, unplaced, stocks);
}
