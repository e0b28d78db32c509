import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { check } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { damagedPlan } from '../models/damaged-plan.js';
import { randomModels } from '../models/random-models.js';

/** Damaged plans of each model; `npm run soak -- invalid` tries thousands. */
const PLANS = Number(process.env['RIMWRIGHT_DAMAGED'] ?? 30);

test.each(Object.keys(randomModels))(
  `${PLANS} damaged plans of a %s are refused with a reason, stopped by a finding, or built`,
  model => {
    let refused = 0;
    for (let seed = 1; seed <= PLANS; seed++) {
      const text = damagedPlan(model, seed);
      try {
        const { value, findings } = check(readPlan(text));
        expect(JSON.stringify(findings)).not.toMatch(
          /\bNaN\b|Infinity|undefined|allowed: (at most|\d[\d.]* to) (-|0 mm)/,
        );
        if (findings.some(f => f.level === 'stop')) refused++;
        else expect(value?.assembly.length, text).toBeGreaterThan(0);
      } catch (error) {
        if (!(error instanceof Unusable)) throw new Error(`seed ${seed}: ${text}`, { cause: error });
        for (const { field, value, allowed } of error.issues)
          expect([field, value, allowed].map(s => s.length > 0)).toEqual([true, true, true]);
        refused++;
      }
    }
    expect(refused).toBeGreaterThan(PLANS / 3);
  },
);
