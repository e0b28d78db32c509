import { area } from '../geometry/measure.js';
import type { Polyline } from '../geometry/outline.js';
import type { Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { Candidate } from './admit.js';
import { fewerSheets } from './fewer-sheets.js';
import { usableRoom } from './fit.js';
import type { NestedPiece, NestLayout, NestPart, NestStock, Turns } from './job.js';
import { layOut } from './layout.js';
import { nest } from './nest.js';
import { nestStraight, type StraightPiece } from './nest-straight.js';
import type { Placement } from './sheet.js';
import { type Family, isPlainStock, nestStockOf } from './stock-family.js';

/** What is laid out on a family of stocks. */
export interface FamilyJob {
  readonly family: Family;
  /** at least one */
  readonly candidates: readonly Candidate[];
  /** between finished outlines, mm */
  readonly gap: Mm;
  /** parts turn by quarters only, so that what fits the machine's bed still does */
  readonly quarters: boolean;
}

/** One piece of stock with parts on it. */
export interface LaidStock {
  readonly stock: Stock;
  readonly placements: readonly Placement[];
  /** of a straight layout */
  readonly rips?: readonly Polyline[];
}

/** All parts of a job on stock, the fullest piece of each stock first. */
export interface FamilyLayout {
  readonly laid: readonly LaidStock[];
  /** ids of parts that found no place, with how many */
  readonly left: readonly { readonly part: string; readonly quantity: number }[];
}

/** Whether all is cut from one kind of plain rectangle. */
const isPlain = ({ family, candidates }: FamilyJob): boolean =>
  family.length === 1 && isPlainStock(family[0]) && candidates.length > 0;

/** All on one plain stock, however many it takes: from end to end, bettered where fewer might do. */
function plainLayout({ family, candidates, gap }: FamilyJob, steps?: number): FamilyLayout {
  const [stock] = family;
  const room = usableRoom(stock, gap);
  const lying = candidates.map(c => ({ cut: c.cut, quantity: c.quantity, ways: c.on[0]!.ways }));
  const batches = lying.map(c => ({ ways: c.ways, quantity: c.quantity, area: area(c.cut.finished) }));
  const filled = fewerSheets(lying, layOut(batches, room), room, gap, steps);
  const x = stock.margin - gap / 2;
  const y = stock.true + x;
  const laid = filled.map(f => ({
    stock,
    placements: f.laid.map(({ batch, way, spot }): Placement => {
      const motion = { turn: way.turn, x: x + spot.x - way.corner.x, y: y + spot.y - way.corner.y };
      return { cut: lying[batch]!.cut, motion };
    }),
  }));
  return { laid, left: [] };
}

/** A job's parts and stocks as nesting takes them; a part's id is its place among the candidates. */
export function nestJob({ family, candidates, quarters }: FamilyJob): { parts: NestPart[]; stocks: NestStock[] } {
  const parts = candidates.map(({ cut, quantity, on }, i): NestPart => {
    const { grain } = cut.part;
    const free: Turns = quarters ? { step: Math.PI / 2 } : 'free';
    const common = { id: `${i}`, region: cut.finished, quantity, stock: on.map(o => o.stock.name) };
    if (grain === undefined) return { ...common, turns: free };
    const direction = cut.first.face === 'front' ? grain : Math.PI - grain;
    return { ...common, grain: { direction, rule: 'along' } };
  });
  return { parts, stocks: family.map(nestStockOf) };
}

/** What laying out a `nestJob` comes to. */
type Found = Pick<NestLayout, 'unplaced'> & {
  readonly pieces: readonly (NestedPiece & Partial<Pick<StraightPiece, 'cuts'>>)[];
};

/** A layout of `nestJob` as one of the job. */
export function familyLayout({ family, candidates }: FamilyJob, { pieces, unplaced }: Found): FamilyLayout {
  const laid = pieces.map(
    (piece): LaidStock => ({
      stock: family.find(s => s.name === piece.stock)!,
      placements: piece.placements.map((p): Placement => ({ cut: candidates[Number(p.part)]!.cut, motion: p.motion })),
      ...(piece.cuts && { rips: piece.cuts }),
    }),
  );
  return { laid, left: unplaced.map(u => ({ ...u, part: candidates[Number(u.part)]!.cut.part.id })) };
}

/** Stocks that parts name are taken without end: how many are needed is told by the layout. */
function endless(stocks: readonly NestStock[], { candidates }: FamilyJob): NestStock[] {
  const named = new Set(candidates.map(c => c.cut.part.stock));
  return stocks.map(stock => {
    if (!named.has(stock.name)) return stock;
    const { count: _, ...rest } = stock;
    return rest;
  });
}

/** Lays out with the stock there is, and, where that is too little, with as much as it takes. */
function withEnough(job: FamilyJob, lay: (parts: NestPart[], stocks: NestStock[]) => Found): FamilyLayout {
  const { parts, stocks } = nestJob(job);
  const found = lay(parts, stocks);
  return familyLayout(job, found.unplaced.length === 0 ? found : lay(parts, endless(stocks, job)));
}

/** Parts as they lie densest. @param steps to search; a few unless given */
export function freeLayout(job: FamilyJob, steps?: number): FamilyLayout {
  if (isPlain(job)) return plainLayout(job, steps);
  const effort = steps === undefined ? {} : { steps };
  return withEnough(job, (parts, stocks) => nest(parts, stocks, { gap: job.gap, ...effort }));
}

/** Parts as a table saw gets them out, a kerf apart; offcuts of their own outline are not ripped. */
export const straightLayout = (job: FamilyJob, kerf: Mm): FamilyLayout =>
  withEnough(job, (parts, stocks) =>
    nestStraight(
      parts,
      stocks.filter(s => s.kind !== 'offcut'),
      kerf,
    ),
  );
