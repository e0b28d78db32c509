import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { readPlan } from '../../lib/plan/index.js';
import { PLAN } from './valid-plan.js';

/** Reads a plan that may be anything: it is usable, or every issue names a field, a value and what is allowed, in one line each. */
function readsOrRefuses(text: string): void {
  try {
    const plan = readPlan(text);
    expect(plan.stock.length).toBeGreaterThan(0);
    expect(JSON.stringify(plan)).not.toMatch(/null|NaN|Infinity/);
  } catch (error) {
    if (!(error instanceof Unusable)) throw error;
    expect(error.issues.length).toBeGreaterThan(0);
    for (const { field, value, allowed } of error.issues) {
      for (const part of [field, value, allowed]) expect(part).toMatch(/^[^\p{Cc}]+$/u);
      expect(value.length).toBeLessThanOrEqual(90);
    }
  }
}

const SCRAPS = [
  '-1',
  '0',
  '.nan',
  '-.inf',
  '1e400',
  '0x10',
  '1/0',
  '4-1/4',
  '4 1/4"',
  `2' 6"`,
  '762mm',
  '-0.05mm',
  '18deg',
  'null',
  '~',
  'true',
  '',
  '[]',
  '{}',
  '[[',
  '{ a: 1',
  '"',
  "'",
  '&a 1',
  '*a',
  '!!str 5',
  '!x y',
  '|',
  '>',
  '# x',
  '? a',
  ': b',
  '- c',
  '\t',
  '__proto__',
  'constructor',
  '../x',
  'none',
  '"\\u0000"',
  '\u2028',
  '\ud800',
  '%',
  '@',
  '`',
  '---',
  '...',
  '<<: *a',
  'both',
  '{ axle: 3 }',
  '[[0, 1], [1, 0]]',
  '9'.repeat(400),
];

test('one value of a good plan replaced by anything', () => {
  const values = [...PLAN.matchAll(/(?<=: )[^,{}[\]\n]+/g)];
  fc.assert(
    fc.property(
      fc.constantFrom(...values),
      fc.oneof(fc.constantFrom(...SCRAPS), fc.string({ unit: 'binary', maxLength: 12 })),
      (found, scrap) => {
        readsOrRefuses(PLAN.slice(0, found.index) + scrap + PLAN.slice(found.index + found[0].length));
      },
    ),
    { numRuns: 300 },
  );
});

test('a good plan with lines left out, doubled or changed about', () => {
  const lines = PLAN.split('\n');
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(lines.length - 1), fc.nat(lines.length - 1), fc.constantFrom('out', 'double', 'swap')), {
        maxLength: 4,
      }),
      edits => {
        const text = edits.reduce((now, [i, j, how]) => {
          if (how === 'out') return now.filter((_, at) => at !== i);
          if (how === 'double') return now.flatMap((line, at) => (at === i ? [line, line] : [line]));
          return now.map((line, at) => (at === i ? (now[j] ?? '') : at === j ? (now[i] ?? '') : line));
        }, lines);
        readsOrRefuses(text.join('\n'));
      },
    ),
    { numRuns: 150 },
  );
});

test('any text at all', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), readsOrRefuses), { numRuns: 500 });
  fc.assert(fc.property(fc.json(), readsOrRefuses), { numRuns: 300 });
});

test('reading leaves the language as it was', () => {
  expect(() => readPlan(`${PLAN}\n__proto__: { stolen: 1 }\nconstructor: { prototype: { stolen: 1 } }`)).toThrow(
    Unusable,
  );
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect('stolen' in {}).toBe(false);
});
