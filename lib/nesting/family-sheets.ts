import type { Finding, Outcome } from '../findings/finding.js';
import { area, bounds } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import type { Method, Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { overhang } from './bed.js';
import { type FamilyLayout, freeLayout, straightLayout } from './family-layout.js';
import { bedOf, isStraight, type NestOptions, type Ready, widestCut } from './family-ready.js';
import { tooFew } from './fit.js';
import { offcutOf } from './offcut.js';
import { withPins } from './register-pins.js';
import type { Sheet } from './sheet.js';
import { type Family, nestStockOf } from './stock-family.js';
import { rawRegion } from './stock-room.js';

/** How many pieces of a stock, and of those like it, either layout takes. */
export interface LayoutCounts {
  readonly stock: string;
  readonly free: number;
  /** absent where some part cannot be ripped out straight */
  readonly straight?: number;
}

/** Sheets in the order of the stocks, numbered from 1 in each. */
export interface Nested extends Outcome<Sheet[]> {
  /** for hand tools, of each stock that is cut */
  readonly counts: readonly LayoutCounts[];
}

/** By hand either layout may do: how many pieces each takes. */
function countsOf(ready: Ready, layout: FamilyLayout): LayoutCounts[] {
  if (layout.laid.length === 0) return [];
  const { job, kerf } = ready;
  const free = isStraight(ready) ? freeLayout(job) : layout;
  const straight = isStraight(ready) ? layout : straightLayout(job, kerf);
  const stock = ready.family[0].name;
  return [{ stock, free: free.laid.length, ...(straight.left.length === 0 && { straight: straight.laid.length }) }];
}

/** Sheets with pins to turn them over on; by hand each part is turned over by itself. Findings that are the same for several, once.
 * @param fits whether they lie on the bed as a whole */
function register(sheets: readonly Sheet[], method: Method, fits: boolean): Outcome<Sheet[]> {
  if (method === 'hand') return { value: [...sheets], findings: [] };
  const each = sheets.map(sheet => {
    const kerf = method === 'laser' ? widestCut(sheet.placements.map(p => p.cut)) : 0;
    return withPins(sheet, fits, kerf);
  });
  const findings = new Map(each.flatMap(e => e.findings).map(f => [f.message, f]));
  return { value: each.map(e => e.value), findings: [...findings.values()] };
}

/** A sheet with what is left whole of it, clear of parts and pins. */
function withOffcut(sheet: Sheet, gap: Mm): Sheet {
  const parts = sheet.placements.map(p => bounds(moveRegion(p.cut.finished, p.motion).outer));
  const pins = (sheet.pins ?? []).map(({ at, diameter }) => ({ maxX: at.x + diameter / 2, maxY: at.y + diameter / 2 }));
  const used = [...parts, ...pins];
  const reach = { x: Math.max(...used.map(b => b.maxX)), y: Math.max(...used.map(b => b.maxY)) };
  const offcut = offcutOf(rawRegion(nestStockOf(sheet.stock)), reach, gap);
  return offcut ? { ...sheet, offcut } : sheet;
}

function sheetsOn(stock: Stock, { laid }: FamilyLayout, gap: Mm, options: NestOptions): Outcome<Sheet[]> {
  const size = area(rawRegion(nestStockOf(stock)));
  const sheets = laid
    .filter(l => l.stock.name === stock.name)
    .map(({ placements, rips }, i): Sheet => {
      const covered = placements.reduce((sum, p) => sum + area(p.cut.finished), 0);
      return { stock, number: i + 1, placements, ...(rips && { rips }), utilisation: covered / size };
    });
  const bed = bedOf(options);
  const over = bed && sheets.length > 0 ? overhang(stock, bed) : [];
  const pinned = register(sheets, options.method, over.length === 0);
  return {
    value: pinned.value.map(s => withOffcut(s, gap)),
    findings: [...tooFew(stock, sheets.length), ...over, ...pinned.findings],
  };
}

const noPlace = ({ part, quantity }: FamilyLayout['left'][number], family: Family): Finding => {
  const names = family.map(s => s.name).join(', ');
  const message = `${part}: ${quantity} found no place on ${names}`;
  return { level: 'stop', rule: 'no-place', where: part, message, value: quantity, limit: 0 };
};

/** A family's layout as sheets, with all there is to say of it. */
export function nestedOn(ready: Ready, layout: FamilyLayout, options: NestOptions): Nested {
  const each = ready.family.map(stock => sheetsOn(stock, layout, ready.job.gap, options));
  const findings = [
    ...ready.findings,
    ...layout.left.map(l => noPlace(l, ready.family)),
    ...each.flatMap(e => e.findings),
  ];
  const counts = options.method === 'hand' ? countsOf(ready, layout) : [];
  return { value: each.flatMap(e => e.value), findings, counts };
}
