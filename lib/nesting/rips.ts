import type { Box } from '../geometry/measure.js';
import type { Mm } from '../units/length.js';

/** A box to be sawn out: its size along the stock and across it in each of the ways it may lie, and the timbers it may lie on so. */
export interface Blank {
  readonly ways: readonly { readonly length: Mm; readonly width: Mm; readonly on: readonly number[] }[];
  readonly quantity: number;
}

/** The usable part of a kind of stock, mm. */
export interface Timber {
  readonly length: Mm;
  readonly width: Mm;
  /** as many as are needed unless given */
  readonly count?: number;
  /** where nothing may lie */
  readonly defects: readonly Box[];
}

/** A box laid in a strip: which blank, in which of its ways, and where its lower left corner is on the usable part of the stock. */
export interface RippedBlank {
  readonly blank: number;
  readonly way: number;
  readonly x: Mm;
  readonly y: Mm;
}

/** A strip ripped off along the whole stock, then crosscut. */
export interface Strip {
  readonly y: Mm;
  readonly width: Mm;
  readonly blanks: readonly RippedBlank[];
  /** how far it is used, the last cut not counted */
  readonly used: Mm;
}

/** One piece of stock cut straight: strips from the lower edge up. */
export interface Ripped {
  /** which timber it is */
  readonly timber: number;
  readonly strips: readonly Strip[];
}

/** What is sawn from what, and the blanks that found no place, one entry each. */
export interface Rips {
  readonly boards: readonly Ripped[];
  readonly left: readonly number[];
}

interface Piece {
  readonly blank: number;
  readonly way: number;
  readonly length: Mm;
  readonly width: Mm;
  readonly on: readonly number[];
}

interface Open {
  readonly timber: number;
  readonly strips: Strip[];
}

const ROUNDING: Mm = 1e-6;

/** Where in a strip the next piece may begin; undefined where it would end past the stock. */
function nextPlace(strip: Strip, piece: Piece, { length, defects }: Timber, kerf: Mm): Mm | undefined {
  let x = strip.blanks.length > 0 ? strip.used + kerf : 0;
  const inWay = (b: Box): boolean =>
    b.maxX > x + ROUNDING &&
    b.minX < x + piece.length - ROUNDING &&
    b.maxY > strip.y + ROUNDING &&
    b.minY < strip.y + piece.width - ROUNDING;
  for (let hit = defects.find(inWay); hit; hit = defects.find(inWay)) x = hit.maxX;
  return x + piece.length <= length + ROUNDING ? x : undefined;
}

interface Found {
  readonly strips: Strip[];
  /** of the strip among them; one past the last for a new one */
  readonly index: number;
  readonly strip: Strip;
  readonly x: Mm;
}

/** The strip a piece wastes least width in, of those there are. */
function bestStrip(boards: readonly Open[], piece: Piece, timbers: readonly Timber[], kerf: Mm): Found | undefined {
  let best: Found | undefined;
  for (const { timber, strips } of boards.filter(b => piece.on.includes(b.timber)))
    strips.forEach((strip, index) => {
      if (piece.width > strip.width + ROUNDING || (best && strip.width >= best.strip.width - ROUNDING)) return;
      const x = nextPlace(strip, piece, timbers[timber]!, kerf);
      if (x !== undefined) best = { strips, index, strip, x };
    });
  return best;
}

/** A new strip for a piece on a board, above the others. */
function newStrip({ strips }: Open, piece: Piece, timber: Timber, kerf: Mm): Found | undefined {
  const last = strips.at(-1);
  const y = last ? last.y + last.width + kerf : 0;
  if (y + piece.width > timber.width + ROUNDING) return undefined;
  const strip: Strip = { y, width: piece.width, blanks: [], used: 0 };
  const x = nextPlace(strip, piece, timber, kerf);
  return x === undefined ? undefined : { strips, index: strips.length, strip, x };
}

