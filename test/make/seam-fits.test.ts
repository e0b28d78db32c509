import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { check } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';

const sample = (name: string): string => readFileSync(new URL(`../../samples/${name}.yaml`, import.meta.url), 'utf8');

/** A sample with fingers in its rim and a fit between them. */
function fingered(name: string, field: string, seam: string | undefined) {
  const text = sample(name).replace(/^ *(seam:|fit:).*\n/gm, '');
  const plan = text.replace(new RegExp(`^${field}:\n`, 'm'), `${field}:\n  seam: { joint: finger }\n`);
  expect(plan).not.toBe(text);
  return check(readPlan(seam === undefined ? plan : `${plan}\nfit: { seam: ${seam} }\n`));
}

describe.each([
  ['fish-cart-wheel', 'rim'],
  ['ferry-mill', 'rim'],
  ['ferry-porthole', 'ring'],
])('fingers in the %s', (name, field) => {
  test.each([undefined, '0.2mm', '0mm', '-0.05mm'])('meet within a fit of %s, pressed or not', seam => {
    const { findings } = fingered(name, field, seam);
    expect(findings.filter(f => ['interference', 'mating'].includes(f.rule))).toEqual([]);
  });
});

test('the board of a felloe holds its fingers', () => {
  const { value } = fingered('fish-cart-wheel', 'rim', undefined);
  const felloes = value!.parts.filter(p => p.kind === 'felloe');
  const figure = (name: string): number => value!.figures.find(f => f.name === name)?.value ?? 0;
  expect(figure('felloe, length of its board')).toBeCloseTo(Math.max(...felloes.map(p => p.width)), 6);
  expect(figure('felloe, width of its board')).toBeCloseTo(Math.max(...felloes.map(p => p.height)), 6);
});

test('a species no table holds is said to be taken for wood', () => {
  const { findings } = check(readPlan(sample('ferry-mill').replace(/species: [a-z ]+/g, 'species: cheese')));
  expect(findings.find(f => f.rule === 'unknown-material')?.message).toContain('cheese');
});

test.each(['Ωmega', '輪', 'Ладья'])('the name %s is refused, not changed', name => {
  const plan = sample('ferry-helm').replace(
    'copies: 1',
    `copies: 1\naccents: { name: { text: "${name}", stock: thin } }`,
  );
  expect(() => readPlan(plan)).toThrow(
    /accents\.name\.text is .*allowed: one line, 1 to 40 characters, each a Latin letter/,
  );
});
