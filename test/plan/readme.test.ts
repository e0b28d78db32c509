import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planSchema } from '../../lib/plan/index.js';
import { changed, issuesOf } from './valid-plan.js';

const README = readFileSync(new URL('../../lib/plan/README.md', import.meta.url), 'utf8');

/** The pages of the models, which tell of their own keys. */
const MODELS = new URL('../../lib/models/', import.meta.url);
const pages = readdirSync(MODELS).filter(name => name.endsWith('.md'));
const PAGES = [README, ...pages.map(name => readFileSync(new URL(name, MODELS), 'utf8'))].join('\n');

/** Every key of a JSON Schema, however deep. */
function keysOf(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const own =
    'properties' in schema && typeof schema.properties === 'object' ? Object.keys(schema.properties ?? {}) : [];
  return [...own, ...Object.values(schema).flatMap(keysOf)];
}

test('every key of the plan format is documented', () => {
  const keys = new Set(keysOf(planSchema()));
  expect(keys.size).toBeGreaterThan(45);
  for (const key of keys) expect(PAGES).toMatch(new RegExp(`\`[^\`]*\\b${key}\\b[^\`]*\``));
});

test('the refusals it shows are the ones given', () => {
  for (const text of [changed('felloes: 5', 'felloes: 2'), changed('band: 4-1/4', 'bnad: 4-1/4')]) {
    const told = issuesOf(text).map(i => `${i.field} is ${i.value}; allowed: ${i.allowed}`);
    expect(told.some(line => README.includes(line))).toBe(true);
  }
});
