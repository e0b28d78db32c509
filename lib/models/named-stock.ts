import type { Finding } from '../findings/finding.js';
import { refuse } from '../findings/unusable.js';
import type { Method, Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { printMm } from '../units/print-length.js';
import { stated, stop } from './helm-wheel/limit.js';

/** The stock of a name. @throws Unusable naming the field and the names there are */
export function stockNamed(stock: readonly Stock[], field: string, name: string): Stock {
  const found = stock.find(s => s.name === name);
  return found ?? refuse(field, name, stock.map(s => s.name).join(', ') || 'a name from stock');
}

/** A part of one thickness of its stock: the plan's field, and what is cut from what. */
export interface OneThick {
  readonly where: string;
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** Heights closer than this are one: they are worked out, which rounds. */
const SAME: Mm = 1e-6;

const planes = ({ thickness, stock }: OneThick, method: Method): boolean =>
  method !== 'laser' && stock.kind === 'board' && thickness <= stock.thickness + SAME;

/** A stop where a part is not as thick as its stock: a board may be planed down, a sheet may not, and nothing is planed for a laser. */
export function thicknessFindings(part: OneThick, method: Method): Finding[] {
  const { where, thickness, stock } = part;
  if (planes(part, method) || Math.abs(thickness - stock.thickness) <= SAME) return [];
  const from = stated(stock.thickness);
  const most = method !== 'laser' && stock.kind === 'board' ? `up to ${from} mm` : `${from} mm`;
  const what = `stock ${stock.name} is ${from} mm thick; allowed: ${most}`;
  return [stop('stock-thickness', where, thickness, stock.thickness, what)];
}

/** What is planed before anything is cut, each stock and thickness once. */
export const planingSteps = (parts: readonly OneThick[]): string[] => [
  ...new Set(
    parts
      .filter(p => p.stock.thickness - p.thickness > SAME)
      .map(p => `Plane ${p.stock.name} from ${printMm(p.stock.thickness)} to ${printMm(p.thickness)}.`),
  ),
];
