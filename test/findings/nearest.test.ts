import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allowedNames, editDistance, nearest } from '../../lib/findings/nearest.js';
import { requireLength } from '../../lib/findings/require-length.js';
import { Unusable } from '../../lib/findings/unusable.js';

test('published distances: kitten/sitting 3 (Levenshtein), ca/abc 3 (optimal string alignment), a swap is one edit (Damerau 1964)', () => {
  expect(editDistance('kitten', 'sitting')).toBe(3);
  expect(editDistance('ca', 'abc')).toBe(3);
  expect(editDistance('felloes', 'fellose')).toBe(1);
  expect(editDistance('', 'abc')).toBe(3);
});

test('distance is symmetric, zero only for equal words, at most the longer length', () => {
  const word = fc.string({ maxLength: 12 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      const edits = editDistance(a, b);
      expect(edits).toBe(editDistance(b, a));
      expect(edits === 0).toBe(a === b);
      expect(edits).toBeLessThanOrEqual(Math.max(a.length, b.length));
      expect(edits).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
    }),
  );
});

test('a slip is recognised, a different word is not', () => {
  const names = ['outside', 'band', 'felloes', 'seam', 'stock'];
  expect(nearest('felloe', names)).toBe('felloes');
  expect(nearest('Outsdie', names)).toBe('outside');
  expect(nearest('diameter', names)).toBeUndefined();
  expect(allowedNames('bnad', names)).toBe('outside, band, felloes, seam, stock (did you mean band?)');
  expect(allowedNames('x', names)).toBe('outside, band, felloes, seam, stock');
});

test('a length that cannot be read names field, value and what is allowed', () => {
  expect(requireLength('rim.band', '4-1/4', 'in')).toBe(107.95);
  expect(() => requireLength('rim.band', 'wide', 'in')).toThrow(Unusable);
  expect(() => requireLength('rim.band', 'wide', 'in')).toThrow(/rim\.band.*wide.*4-1\/4in/);
});
