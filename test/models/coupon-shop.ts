import type { Path, Paths } from 'clipper-lib';
import { makeModel } from '../../lib/make.js';
import { type Coupon, coupon } from '../../lib/models/coupon.js';
import type { CouponOptions } from '../../lib/models/coupon-options.js';
import { type Corner, readFlat } from '../judges/dxf-outlines.js';
import { combine, fineArea, fineOffset, type Judge } from '../soak/fine-polygons.js';

// A shop that cuts a coupon's written sheet and measures what falls out: outlines read by dxf-parser, cut by clipper-lib.

const JUDGE: Judge = { chordError: 0.001, units: 1e4 };

/** The lines of a coupon's one sheet, as polygons. */
export interface Sheet {
  readonly coupon: Coupon;
  readonly outside: readonly Path[];
  readonly inside: readonly Path[];
}

const toPath = (corners: readonly Corner[]): Path =>
  corners.map(([x, y]) => ({ X: Math.round(x * JUDGE.units), Y: Math.round(y * JUDGE.units) }));

const forwards = (path: Path): Path => (fineArea([path], JUDGE) < 0 ? [...path].reverse() : path);

/** A coupon's sheet as it is written and read again. @throws Error if there is more than one */
export async function written(options: CouponOptions): Promise<Sheet> {
  const made = coupon(options);
  const { method, cutter } = options;
  const shop = { units: 'mm', method, cutter, stock: [made.stock], copies: 1 } as const;
  const { files } = await makeModel({ value: made.model, findings: [] }, shop, {}, { only: 'cut' });
  const sheets = [...files.keys()].filter(f => f.startsWith('sheets/') && f.endsWith('.dxf'));
  if (sheets.length !== 1) throw new Error(`${sheets.length} sheets`);
  const layers = readFlat(String(files.get(sheets[0]!)), JUDGE.chordError);
  const paths = (layer: string): Path[] => (layers.get(layer) ?? []).map(toPath).map(forwards);
  return { coupon: made, outside: paths('OUTSIDE'), inside: paths('INSIDE') };
}

/** What a cutter of a width leaves within each outer outline when its middle runs along the lines: pieces of wood, mm. What it leaves inside
 * an opening drops out. That no cut reaches a neighbour is what nesting is tested for. */
export function cutOut({ outside, inside }: Sheet, width: number): Paths[] {
  const openings = inside.flatMap(o => fineOffset([o], width / 2, JUDGE));
  return outside.map(o => combine(fineOffset([o], -width / 2, JUDGE), openings, 'difference'));
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function boxOf(wood: Paths): Box {
  const [xs, ys] = [wood.flat().map(p => p.X / JUDGE.units), wood.flat().map(p => p.Y / JUDGE.units)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** x at which a level, a share of its height up, crosses a piece of wood, from left to right. */
function crossings(wood: Paths, share: number): number[] {
  const { y, height } = boxOf(wood);
  const level = (y + share * height) * JUDGE.units + 0.5;
  return wood
    .flatMap(path =>
      path.flatMap((p, i) => {
        const q = path[(i + 1) % path.length]!;
        if (p.Y <= level === q.Y <= level) return [];
        return [(p.X + ((q.X - p.X) * (level - p.Y)) / (q.Y - p.Y)) / JUDGE.units];
      }),
    )
    .sort((a, b) => a - b);
}

const widthAt = (wood: Paths, share: number): number => {
  const xs = crossings(wood, share);
  return xs.at(-1)! - xs[0]!;
};

/** What a cut coupon measures without error, mm. */
export interface Cut {
  /** from the last ladder piece to the end of the arm */
  readonly gap: number;
  /** clearance of the tongue in every slot */
  readonly slots: readonly number[];
  /** clearance of the plug in every bore; of what is bought, as large as it is said to be */
  readonly bores: readonly number[];
  /** number of ladder pieces, and the widest and narrowest */
  readonly pieces: readonly number[];
}

/** The woods that look like a part: its size to 3 mm. */
function named(s: Sheet, woods: readonly Paths[], id: string): Paths[] {
  const region = s.coupon.model.parts.find(p => p.id === id)?.region.outer;
  if (!region) return [];
  const [xs, ys] = [region.map(v => v.x), region.map(v => v.y)];
  const size = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
  // a disc and a round end reach beyond their corners
  const reach = id === 'plug' ? [size[0], size[0]] : id === 'tongue' ? [size[0], size[1] + size[0] / 2] : size;
  return woods.filter(wood => {
    const { width, height } = boxOf(wood);
    return Math.abs(width - reach[0]!) < 2 && Math.abs(height - reach[1]!) < 2;
  });
}

/** Slots between the teeth, the narrowest first: where the comb lies turned, from the right. */
function slotWidths(comb: Paths): number[] {
  const up = crossings(comb, 0.9).length > 2;
  const xs = crossings(comb, up ? 0.8 : 0.2);
  const widths = Array.from({ length: xs.length / 2 - 1 }, (_, i) => xs[2 * i + 2]! - xs[2 * i + 1]!);
  return up ? widths : widths.reverse();
}

const diameterOf = (path: Path): number => 2 * Math.sqrt(Math.abs(fineArea([path], JUDGE)) / Math.PI);

/** Measures a coupon cut with a width. */
export function measured(s: Sheet, width: number): Cut {
  const woods = cutOut(s, width);
  const one = (id: string): Paths => {
    const found = named(s, woods, id);
    if (found.length !== 1) throw new Error(`${found.length} of ${id}`);
    return found[0]!;
  };
  const bed = one('ladder-bed');
  // the arm is the wide part of the L, the wall the narrow one
  const arm = Math.abs(widthAt(bed, 0.1) - widthAt(bed, 0.9));
  const pieces = named(s, woods, 'ladder-piece').map(p => widthAt(p, 0.5));
  const tongue = widthAt(one('tongue'), 0.3);
  const row = s.coupon.sizes.rows[1]!;
  const board = one(row.letter === 'B' ? 'bore-row' : 'plug-row');
  const holes = board
    .map(diameterOf)
    .sort((a, b) => a - b)
    .slice(0, -1);
  const tried = row.against === 'cut' ? diameterOf(one('plug')[0]!) : row.nominal;
  return {
    gap: arm - pieces.reduce((a, b) => a + b, 0),
    slots: slotWidths(one('comb')).map(w => w - tongue),
    bores: holes.map(d => d - tried),
    pieces,
  };
}
