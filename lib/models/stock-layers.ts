import type { Finding } from '../findings/finding.js';
import type { Method, Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';

/** Something cut from a stock, in one layer or several. */
export interface Layered {
  /** the plan's keys it comes from: `rim` */
  readonly field: string;
  /** of all its layers */
  readonly thickness: Mm;
  /** whole; a fraction where the thickness does not come out */
  readonly layers: number;
  readonly stock: Stock;
}

/** Rounding of thicknesses, mm. */
const SAME: Mm = 1e-6;

const stated = (mm: Mm): number => Math.round(mm * 1000) / 1000;

const stop = (rule: string, { field, thickness }: Layered, limit: Mm, what: string): Finding => ({
  level: 'stop',
  rule,
  where: `${field}.thickness`,
  message: `${field}.thickness is ${stated(thickness)} mm; ${what}`,
  value: thickness,
  limit,
});

/** Built up from layers, a thickness is a whole number of its stock's. @param least layers   @param who builds it up */
export function wholeLayers(l: Layered, least: number, who = 'a laser builds it up'): Finding[] {
  const { layers, stock } = l;
  if (Math.abs(layers - Math.round(layers)) < SAME && layers > least - 0.5) return [];
  const low = Math.max(least, Math.floor(layers + SAME));
  const right = [low, low + 1].map(n => `${stated(n * stock.thickness)} mm`).join(' or ');
  const many = least > 1 ? ', two or more' : '';
  const what = `${who} from whole layers of ${stock.name} (${stated(stock.thickness)} mm)${many}; allowed: ${right}`;
  return [stop('laser-layers', l, low * stock.thickness, what)];
}

/** A thickness is what its stock is thick, layer by layer; a single board may be planed thinner. */
function stockThickness(l: Layered): Finding[] {
  const { thickness, layers, stock } = l;
  const from = stock.thickness * layers;
  const planed = stock.kind === 'board' && layers === 1;
  if (Math.abs(thickness - from) < SAME || (planed && thickness <= from + SAME)) return [];
  const allowed = `${planed ? 'up to ' : ''}${stated(from)} mm`;
  const and = layers > 1 ? ` and there are ${layers} layers` : '';
  return [
    stop(
      'stock-thickness',
      l,
      from,
      `stock ${stock.name} is ${stated(stock.thickness)} mm thick${and}; allowed: ${allowed}`,
    ),
  ];
}

/** What keeps a thickness from being cut from its stock: the field, its value, what is allowed.
 * @param least layers a laser needs; 1 unless given */
export const layersFindings = (l: Layered, method: Method, least = 1): Finding[] =>
  method === 'laser' ? wholeLayers(l, least) : stockThickness(l);
