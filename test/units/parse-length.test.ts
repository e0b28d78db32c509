import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength } from '../../lib/units/parse-length.js';

const mm = (text: string, unit: 'mm' | 'in' = 'in'): number => {
  const parsed = parseLength(text, unit);
  if (!parsed.ok) throw new Error(`${text} was refused`);
  return parsed.value;
};

describe('published: 1 in = 25.4 mm exactly (yard-and-pound agreement, 1959; NIST SP 811, appendix B.8)', () => {
  test.each([
    ['4-1/4', 107.95],
    ['4 1/4', 107.95],
    ['4 1/4"', 107.95],
    ['4-1/4"', 107.95],
    ['4-1/4in', 107.95],
    ['4-1/4 in', 107.95],
    ['4¼', 107.95],
    ['4-¼in', 107.95],
    ['4 ¼″', 107.95],
    ['4.25', 107.95],
    ['4 1⁄4”', 107.95],
    ['½', 12.7],
    ['¾in', 19.05],
    ['⅛"', 3.175],
    ['1/16in', 1.5875],
    ['5/4', 31.75],
    ['.5', 12.7],
    ['4.', 101.6],
    ['3', 76.2],
    ['2ft 6in', 762],
    ['2ft6in', 762],
    [`2' 6"`, 762],
    [`2'-6"`, 762],
    [`2'6`, 762],
    ['2′ 6″', 762],
    ['2’ 6”', 762],
    ["2' 6''", 762],
    ['2ft 6-1/2in', 774.7],
    ['2 1/2 ft', 762],
    ['3 feet', 914.4],
    ['1 foot', 304.8],
    ['30 inches', 762],
    ['1 inch', 25.4],
    ['762mm', 762],
    ['762 MM', 762],
    ['76.2cm', 762],
    ['0.762m', 762],
    ['1/2mm', 0.5],
    ['-0.05mm', -0.05],
    ['−0.05mm', -0.05],
    ['-1/4', -6.35],
    ['-2ft 6in', -762],
    ['  8 ', 203.2],
    ['4-1/4 in +0.003 in', 107.95 + 0.0762],
    ['4-1/4in -0.003in', 107.95 - 0.0762],
  ])('%s', (text, expected) => {
    expect(mm(text)).toBe(expected);
  });

  test('a bare number is in the unit of the plan', () => {
    expect(mm('4.25', 'mm')).toBe(4.25);
    expect(mm('4-1/4', 'mm')).toBe(4.25);
    expect(mm(`4-1/4"`, 'mm')).toBe(107.95);
  });

  test('zero has no sign', () => {
    expect(Object.is(mm('-0'), 0)).toBe(true);
  });
});

test.each([
  '',
  ' ',
  'in',
  '"',
  'abc',
  '4,25',
  '1,000',
  '4/0',
  '4-4/4',
  '4-5/4',
  '1/2/3',
  '1e3',
  'NaN',
  'Infinity',
  '0x10',
  '4 - 1/4',
  '--4',
  '4 mm 3',
  '2ft 30mm',
  '2ft-',
  '6in 2ft',
  '4..5',
  '1.5-1/4',
  '4 furlongs',
  '+4',
  '4-',
  '-',
  '\u0000',
  '4\n5',
  '9'.repeat(41),
  '4mm +0.1mm',
])('%j is refused, and the refusal says what a length looks like', text => {
  const parsed = parseLength(text, 'in');
  expect(parsed).toEqual({ ok: false, allowed: expect.stringContaining('4-1/4') });
});

test('every mixed number of 64ths is the nearest double to its exact value, however it is written', () => {
  const fractions = fc.tuple(
    fc.integer({ min: 0, max: 200 }),
    fc.integer({ min: 0, max: 63 }),
    fc.constantFrom('in', '"', ' in', '″', ''),
  );
  fc.assert(
    fc.property(fractions, fc.constantFrom('-', ' '), ([whole, over, mark], gap) => {
      const exact = ((whole * 64 + over) * 127) / 320; // integers below 2^53: one rounding
      expect(mm(`${whole}${gap}${over}/64${mark}`)).toBe(exact);
      expect(mm(`${(whole * 64 + over) / 64}${mark}`)).toBeCloseTo(exact, 9);
      expect(mm(`-${whole}${gap}${over}/64${mark}`)).toBe(0 - exact);
    }),
  );
});

test('metric units differ by powers of ten, feet by twelve inches', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 999_999 }), n => {
      expect(mm(`${n / 100}mm`)).toBe(n / 100);
      expect(mm(`${n / 100}cm`)).toBe(n / 10);
      expect(mm(`${n / 100}m`)).toBe(n * 10);
      expect(mm(`${n}ft 5in`)).toBe(mm(`${n * 12 + 5}in`));
    }),
  );
});
