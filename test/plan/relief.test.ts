import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { check } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/read-plan.js';
import { sharedShop } from '../../lib/plan/shared-shop.js';
import { randomModels } from '../models/random-models.js';

const stand = (over: object) => JSON.stringify({ ...randomModels['stand']!(1, 'router'), ...over });

test('relief is left to the cut unless a plan says it, and is one shop’s', () => {
  expect(readPlan(stand({}))).not.toHaveProperty('relief');
  const [side, none] = (['side', 'none'] as const).map(relief => readPlan(stand({ relief })));
  expect(sharedShop([side!])).toMatchObject({ relief: 'side' });
  expect(() => sharedShop([side!, none!])).toThrow(Unusable);
});

test('the plan reaches the cut: only without relief corners are to be squared by hand', () => {
  const told = (over: object) => check(readPlan(stand(over))).findings.some(f => f.rule === 'inside-corner');
  expect([{}, { relief: 'side' }, { relief: 'none' }].map(told)).toEqual([false, false, true]);
});

test('another word is refused with those there are', () => {
  expect(() => readPlan(stand({ relief: 'diagonal' }))).toThrow(/relief is .*diagonal.*bisector, side, none/);
});
