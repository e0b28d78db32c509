import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { check, make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { invalidOutlines } from '../judges/invalid-outlines.js';
import { randomStand } from '../models/random-stand.js';
import { spoiled } from '../models/spoiled-plan.js';

/** Plans drawn for each method, and the share of them that must build. */
const PLANS = Number(process.env['RIMWRIGHT_PLANS'] ?? 40);
const LEAST = 0.99;
/** Plans spoiled. */
const SPOILED = Number(process.env['RIMWRIGHT_SPOILED'] ?? 100);

const METHODS = ['router', 'laser', 'hand'] as const;

test.each(METHODS)(
  `of ${PLANS} random stands by %s nearly all build; none has overlapping pieces or an invalid outline`,
  async method => {
    const wrong: string[] = [];
    const refused: string[] = [];
    for (let seed = 1; seed <= PLANS; seed++) {
      const { files, findings } = await make(readPlan(JSON.stringify(randomStand(seed, method))));
      const solid = findings.filter(f => f.rule === 'interference' || f.rule === 'mating');
      wrong.push(...solid.map(f => `${seed}: ${f.message}`));
      refused.push(...findings.filter(f => f.level === 'stop').map(f => `${seed}: ${f.message}`));
      wrong.push(...invalidOutlines(files).map(path => `${seed}: ${path} crosses itself`));
    }
    expect(wrong).toEqual([]);
    expect(refused.length, refused.join('\n')).toBeLessThanOrEqual((1 - LEAST) * PLANS);
  },
  3_600_000,
);

test(`${SPOILED} spoiled plans are refused with a reason, stopped by a finding, or built`, () => {
  for (let seed = 1; seed <= SPOILED; seed++) {
    const plan = spoiled(randomStand(seed, METHODS[seed % 3]!), seed);
    try {
      const { value, findings } = check(readPlan(JSON.stringify(plan)));
      expect(value !== undefined || findings.some(f => f.level === 'stop')).toBe(true);
      expect(JSON.stringify(findings)).not.toMatch(/NaN|Infinity/);
    } catch (error) {
      if (!(error instanceof Unusable)) throw new Error(`${seed}: ${JSON.stringify(plan)}`, { cause: error });
    }
  }
}, 3_600_000);
