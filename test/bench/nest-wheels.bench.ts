import { readFileSync } from 'node:fs';
import { area, bounds, rectangle, solid } from '../../lib/geometry/index.js';
import { buildProp } from '../../lib/models/index.js';
import { inline } from '../../lib/nesting/engine/rounds.js';
import type { NestPart, NestStock } from '../../lib/nesting/job.js';
import { nest, nestLong } from '../../lib/nesting/nest.js';
import { readPlan } from '../../lib/plan/index.js';
import { most, print, type Row } from './race.js';

const IN = 25.4;
const QUARTERS = { step: Math.PI / 2 };
const SHEET: NestStock = { kind: 'sheet', name: 'ply', length: 96 * IN, width: 48 * IN, margin: 5, grain: 'none' };
const SHEET_AREA = 96 * 48 * IN * IN;
const clock = (): number => performance.now();

/** All parts of a dozen ferry helms, as if they were cut from sheets. */
function dozenHelms(): NestPart[] {
  const plan = readPlan(readFileSync('samples/ferry-helm.yaml', 'utf8'));
  const parts = buildProp(plan, plan.stock, plan.title).value?.parts ?? [];
  return parts.map(p => ({ id: p.id, region: p.region, quantity: 12 * p.quantity, turns: QUARTERS }));
}

/** The same parts as nobody would cut them: their boxes. */
const boxed = (parts: readonly NestPart[]): NestPart[] =>
  parts.map(p => {
    const { minX, minY, maxX, maxY } = bounds(p.region.outer);
    return { ...p, region: solid(rectangle(minX, minY, maxX, maxY)) };
  });

async function helms(seed: number, gap: number): Promise<Row[]> {
  const parts = dozenHelms();
  const total = parts.reduce((sum, p) => sum + p.quantity * area(p.region), 0);
  const needed = Math.ceil(total / 0.8 / SHEET_AREA);
  const effort = { kind: 'seconds', seconds: 20, threads: 1, clock } as const;
  const layout = await nestLong(parts, [SHEET], { gap, seed, effort, run: inline(clock) });
  const boxes = nest(boxed(parts), [SHEET], { gap, seed });
  return [
    most(`12 helms, gap ${gap} mm, 20 s: sheets (as boxes ${boxes.pieces.length})`, layout.pieces.length, needed),
  ];
}

function timed(quantity: number): { readonly seconds: number; readonly laid: number } {
  const part = { id: 'a', region: solid(rectangle(0, 0, 90, 40)), quantity, turns: QUARTERS };
  const begun = clock();
  const { pieces } = nest([part], [SHEET], { gap: 5, steps: 1 });
  return { seconds: (clock() - begun) / 1000, laid: pieces.reduce((sum, p) => sum + p.placements.length, 0) };
}

/** Wheels in earnest, and how time grows with the number of parts. */
export async function bench(seed: number): Promise<void> {
  timed(500);
  const [few, many] = [timed(500), timed(5000)];
  print('nesting of wheels', [
    ...(await helms(seed, 0)),
    ...(await helms(seed, 7.35)),
    most('5,000 parts: seconds', many.seconds, 60),
    most('ten times the parts of one kind: times the time', many.seconds / few.seconds, 12),
  ]);
}
