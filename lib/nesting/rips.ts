import type { Mm } from '../units/length.js';

/** A box to be sawn out: its size along the stock and across it in each of the ways it may lie. */
export interface Blank {
  readonly ways: readonly { readonly length: Mm; readonly width: Mm }[];
  readonly quantity: number;
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
  readonly strips: readonly Strip[];
}

interface Piece {
  readonly blank: number;
  readonly way: number;
  readonly length: Mm;
  readonly width: Mm;
}

const ROUNDING: Mm = 1e-6;

/** The strip a piece wastes least width in, of those it fits. */
function bestStrip(boards: readonly Strip[][], piece: Piece, length: Mm, kerf: Mm): [number, number] | undefined {
  let best: [number, number] | undefined;
  let least = Infinity;
  boards.forEach((strips, b) => {
    strips.forEach((s, k) => {
      const at = s.blanks.length > 0 ? s.used + kerf : 0;
      if (piece.width > s.width + ROUNDING || at + piece.length > length + ROUNDING) return;
      if (s.width - piece.width >= least - ROUNDING) return;
      least = s.width - piece.width;
      best = [b, k];
    });
  });
  return best;
}

function intoStrip(s: Strip, piece: Piece, kerf: Mm): Strip {
  const x = s.blanks.length > 0 ? s.used + kerf : 0;
  return { ...s, blanks: [...s.blanks, { blank: piece.blank, way: piece.way, x, y: s.y }], used: x + piece.length };
}

/** Where the next strip of a board starts. */
const nextEdge = (strips: readonly Strip[], kerf: Mm): Mm => {
  const last = strips.at(-1);
  return last ? last.y + last.width + kerf : 0;
};

/** Widest first, each into the strip it fits best, else a new strip, else a new board: first fit decreasing height, for boards. */
function ripInOrder(pieces: readonly Piece[], length: Mm, width: Mm, kerf: Mm): Ripped[] {
  const boards: Strip[][] = [];
  for (const piece of pieces) {
    const found = bestStrip(boards, piece, length, kerf);
    if (found) {
      const [b, k] = found;
      boards[b]![k] = intoStrip(boards[b]![k]!, piece, kerf);
      continue;
    }
    let board = boards.find(strips => nextEdge(strips, kerf) + piece.width <= width + ROUNDING);
    if (!board) {
      board = [];
      boards.push(board);
    }
    board.push(intoStrip({ y: nextEdge(board, kerf), width: piece.width, blanks: [], used: 0 }, piece, kerf));
  }
  return boards.map(strips => ({ strips }));
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

/** Blanks on as few pieces of stock as are found, cut straight through from edge to edge: strips ripped along the stock, then crosscut
 * (a narrower blank is then ripped once more). What a table saw can do.
 * @param length, width usable size of the stock, mm @param kerf of the saw
 * @returns undefined if a blank is larger than the stock
 * Source: levels by decreasing height, Coffman, Garey, Johnson and Tarjan 1980. */
export function rip(blanks: readonly Blank[], length: Mm, width: Mm, kerf: Mm): readonly Ripped[] | undefined {
  let best: Ripped[] | undefined;
  const strips = (r: readonly Ripped[]): number => r.reduce((sum, b) => sum + b.strips.length, 0);
  for (const choice of CHOICES) {
    const pieces = blanks.flatMap((b, blank) => {
      const fitting = b.ways
        .map((w, way) => ({ blank, way, length: w.length, width: w.width }))
        .filter(w => w.length <= length + ROUNDING && w.width <= width + ROUNDING)
        .sort((p, q) => choice(p, q) || p.way - q.way);
      const [first] = fitting;
      return Array.from({ length: b.quantity }, () => first);
    });
    const known = pieces.filter(p => p !== undefined);
    if (known.length < pieces.length) return undefined;
    for (const order of ORDERS) {
      const ripped = ripInOrder(
        [...known].sort((p, q) => order(p, q) || p.blank - q.blank),
        length,
        width,
        kerf,
      );
      if (!best || ripped.length < best.length || (ripped.length === best.length && strips(ripped) < strips(best)))
        best = ripped;
    }
  }
  return best ?? [];
}