/** A new strip on an open board, or on a new one of the first timber that takes the piece. */
function newPlace(boards: Open[], piece: Piece, timbers: readonly Timber[], kerf: Mm): Found | undefined {
  for (const board of boards.filter(b => piece.on.includes(b.timber))) {
    const found = newStrip(board, piece, timbers[board.timber]!, kerf);
    if (found) return found;
  }
  for (const [k, timber] of timbers.entries()) {
    const taken = boards.filter(b => b.timber === k).length;
    if (!piece.on.includes(k) || taken >= (timber.count ?? Infinity)) continue;
    const board: Open = { timber: k, strips: [] };
    const found = newStrip(board, piece, timber, kerf);
    if (!found) continue;
    boards.push(board);
    return found;
  }
  return undefined;
}

/** Each into the strip it fits best, else a new strip, else a new board: first fit decreasing height, for boards. */
function ripInOrder(pieces: readonly Piece[], timbers: readonly Timber[], kerf: Mm): Rips {
  const boards: Open[] = [];
  const left: number[] = [];
  for (const piece of pieces) {
    const found = bestStrip(boards, piece, timbers, kerf) ?? newPlace(boards, piece, timbers, kerf);
    if (!found) {
      left.push(piece.blank);
      continue;
    }
    const { strips, index, strip, x } = found;
    const laid: RippedBlank = { blank: piece.blank, way: piece.way, x, y: strip.y };
    strips[index] = { ...strip, blanks: [...strip.blanks, laid], used: x + piece.length };
  }
  return { boards, left };
}

type Size = { readonly length: Mm; readonly width: Mm };
type Choice = (a: Size, b: Size) => number;
/** Which way of those that fit a piece is sawn: as narrow as it goes, as short, or as it is drawn. */
const CHOICES: readonly Choice[] = [(a, b) => a.width - b.width, (a, b) => a.length - b.length, () => 0];
type Order = (a: Piece, b: Piece) => number;
const ORDERS: readonly Order[] = [
  (a, b) => b.width - a.width || b.length - a.length,
  (a, b) => b.length - a.length || b.width - a.width,
];

/** The pieces of all blanks, each lying one way that fits a timber, the first choice of those; on no timber where none does. */
function piecesOf(blanks: readonly Blank[], timbers: readonly Timber[], choice: Choice): Piece[] {
  const fits = (p: Piece): boolean =>
    p.on.some(k => p.length <= timbers[k]!.length + ROUNDING && p.width <= timbers[k]!.width + ROUNDING);
  return blanks.flatMap((b, blank) => {
    const ways = b.ways.map((w, way): Piece => ({ blank, way, ...w }));
    const nowhere: Piece = { blank, way: 0, length: Infinity, width: Infinity, on: [] };
    const [first = nowhere] = ways.filter(fits).sort((p, q) => choice(p, q) || p.way - q.way);
    return Array.from({ length: b.quantity }, () => first);
  });
}

/** Numbers a result is ranked by, the first that differs decides; less is better. */
const rank = ({ boards, left }: Rips, timbers: readonly Timber[]): number[] => [
  left.length,
  boards.reduce((sum, b) => sum + timbers[b.timber]!.length * timbers[b.timber]!.width, 0),
  boards.length,
  boards.reduce((sum, b) => sum + b.strips.length, 0),
];

function better(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((v, i) => Math.abs(v - b[i]!) > ROUNDING);
  return at >= 0 && a[at]! < b[at]!;
}

/** Blanks on as little stock as is found, cut straight through from edge to edge: strips ripped along the stock, then crosscut
 * (a narrower blank is then ripped once more, a defect crosscut out). What a table saw can do.
 * @param timbers the first that takes a piece is taken; those preferred stand first @param kerf of the saw
 * Source: levels by decreasing height, Coffman, Garey, Johnson and Tarjan 1980. */
export function rip(blanks: readonly Blank[], timbers: readonly Timber[], kerf: Mm): Rips {
  let best: Rips | undefined;
  for (const choice of CHOICES) {
    const pieces = piecesOf(blanks, timbers, choice);
    for (const order of ORDERS) {
      const sorted = [...pieces].sort((p, q) => order(p, q) || p.blank - q.blank);
      const ripped = ripInOrder(sorted, timbers, kerf);
      if (!best || better(rank(ripped, timbers), rank(best, timbers))) best = ripped;
    }
  }
  return best ?? { boards: [], left: [] };
}
