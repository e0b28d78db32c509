import { refuse } from '../../lib/findings/unusable.js';
import type { NestStock } from '../../lib/nesting/job.js';
import type { Mm, Unit } from '../../lib/units/length.js';
import { lengthOf, numberOf } from './lengths.js';
import { regionsOf } from './part-files.js';

/** What holds for all stock of a run. */
export interface StockSettings {
  readonly unit: Unit;
  readonly margin: Mm;
  /** taken off each long edge */
  readonly true: Mm;
  readonly grain: 'along' | 'across' | 'none';
}

/** How a stock is written. */
export const STOCK_FORM =
  'WIDTHxLENGTH or an outline FILE.dxf; before it NAME=, after it *COUNT and @PRICE, such as ply=48inx96in*2@34 or offcut=left.dxf';

const WORD = /^(?:([A-Za-z0-9]+(?:-[A-Za-z0-9]+)*)=)?(.+?)(?:\*(\d+))?(?:@([\d.]+))?$/;

async function stockOf(word: string, number: number, { unit, ...more }: StockSettings): Promise<NestStock[]> {
  const [, name = `stock-${number}`, what = '', count, price] = WORD.exec(word) ?? refuse('--stock', word, STOCK_FORM);
  const any = {
    margin: more.margin,
    grain: more.grain,
    ...(count !== undefined && { count: numberOf('--stock', count, 1, 100_000, true) }),
    ...(price !== undefined && { price: numberOf('--stock', price, 0, 1e9) }),
  };
  if (/\.(dxf|svg)$/i.test(what)) {
    const regions = await regionsOf(what);
    const named = (k: number): string => (regions.length > 1 ? `${name}-${k + 1}` : name);
    return regions.map((outline, k) => ({ count: 1, ...any, kind: 'offcut', name: named(k), outline }));
  }
  const [width, length, ...rest] = what.split(/x/i);
  if (width === undefined || length === undefined || rest.length > 0) return refuse('--stock', word, STOCK_FORM);
  const size = {
    width: lengthOf('--stock', width, unit, 5, 30_000),
    length: lengthOf('--stock', length, unit, 5, 30_000),
  };
  if (more.true > 0) return [{ ...any, ...size, kind: 'board', name, true: more.true }];
  return [{ ...any, ...size, kind: 'sheet', name }];
}

/** The stock a run names, each name once. @throws Unusable */
export async function readStock(words: readonly string[], settings: StockSettings): Promise<NestStock[]> {
  if (words.length === 0) return refuse('--stock', 'missing', STOCK_FORM);
  const stock = (await Promise.all(words.map((w, k) => stockOf(w, k + 1, settings)))).flat();
  const twice = stock.find((s, k) => stock.findIndex(o => o.name === s.name) < k);
  return twice ? refuse('--stock', twice.name, 'each name once') : stock;
}
