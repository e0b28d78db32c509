import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import type { Plan } from '../../lib/plan/plan.js';
import { readyToCut } from '../judges/ready-to-cut.js';
import { randomModels } from '../models/random-models.js';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const plans = readdirSync(SAMPLES)
  .filter(name => name.endsWith('.yaml'))
  .map(name => ({ name, plan: readPlan(readFileSync(SAMPLES + name, 'utf8')) }))
  .filter(({ plan }) => plan.method !== 'hand');

describe('what the cutter makes of the written sheets is the finished part, and goes together', () => {
  test.each(plans)('$name', async ({ plan }) => {
    const judged = readyToCut(plan)!;
    expect(judged.faults).toEqual([]);
    expect(judged.refused).toEqual([]);
    if (plan.method === 'router') expect(judged.gaps).toBeGreaterThan(10);
    // what was judged is what is written
    const { files, report } = await make(plan);
    const texts = judged.written.sheets.flatMap(s => [s.first, ...(s.second === undefined ? [] : [s.second])]);
    const names = report!.sheets.flatMap(s => [s.file, ...(s.back === undefined ? [] : [s.back])]);
    expect(texts).toEqual(names.map(name => files.get(name)));
  });
});

const random = (name: string, seed: number, method: 'router' | 'laser', over: object = {}): Plan =>
  readPlan(JSON.stringify({ ...randomModels[name]!(seed, method), ...over }));

describe('random plans; `npm run soak -- cut COUNT SEED` runs more', () => {
  test.each(Object.keys(randomModels))('%s', name => {
    const drawn = [
      ...[1, 2, 3].map(seed => random(name, seed, 'router')),
      random(name, 4, 'router', { relief: 'side' }),
      ...[1, 2].map(seed => random(name, seed, 'laser')),
    ];
    for (const plan of drawn) expect(readyToCut(plan)?.faults ?? []).toEqual([]);
  });
});

test('without relief square corners do not go in: the judge sees it', () => {
  const { faults } = readyToCut(random('stand', 1, 'router', { relief: 'none' }))!;
  expect(faults.length).toBeGreaterThan(0);
  for (const fault of faults) expect(fault).toMatch(/ meet at height /);
});

test('a cutter 0.02 mm wider than the plan says: the judge sees it in every part', () => {
  const plan = random('stand', 1, 'router');
  const cutter = { ...plan.cutter, diameter: 'diameter' in plan.cutter ? plan.cutter.diameter + 0.02 : 0 } as never;
  const stock = plan.stock.map(({ cutter: _, ...s }) => s);
  const { written } = readyToCut({ ...plan, stock })!;
  const wide = readyToCut({ ...plan, stock, cutter })!;
  expect(wide.faults).toEqual([]);
  expect(wide.written.sheets[0]!.first).not.toBe(written.sheets[0]!.first);
});
