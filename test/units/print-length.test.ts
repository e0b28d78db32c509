import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degrees, fromUnit, inches, toDegrees, toInches } from '../../lib/units/length.js';
import { parseAngle } from '../../lib/units/parse-angle.js';
import { parseLength } from '../../lib/units/parse-length.js';
import { printAngle, printInches, printLength, printMm, withInches } from '../../lib/units/print-length.js';

test('lengths in words are told in inches too, once', () => {
  expect(withInches('wood screw, #8, 50.8 mm long')).toBe('wood screw, #8, 50.8 mm (2 in) long');
  expect(withInches('Leave 107.95 mm, then 6 mm.')).toBe('Leave 107.95 mm (4-1/4 in), then 6 mm (15/64 in).');
  const told = withInches('12 mm deep');
  expect(withInches(told)).toBe(told);
  expect(withInches('300 mm² of glue, 3 kg, #10-32')).toBe('300 mm² of glue, 3 kg, #10-32');
});

describe('inches, to the nearest 1/64', () => {
  test.each([
    [107.95, '4-1/4 in'],
    [107.95 + 0.0762, '4-1/4 in +0.003 in'],
    [107.95 - 0.0762, '4-1/4 in -0.003 in'],
    [0, '0 in'],
    [-0, '0 in'],
    [762, '30 in'],
    [1.5875, '1/16 in'],
    [0.396875, '1/64 in'],
    [-6.35, '-1/4 in'],
    [-6.35 - 0.0254, '-1/4 in -0.001 in'],
    [-6.35 + 0.0254, '-1/4 in +0.001 in'],
    [0.0254, '0 in +0.001 in'],
    [-0.0254, '0 in -0.001 in'],
    [19, '3/4 in -0.002 in'], // 19/25.4 = 0.74803 in
    [0.0012, '0 in'], // under half of 0.0001 in
    [25.4 * 0.99999999, '1 in'],
  ])('%f mm is %s', (length, printed) => {
    expect(printInches(length)).toBe(printed);
  });
});

test.each([
  [107.95, '107.95 mm'],
  [762, '762 mm'],
  [100, '100 mm'],
  [0, '0 mm'],
  [-0.001, '0 mm'],
  [-0.05, '-0.05 mm'],
  [1 / 3, '0.33 mm'],
])('%f mm is %s', (length, printed) => {
  expect(printMm(length)).toBe(printed);
});

test('decimals are chosen by the caller; the unit by the plan', () => {
  expect(printMm(1 / 3, 6)).toBe('0.333333 mm');
  expect(printMm(1234.5, 0)).toBe('1235 mm');
  expect(printLength(107.95, 'in')).toBe('4-1/4 in');
  expect(printLength(107.95, 'mm')).toBe('107.95 mm');
});

const anyLength = fc.double({ min: -5000, max: 5000, noNaN: true });

test('what is printed reads back to the digits printed', () => {
  const back = (text: string): number => {
    const parsed = parseLength(text, 'mm');
    if (!parsed.ok) throw new Error(`${text} was refused`);
    return parsed.value;
  };
  fc.assert(
    fc.property(anyLength, length => {
      expect(Math.abs(back(printMm(length)) - length)).toBeLessThanOrEqual(0.005 + 1e-9);
      expect(Math.abs(back(printMm(length, 6)) - length)).toBeLessThanOrEqual(5e-7 + 1e-9);
      expect(Math.abs(back(printInches(length)) - length)).toBeLessThanOrEqual(25.4 * 0.00005 + 1e-9);
    }),
  );
});

test('a printed inch is a multiple of 1/64 and a remainder no larger than half of it; exact ones have none', () => {
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 20_000 }), marks => {
      const printed = printInches(inches(marks / 64));
      expect(printed).toMatch(/^-?(\d+|(\d+-)?\d*[13579]\/(2|4|8|16|32|64)) in$/);
    }),
  );
  fc.assert(
    fc.property(anyLength, length => {
      const remainder = / ([+-][\d.]+) in$/.exec(printInches(length));
      expect(Math.abs(Number(remainder?.[1] ?? 0))).toBeLessThanOrEqual(1 / 128 + 0.00005);
    }),
  );
});

test('inches and degrees go there and back', () => {
  fc.assert(
    fc.property(anyLength, n => {
      expect(toInches(inches(n))).toBeCloseTo(n, 9);
      expect(fromUnit(n, 'mm')).toBe(n);
      expect(fromUnit(n, 'in')).toBe(inches(n));
      expect(toDegrees(degrees(n))).toBeCloseTo(n, 9);
    }),
  );
});

test('angles', () => {
  expect(parseAngle('18deg')).toEqual({ ok: true, value: Math.PI / 10 });
  expect(parseAngle('180 °')).toEqual({ ok: true, value: Math.PI });
  expect(parseAngle('7-1/2deg')).toEqual({ ok: true, value: (15 * Math.PI) / 360 });
  expect(parseAngle('-90deg')).toEqual({ ok: true, value: -Math.PI / 2 });
  for (const text of ['18', 'deg', '', '18in', '1rad', '1/0deg', 'NaNdeg']) {
    expect(parseAngle(text)).toEqual({ ok: false, allowed: expect.stringContaining('18deg') });
  }
  expect(printAngle(Math.PI / 10)).toBe('18 deg');
  expect(printAngle(-Math.PI / 7)).toBe('-25.714 deg');
  fc.assert(
    fc.property(fc.double({ min: -720, max: 720, noNaN: true }), n => {
      const parsed = parseAngle(printAngle(degrees(n), 6));
      expect(parsed.ok && toDegrees(parsed.value)).toBeCloseTo(n, 6);
    }),
  );
});
