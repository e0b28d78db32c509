import { extname } from 'node:path';
import type { Finding, Outcome } from '../../lib/findings/finding.js';
import { refuse, Unusable } from '../../lib/findings/unusable.js';
import type { NestStock } from '../../lib/nesting/job.js';
import { nestStockOf } from '../../lib/nesting/stock-family.js';
import { readPlanText } from '../../lib/node/read-plan-text.js';
import type { Mm, Unit } from '../../lib/units/length.js';
import { lengthOf, numberOf } from './lengths.js';
import { regionsOf } from './part-files.js';
import { STOCK_FORM } from './stock-form.js';

/** What holds for all stock of a run that does not say otherwise. */
export interface StockSettings {
  readonly unit: Unit;
  readonly margin: Mm;
  /** taken off each long edge */
  readonly true: Mm;
  readonly grain: 'along' | 'across' | 'none';
}

const WORD = /^(?:([A-Za-z0-9]+(?:-[A-Za-z0-9]+)*)=)?(.+?)(?:\*(\d+))?(?:@([\d.]+))?$/;

/** The stock of a plan's file, or of one with nothing else in it. */
async function stockOfPlan(path: string): Promise<NestStock[]> {
  const { readStock } = await import('../../lib/plan/read-stock.js');
  try {
    return readStock(await readPlanText(path)).map(nestStockOf);
  } catch (error) {
    if (!(error instanceof Unusable)) throw error;
    throw new Unusable(error.issues.map(i => ({ ...i, field: `${path}: ${i.field}` })));
  }
}

async function stockOf(word: string, number: number, { unit, ...more }: StockSettings): Promise<Outcome<NestStock[]>> {
  const [, name = `stock-${number}`, what = '', count, price] = WORD.exec(word) ?? refuse('--stock', word, STOCK_FORM);
  const sure = (value: NestStock[], findings: readonly Finding[] = []): Outcome<NestStock[]> => ({ value, findings });
  if (/^\.(ya?ml|json)$/i.test(extname(word))) return sure(await stockOfPlan(word));
  const any = {
    margin: more.margin,
    grain: more.grain,
    ...(count !== undefined && { count: numberOf('--stock', count, 1, 100_000, true) }),
    ...(price !== undefined && { price: numberOf('--stock', price, 0, 1e9) }),
  };
  if (/\.(dxf|svg)$/i.test(what)) {
    const { value: regions, findings } = await regionsOf(what);
    const named = (k: number): string => (regions.length > 1 ? `${name}-${k + 1}` : name);
    const offcuts = regions.map((outline, k) => ({
      count: 1,
      ...any,
      kind: 'offcut' as const,
      name: named(k),
      outline,
    }));
    return sure(offcuts, findings);
  }
  const [width, length, ...rest] = what.split(/x/i);
  if (width === undefined || length === undefined || rest.length > 0) return refuse('--stock', word, STOCK_FORM);
  const size = {
    width: lengthOf('--stock', width, unit, 5, 30_000),
    length: lengthOf('--stock', length, unit, 5, 30_000),
  };
  if (more.true > 0) return sure([{ ...any, ...size, kind: 'board', name, true: more.true }]);
  return sure([{ ...any, ...size, kind: 'sheet', name }]);
}

/** The stock a run names, each name once, with what is to be said of its files. @throws Unusable */
export async function readStockWords(words: readonly string[], settings: StockSettings): Promise<Outcome<NestStock[]>> {
  if (words.length === 0) return refuse('--stock', 'missing', STOCK_FORM);
  const read = await Promise.all(words.map((w, k) => stockOf(w, k + 1, settings)));
  const stock = read.flatMap(r => r.value);
  const twice = stock.find((s, k) => stock.findIndex(o => o.name.toLowerCase() === s.name.toLowerCase()) < k);
  if (twice) return refuse('--stock', twice.name, 'each name once, whatever its case');
  return { value: stock, findings: read.flatMap(r => r.findings) };
}
