import type { CutPart } from '../cutting/cut-part.js';
import type { Finding, Outcome } from '../findings/finding.js';
import { refuse } from '../findings/unusable.js';
import { area } from '../geometry/measure.js';
import type { Method } from '../stock/stock.js';
import { cutWidth, type Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { fewerSheets } from './fewer-sheets.js';
import { type Bed, fitsBed, fittingWays, overhang, tooFew, tooLargeForBed, tooSmall, usableRoom } from './fit.js';
import { type Filled, layOut, type Room } from './layout.js';
import { withPins } from './register-pins.js';
import type { Placement, Sheet } from './sheet.js';
import { type Turned, waysToLie } from './turns.js';

/** So many of a cut part. */
export interface Wanted {
  readonly cut: CutPart;
  readonly quantity: number;
}

export interface NestOptions {
  readonly method: Method;
  /** without it, the machine takes any length */
  readonly bed?: Bed;
  /** steps spent on finding fewer sheets; a few unless given */
  readonly steps?: number;
}

/** Between two cuts, mm: a bridge of wood beside the cut of one of them, wider where heat works on it. */
const bridge = (method: Method): Mm => (method === 'laser' ? 2 : 1);

/** Gap between finished outlines on a stock: the widest cut of any of its parts and a bridge, so that no part's cut reaches another part. */
export const safeGap = (cuts: readonly CutPart[], method: Method): Mm =>
  Math.max(0, ...cuts.map(c => cutWidth(c.cutter))) + bridge(method);

interface Candidate extends Wanted {
  readonly ways: readonly Turned[];
}

/** The ways a wanted part may lie on its stock and the machine, or what keeps it off. */
function admit(wanted: Wanted, stock: Stock, room: Room, gap: Mm, bed: Bed | undefined): Outcome<Candidate[]> {
  const ways = waysToLie(wanted.cut, gap);
  const fitting = fittingWays(ways, room);
  if (fitting.length === 0) return { value: [], findings: [tooSmall(wanted.cut, stock, ways, room)] };
  const workable = bed ? fitting.filter(w => fitsBed(w, gap, wanted.cut.cutter, bed)) : fitting;
  if (bed && workable.length === 0) return { value: [], findings: [tooLargeForBed(wanted.cut, fitting, gap, bed)] };
  return { value: [{ ...wanted, ways: workable }], findings: [] };
}

function sheetOf(stock: Stock, number: number, filled: Filled, candidates: readonly Candidate[], gap: Mm): Sheet {
  const originX = stock.margin - gap / 2;
  const originY = stock.true + originX;
  const placements = filled.laid.map(({ batch, way, spot }): Placement => {
    const motion = { turn: way.turn, x: originX + spot.x - way.corner.x, y: originY + spot.y - way.corner.y };
    return { cut: candidates[batch]!.cut, motion };
  });
  const covered = placements.reduce((sum, p) => sum + area(p.cut.finished), 0);
  return { stock, number, placements, utilisation: covered / (stock.length * stock.width) };
}

/** Sheets with pins to turn them over on; by hand each part is turned over by itself. Findings that are the same for several, once.
 * @param fits whether they lie on the bed as a whole */
function register(sheets: readonly Sheet[], method: Method, fits: boolean): Outcome<Sheet[]> {
  if (method === 'hand') return { value: [...sheets], findings: [] };
  const each = sheets.map(sheet => {
    const kerf = method === 'laser' ? Math.max(0, ...sheet.placements.map(p => cutWidth(p.cut.cutter))) : 0;
    return withPins(sheet, fits, kerf);
  });
  const findings = new Map(each.flatMap(e => e.findings).map(f => [f.message, f]));
  return { value: each.map(e => e.value), findings: [...findings.values()] };
}

function nestOn(stock: Stock, wanted: readonly Wanted[], options: NestOptions): Outcome<Sheet[]> {
  const gap = safeGap(
    wanted.map(w => w.cut),
    options.method,
  );
  const bed = options.method === 'hand' ? undefined : options.bed;
  const room = usableRoom(stock, gap);
  const admitted = wanted.map(w => admit(w, stock, room, gap, bed));
  const candidates = admitted.flatMap(a => a.value);
  const batches = candidates.map(c => ({ ways: c.ways, quantity: c.quantity, area: area(c.cut.finished) }));
  const plain = batches.length > 0 ? layOut(batches, room) : [];
  const filled = fewerSheets(candidates, plain, room, gap, options.steps);
  const over = bed && filled.length > 0 ? overhang(stock, bed) : [];
  const laid = filled.map((f, i) => sheetOf(stock, i + 1, f, candidates, gap));
  const pinned = register(laid, options.method, over.length === 0);
  const findings: Finding[] = [
    ...admitted.flatMap(a => a.findings),
    ...tooFew(stock, filled.length),
    ...over,
    ...pinned.findings,
  ];
  return { value: pinned.value, findings };
}

/** Lays cut parts out on the stock each names. Finished outlines lie inside the trued stock by its margin and a safe gap apart (the cut's
 * width and a bridge), grain along the stock; the cutter's path may run off the stock's edge. A fixed effort: same input, same layout: a plain layout from end to end, bettered by the engine where fewer sheets might do.
 * @param cuts quantities are whole, for all copies together
 * @returns sheets in the order of the stocks, numbered from 1 in each; parts that fit nowhere are left out, with a finding.
 * Findings: `stop` for a part larger than its stock or the bed and for too little stock, `warn` for stock longer than the bed and for a sheet
 * worked on both faces without a place for register pins.
 * @throws Unusable if a part names a stock that is not there, or a quantity is not a whole number */
export function nestCuts(cuts: readonly Wanted[], stocks: readonly Stock[], options: NestOptions): Outcome<Sheet[]> {
  for (const { cut, quantity } of cuts) {
    const names = stocks.map(s => s.name);
    if (!names.includes(cut.part.stock)) refuse(`${cut.part.id}.stock`, cut.part.stock, names.join(', '));
    if (!(Number.isInteger(quantity) && quantity >= 0))
      refuse(`${cut.part.id}.quantity`, quantity, 'a whole number, 0 or more');
  }
  const each = stocks.map(stock => {
    const wanted = cuts.filter(c => c.cut.part.stock === stock.name && c.quantity > 0);
    return wanted.length > 0 ? nestOn(stock, wanted, options) : { value: [], findings: [] };
  });
  return { value: each.flatMap(o => o.value), findings: each.flatMap(o => o.findings) };
}
