import { encloses } from '../geometry/locate.js';
import { area } from '../geometry/measure.js';
import type { Drill, Part, Pocket } from '../parts/part.js';
import { findMaterial } from '../stock/materials.js';
import type { Stock } from '../stock/stock.js';

/** What a stock is taken to be when the plan does not say: the panel and the construction lumber most shops have. */
const ASSUMED = { sheet: 'softwood plywood', board: 'coast Douglas-fir' } as const;

const MM3_PER_M3 = 1e9;

const isPocket = (f: Part['features'][number]): f is Pocket => f.kind === 'pocket';
const isDrill = (f: Part['features'][number]): f is Drill => f.kind === 'drill';

/** What a hole takes away beyond the pocket it starts in, mm³. */
function holeVolume(drill: Drill, pockets: readonly Pocket[]): number {
  const over = pockets.filter(p => encloses(p.area.outer, drill.at)).map(p => p.depth);
  const depth = Math.max(0, drill.depth - Math.max(0, ...over));
  return (Math.PI * drill.diameter * drill.diameter * depth) / 4;
}

/** Volume of a part less its pockets and holes, mm³. Pockets of one part do not overlap. */
export function partVolume(part: Part): number {
  const pockets = part.features.filter(isPocket);
  const cleared = pockets.reduce((sum, p) => sum + area(p.area) * p.depth, 0);
  const drilled = part.features.filter(isDrill).reduce((sum, d) => sum + holeVolume(d, pockets), 0);
  return area(part.region) * part.thickness - cleared - drilled;
}

/** The material a stock is weighed as, and whether that is only assumed. */
export function weighedAs(stock: Stock): { readonly material: string; readonly assumed: boolean } {
  const named = stock.species === undefined ? undefined : findMaterial(stock.species);
  return named ? { material: named.name, assumed: false } : { material: ASSUMED[stock.kind], assumed: true };
}

/** Weight of all the parts of one prop, kg; hardware, glue and finish not counted. */
export function weight(parts: readonly Part[], stock: readonly Stock[]): number {
  return parts.reduce((sum, part) => {
    const from = stock.find(s => s.name === part.stock);
    const density = from ? (findMaterial(weighedAs(from).material)?.density ?? 0) : 0;
    return sum + (part.quantity * partVolume(part) * density) / MM3_PER_M3;
  }, 0);
}
