import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readPlan } from '../../lib/plan/index.js';
import { randomModels } from '../models/random-models.js';
import { wrongInPlan } from './plan-pockets.js';

const SAMPLES = new URL('../../samples/', import.meta.url);
const samples = readdirSync(SAMPLES).filter(name => name.endsWith('.yaml'));
const routed = samples
  .map(name => ({ name, plan: readPlan(readFileSync(new URL(name, SAMPLES), 'utf8')) }))
  .filter(({ plan }) => plan.method === 'router');

const HOW = [
  { run: 'rings', stepover: 0.4 },
  { run: 'grain', stepover: 0.6 },
] as const;

test.each(routed)('the pockets of $name are cleared whole and nothing else', ({ plan }) => {
  for (const how of HOW) expect(wrongInPlan(plan, how).wrong).toEqual([]);
});

test('samples have pockets to clear', () => {
  expect(routed.reduce((sum, { plan }) => sum + wrongInPlan(plan, HOW[0]).pockets, 0)).toBeGreaterThan(15);
});

test.each(Object.keys(randomModels))('so are those of a random %s', model => {
  for (const seed of [1, 2]) {
    const plan = readPlan(JSON.stringify(randomModels[model]!(seed, 'router')));
    expect(wrongInPlan(plan, HOW[seed % 2]!).wrong).toEqual([]);
  }
});
