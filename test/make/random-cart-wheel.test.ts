import { expect, test } from 'vitest';
import { make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { invalidOutlines } from '../judges/invalid-outlines.js';
import { randomCartWheel } from '../models/random-cart-wheel.js';

/** Plans drawn for each method; every one of them is within what a cart wheel may be. */
const PLANS = Number(process.env['RIMWRIGHT_PLANS'] ?? 20);

test.each(['router', 'laser', 'hand'] as const)(
  `${PLANS} random cart wheels by %s build; none has overlapping pieces or an invalid outline`,
  async method => {
    const wrong: string[] = [];
    for (let seed = 1; seed <= PLANS; seed++) {
      const plan = readPlan(JSON.stringify(randomCartWheel(seed, method)));
      const { files, findings } = await make(plan, {}, { anyway: true });
      const stops = findings.filter(f => f.level === 'stop' || f.rule === 'interference');
      wrong.push(...stops.map(f => `${seed}: ${f.message}`));
      wrong.push(...invalidOutlines(files).map(path => `${seed}: ${path} crosses itself`));
    }
    expect(wrong).toEqual([]);
  },
  900_000,
);
