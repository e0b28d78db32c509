import type { CutPart } from '../cutting/cut-part.js';
import type { Finding } from '../findings/finding.js';
import { bounds } from '../geometry/measure.js';
import { moveOutline, turning } from '../geometry/motion.js';
import { type Cutter, cutWidth, type Stock } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import { fits, ROUNDING } from './fit.js';
import type { Room } from './layout.js';
import { shorterPieces } from './ring-pieces.js';
import type { Turned } from './turns.js';

/** A machine's bed, mm: length along the stock's. */
export interface Bed {
  readonly length: Mm;
  readonly width: Mm;
}

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** Lying along the bed or across it. */
const lies = (length: Mm, width: Mm, bed: Room): boolean => fits(length, width, bed) || fits(width, length, bed);

/** Whether the machine can cut the part as it lies: its outline and half a cut all round, the stock lying along or across the bed. */
export function fitsBed(way: Turned, gap: Mm, cutter: Cutter, bed: Bed): boolean {
  const cut = cutWidth(cutter) - gap;
  return lies(way.silhouette.width + cut, way.silhouette.height + cut, bed);
}

const DEGREE = Math.PI / 180;

/** The least turn, in whole degrees, in which a part that fits neither along the bed nor across it fits all the same. */
function slant({ finished, cutter }: CutPart, bed: Bed): Radians | undefined {
  const cut = cutWidth(cutter);
  const turns = Array.from({ length: 179 }, (_, i) => (i + 1) * DEGREE);
  return turns.find(turn => {
    const { minX, minY, maxX, maxY } = bounds(moveOutline(finished.outer, turning(turn)));
    return fits(maxX - minX + cut, maxY - minY + cut, bed);
  });
}

/** What else helps than a larger bed: the blank laid aslant, or the ring made of more pieces. */
function otherwise(cut: CutPart, bed: Bed): string {
  const turn = slant(cut, bed);
  const width = cutWidth(cut.cutter);
  const pieces = shorterPieces(cut.part, (length, high) => lies(length + width, high + width, bed));
  const ways = [
    ...(turn === undefined ? [] : [`its blank cut out first and laid at ${Math.round(turn / DEGREE)}°`]),
    ...(pieces === undefined ? [] : [pieces]),
  ];
  return ways.map(way => `, or ${way}`).join('');
}

/** A part that the machine cannot cut in any way it may lie, with what would help. */
export function tooLargeForBed(cut: CutPart, ways: readonly Turned[], gap: Mm, bed: Bed): Finding {
  const sizes = ways.map(w => [w.silhouette.width - gap, w.silhouette.height - gap] as const);
  const long = Math.min(...sizes.map(s => Math.max(...s)));
  const short = Math.min(...sizes.map(s => Math.min(...s)));
  const kerf = cutWidth(cut.cutter);
  const isLong = long + kerf > Math.max(bed.length, bed.width) + ROUNDING;
  const [side, other] =
    isLong === bed.length >= bed.width ? (['length', 'width'] as const) : (['width', 'length'] as const);
  const value = bed[side];
  const limit = (isLong ? long : short) + kerf;
  const where = `bed.${side}`;
  const both =
    isLong && short + kerf > bed[other] + ROUNDING ? ` and bed.${other} of at least ${mm(short + kerf)}` : '';
  const message = `${where} is ${mm(value)}; ${cut.part.id} needs at least ${mm(limit)}${both}, its cut included${otherwise(cut, bed)}`;
  return { level: 'stop', rule: 'bed-too-small', where, message, value, limit };
}

/** Stock that has to be cut down or moved along to be worked on the bed. */
export function overhang(stock: Stock, bed: Bed): Finding[] {
  const { name, length, width } = stock;
  if (lies(length, width, bed)) return [];
  const [most, least] = [Math.max(bed.length, bed.width), Math.min(bed.length, bed.width)];
  const isLong = Math.max(length, width) > most + ROUNDING;
  const side = isLong === length >= width ? 'length' : 'width';
  const limit = isLong ? most : least;
  const message = `${name} is ${mm(length)} x ${mm(width)}, the bed ${mm(bed.length)} x ${mm(bed.width)}: cut it down between parts to ${mm(limit)} or less, or move it along`;
  return [
    { level: 'warn', rule: 'stock-over-bed', where: `stock.${name}.${side}`, message, value: stock[side], limit },
  ];
}
