import type { Motion } from '../../lib/geometry/motion.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { type Region, rectangle, solid } from '../../lib/geometry/outline.js';
import type { NestedPiece, NestLayout, NestPart, NestStock } from '../../lib/nesting/job.js';
import { combine, fineOffset, finePaths, type Judge } from '../soak/fine-polygons.js';

/** Layouts judged by clipper-lib: it knows nothing of the engine, and of the kernel only the outlines and where they are said to lie. */
const JUDGE: Judge = { chordError: 0.002, units: 1e4 };
/** Polygons in place of arcs, here and in the judge's offsets, mm. */
const STRAY = 0.02;

type Path = ReturnType<typeof finePaths>[number];

/** Area of paths that may hold openings, mm². */
function areaOf(paths: readonly Path[]): number {
  let twice = 0;
  for (const path of paths)
    path.forEach((p, i) => {
      const q = path[(i + 1) % path.length]!;
      twice += p.X * q.Y - q.X * p.Y;
    });
  return Math.abs(twice) / 2 / JUDGE.units / JUDGE.units;
}

/** Where finished outlines may lie: the stock less trued edges and margin. */
function insideOf(stock: NestStock): Path[] {
  const trued = stock.kind === 'board' ? (stock.true ?? 0) : 0;
  const raw = stock.kind === 'offcut' ? stock.outline : solid(rectangle(0, trued, stock.length, stock.width - trued));
  return fineOffset(finePaths([raw], JUDGE), STRAY - (stock.margin ?? 0), JUDGE);
}

const off = (a: number, b: number): number => Math.abs(Math.sin(a - b));

/** Whether a motion keeps a part's rules on a stock. */
function turnedRightly(part: NestPart, stock: NestStock, m: Motion): boolean {
  if (m.mirrored && !part.mirrored) return false;
  const { turns = 'free', grain } = part;
  const times = typeof turns === 'object' ? m.turn / turns.step : turns === 'half' ? m.turn / Math.PI : m.turn;
  if (turns !== 'free' && Math.abs(times - Math.round(times)) > 1e-6) return false;
  if (turns === 'none' && Math.abs(m.turn) > 1e-9) return false;
  const runs = stock.grain ?? 'along';
  if (!grain || grain.rule === 'any' || runs === 'none') return true;
  const seen = m.turn + (m.mirrored ? Math.PI - grain.direction : grain.direction);
  const target = (runs === 'along') === (grain.rule === 'along') ? 0 : Math.PI / 2;
  return off(seen, target) <= Math.sin(grain.within ?? 0) + 1e-6;
}

function pieceFaults(piece: NestedPiece, stock: NestStock, parts: readonly NestPart[], gap: number): string[] {
  const faults: string[] = [];
  const name = `${piece.stock} ${piece.number}`;
  const laid = piece.placements.map(p => {
    const part = parts.find(q => q.id === p.part)!;
    if (!turnedRightly(part, stock, p.motion)) faults.push(`${name}: ${p.part} is turned against its rules`);
    const region: Region = moveRegion(part.region, p.motion);
    return { id: p.part, paths: finePaths([region], JUDGE) };
  });
  const inside = insideOf(stock);
  const defects = finePaths(stock.defects ?? [], JUDGE);
  const grown = laid.map(l => fineOffset(l.paths, Math.max(0, gap / 2 - STRAY), JUDGE));
  laid.forEach((a, i) => {
    if (areaOf(combine(a.paths, inside, 'difference')) > 1e-3) faults.push(`${name}: ${a.id} leaves the stock`);
    // a hair is allowed where a part touches
    if (areaOf(combine(a.paths, defects, 'intersection')) > 1e-3) faults.push(`${name}: ${a.id} lies on a defect`);
    for (let k = i + 1; k < laid.length; k++)
      if (areaOf(combine(grown[i]!, grown[k]!, 'intersection')) > (gap > 0 ? 1e-3 : 0.05))
        faults.push(`${name}: ${a.id} and ${laid[k]!.id} are too close`);
  });
  return faults;
}

/** Everything wrong with a layout, one line each; nothing if it is as it should be. */
export function layoutFaults(
  parts: readonly NestPart[],
  stocks: readonly NestStock[],
  layout: NestLayout,
  gap: number,
): string[] {
  const faults: string[] = [];
  for (const part of parts) {
    const placed = layout.pieces.flatMap(p => p.placements).filter(p => p.part === part.id).length;
    const left = layout.unplaced.filter(u => u.part === part.id).reduce((sum, u) => sum + u.quantity, 0);
    if (placed + left !== part.quantity)
      faults.push(`${part.id}: ${placed} laid, ${left} left, ${part.quantity} wanted`);
  }
  for (const stock of stocks) {
    const used = layout.pieces.filter(p => p.stock === stock.name);
    if (used.length > (stock.count ?? Infinity))
      faults.push(`${stock.name}: ${used.length} used, ${stock.count} there`);
    for (const piece of used) {
      for (const { part } of piece.placements)
        if (!(parts.find(p => p.id === part)?.stock?.includes(stock.name) ?? true))
          faults.push(`${part} on ${stock.name}`);
      faults.push(...pieceFaults(piece, stock, parts, gap));
      if (piece.offcut && offcutHits(piece, parts))
        faults.push(`${piece.stock} ${piece.number}: a part reaches into the offcut`);
    }
  }
  if (layout.pieces.some(p => p.placements.length === 0)) faults.push('an empty piece of stock');
  return faults;
}

function offcutHits(piece: NestedPiece, parts: readonly NestPart[]): boolean {
  const left = finePaths([solid(piece.offcut!)], JUDGE);
  const laid = piece.placements.flatMap(p =>
    finePaths([moveRegion(parts.find(q => q.id === p.part)!.region, p.motion)], JUDGE),
  );
  return areaOf(combine(laid, left, 'intersection')) > 1e-3;
}
