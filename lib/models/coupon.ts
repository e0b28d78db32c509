import { bounds } from '../geometry/measure.js';
import { boreRow, plug } from '../parts/bore-row.js';
import { comb, tongue } from '../parts/comb.js';
import { ladderBed, ladderPiece } from '../parts/ladder.js';
import { letteringWidth } from '../parts/lettering/lettering.js';
import type { Label, Part } from '../parts/part.js';
import type { Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { printMm } from '../units/print-length.js';
import { couponHardware, couponSettings, couponSteps } from './coupon/guide.js';
import { offcutFor, sideBySide } from './coupon/offcut.js';
import { type CouponRow, type CouponSizes, couponSizes } from './coupon/sizes.js';
import type { CouponOptions } from './coupon-options.js';
import type { Model, Piece } from './model.js';

/** A coupon: the model like any other, what it is cut from, and what is tried on it. */
export interface Coupon {
  readonly model: Model;
  /** the smallest offcut it is sure to fit on */
  readonly stock: Stock;
  readonly sizes: CouponSizes;
}

/** What the coupon's stock is called. */
const OFFCUT = 'offcut';
/** Height of lettering on the ladder's bed at most, mm. */
const WORDS: Mm = 5;

const shared = ({ options }: CouponSizes) => ({ thickness: options.thickness, stock: OFFCUT });

/** Width of the bed's hollow: the cutter gets into it with a little room. */
const hollowOf = (s: CouponSizes): Mm => s.kerf + 1;

function bed(s: CouponSizes): Part {
  const { pieces, arm, height } = s.ladder;
  const hollow = hollowOf(s);
  const line = (text: string, y: Mm, most: Mm): Label => ({
    kind: 'label',
    text,
    at: { x: (hollow + arm) / 2, y },
    height: Math.min(most, (0.9 * (arm - hollow)) / letteringWidth(text, 1)),
    turn: 0,
    shows: true,
  });
  const high = Math.min(WORDS, s.band / 3);
  const drawn = `${s.options.method} ${printMm(s.kerf, 3)}`;
  return {
    ...ladderBed({ ...shared(s), length: arm, height, band: s.band, hollow }),
    features: [line(`KERF = GAP / ${pieces}`, -0.38 * s.band, high), line(drawn, -0.78 * s.band, 0.6 * high)],
  };
}

const piecesOf = (s: CouponSizes): Part => {
  const { width, height, pieces } = s.ladder;
  return ladderPiece({ ...shared(s), width, height, quantity: pieces });
};

/** What a row is for, on the row itself. */
const CAPTIONS = { S: 'tongue', B: 'bearing', P: 'plug' } as const;

const captionOf = ({ letter, nominal }: CouponRow): string =>
  `${CAPTIONS[letter]} ${printMm(nominal, 3)}, clearance in mm`;

function slotParts(s: CouponSizes, row: CouponRow): Part[] {
  const { nominal, steps } = row;
  return [
    comb({ ...shared(s), tongue: nominal, depth: s.depth, tooth: s.tooth, caption: captionOf(row), steps }),
    tongue({ ...shared(s), width: nominal, length: 2 * s.depth + nominal / 2 }),
  ];
}

/** Bores, and the plug for them where it is not bought. @param most how wide the board may be, mm */
function boreParts(s: CouponSizes, row: CouponRow, most: Mm): Part[] {
  const { nominal: diameter, steps, fit: mate } = row;
  const board = boreRow({ ...shared(s), diameter, wall: s.wall, most, caption: captionOf(row), steps, mate });
  const id = row.letter === 'B' ? 'bore-row' : 'plug-row';
  return [{ ...board, id }, ...(row.against === 'cut' ? [plug({ ...shared(s), diameter, mate })] : [])];
}

const widthOf = (part: Part): Mm => {
  const { minX, maxX } = bounds(part.region.outer);
  return maxX - minX;
};

/** The rows as they are cut, boards of bores no wider than what is widest without them. */
function rowsOf(s: CouponSizes): Part[][] {
  const slots = s.rows.filter(r => r.letter === 'S').map(row => slotParts(s, row));
  const widest = Math.max(s.ladder.arm + s.band, ...slots.flat().map(widthOf));
  return [...slots, ...s.rows.filter(r => r.letter !== 'S').map(row => boreParts(s, row, widest))];
}

/** The bed with its pieces as they are measured: pushed together against the wall. */
function ladderPlaces(s: CouponSizes, x: Mm, y: Mm): Piece[] {
  const places = Array.from({ length: s.ladder.pieces }, (_, i) => x + i * s.ladder.width);
  return [
    { part: 'ladder-bed', turn: 0, x, y, z: 0 },
    ...places.map((at): Piece => ({ part: 'ladder-piece', turn: 0, x: at, y, z: 0 })),
  ];
}

/** A test piece: a kerf ladder, a fit comb with its tongue, bores with a plug, for a bearing or for bought plugs; every step labelled. An
 * ordinary model: its parts are compensated, nested and written like any other's. See coupon.md.
 * @throws Unusable naming the option */
export function coupon(options: CouponOptions, title = 'Coupon'): Coupon {
  const sizes = couponSizes(options);
  const ladder = [bed(sizes), piecesOf(sizes)];
  const rows = rowsOf(sizes);
  const shelf = sideBySide(rows);
  const model: Model = {
    name: 'coupon',
    title,
    parts: [...ladder, ...rows.flat()],
    pieces: [...shelf.pieces, ...ladderPlaces(sizes, sizes.band, shelf.top + sizes.band)],
    loose: true,
    hardware: couponHardware(sizes),
    settings: couponSettings(sizes),
    figures: [],
    steps: couponSteps(sizes),
  };
  return { model, sizes, stock: offcutFor(model.parts, sizes.kerf, OFFCUT) };
}
