import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { bulge, coordinate } from '../../lib/writers/number.js';

const PLAIN = /^-?\d+(\.\d*[1-9])?$/;

describe('coordinates', () => {
  test.each([
    [0.1 + 0.2, '0.3'],
    [-0, '0'],
    [-4e-10, '0'],
    [1e-9, '0.000000001'],
    [-2.5e-7, '-0.00000025'],
    [609.6, '609.6'],
    [1e6, '1000000'],
    [123456789.5, '123456789.5'],
    [1e9, '1000000000'],
  ])('%f is written %s', (value, text) => expect(coordinate(value)).toBe(text));

  test('are plain decimals within half of the ninth place, whatever their size', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), v => {
        const text = coordinate(v);
        expect(text).toMatch(PLAIN);
        expect(text).not.toBe('-0');
        expect(text.split('.')[1]?.length ?? 0).toBeLessThanOrEqual(9);
        expect(Math.abs(Number(text) - v)).toBeLessThanOrEqual(5e-10 + Math.abs(v) * 2e-16);
      }),
      { numRuns: 2000 },
    );
  });

  test('written, read and written again are the same', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), v => {
        expect(coordinate(Number(coordinate(v)))).toBe(coordinate(v));
      }),
    );
  });

  test.each([Number.NaN, Infinity, -Infinity, 1.1e9])('%f is refused by name', v => {
    expect(() => coordinate(v)).toThrow(Unusable);
    expect(() => coordinate(v)).toThrow(`${v}`);
  });
});

describe('bulges', () => {
  // tan(angle / 4): DXF reference, LWPOLYLINE, group code 42
  test.each([
    [Math.tan(Math.PI / 8), '0.414213562373095'],
    [-Math.tan(Math.PI / 16), '-0.198912367379658'],
    [1, '1'],
    [1.23456789012345e-9, '0.00000000123456789012345'],
    [-3e-8, '-0.00000003'],
    [0, '0'],
    [-0, '0'],
  ])('%f is written %s', (value, text) => expect(bulge(value)).toBe(text));

  test('keep 15 significant digits at any size, without exponent', () => {
    const tiny = fc.double({ min: 1e-14, max: 1, noNaN: true });
    fc.assert(
      fc.property(tiny, fc.boolean(), (size, negative) => {
        const v = negative ? -size : size;
        expect(bulge(v)).toMatch(PLAIN);
        expect(Math.abs(Number(bulge(v)) - v)).toBeLessThanOrEqual(5.1e-15 * Math.abs(v));
        expect(
          bulge(v)
            .replace(/^-?0?\.?0*/, '')
            .replace('.', '').length,
        ).toBeLessThanOrEqual(15);
      }),
      { numRuns: 2000 },
    );
  });

  test.each([Number.NaN, 1.0001, -2])('%f is refused by name', v => expect(() => bulge(v)).toThrow(`a bulge is ${v}`));
});
