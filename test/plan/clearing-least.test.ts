import { expect, test } from 'vitest';
import { readPlan } from '../../lib/plan/index.js';
import { sharedShop } from '../../lib/plan/shared-shop.js';
import { changed, issuesOf } from './valid-plan.js';

const said = (keys: string): string => changed('copies: 1', `copies: 1\n${keys}`);

test('passes in pockets and what no part should fall below are read to mm; left out they stay out', () => {
  const plan = readPlan(said('clearing: { stepover: 0.3, run: grain }\nleast: { wall: 1/8, part: 50mm }'));
  expect(plan.clearing).toEqual({ stepover: 0.3, run: 'grain' });
  expect(plan.least).toEqual({ wall: 3.175, part: 50 });
  expect(sharedShop([plan])).toMatchObject({ clearing: plan.clearing, least: plan.least });
  expect(readPlan(said('clearing: {}')).clearing).toEqual({});
  expect(readPlan(changed('copies: 1', 'copies: 1'))).not.toHaveProperty('clearing');
});

test.each([
  ['clearing: { stepover: 0 }', 'clearing.stepover', '0', /a number, 0\.05 to 0\.95/],
  ['clearing: { stepover: 1 }', 'clearing.stepover', '1', /a number, 0\.05 to 0\.95/],
  ['clearing: { stepover: 40% }', 'clearing.stepover', '40%', /a number, 0\.05 to 0\.95/],
  ['clearing: { run: spiral }', 'clearing.run', 'spiral', /rings, grain/],
  ['clearing: rings', 'clearing', 'rings', /stepover, run/],
  ['clearing: { step: 0.4 }', 'clearing.step', '0.4', /stepover/],
  ['least: { wall: -1 }', 'least.wall', '-1', /0 to 1\.968 in \(0 to 50 mm\)/],
  ['least: { part: 3ft }', 'least.part', '3ft', /\(0 to 500 mm\)/],
  ['least: { walls: 3 }', 'least.walls', '3', /did you mean wall\?/],
])('%s is refused', (keys, field, value, allowed) => {
  const issues = issuesOf(said(keys));
  expect(issues.map(i => i.field)).toEqual([field]);
  if (!/key of the plan/.test(issues[0]!.value)) expect(issues[0]!.value).toContain(value);
  expect(`${issues[0]!.value} ${issues[0]!.allowed}`).toMatch(allowed);
});
