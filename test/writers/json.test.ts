import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeJson } from '../../lib/writers/json.js';

describe('JSON', () => {
  test('keeps the order of keys, leaves out what is undefined, rounds numbers once', () => {
    const value = { b: 0.1 + 0.2, a: [-0, 1 / 3, 1e21], c: undefined, d: { e: null, f: 'x\n', g: true } };
    expect(writeJson(value)).toBe(
      '{\n  "b": 0.3,\n  "a": [\n    0,\n    0.333333333,\n    1e+21\n  ],\n  "d": {\n    "e": null,\n    "f": "x\\n",\n    "g": true\n  }\n}\n',
    );
  });

  test.each([Number.NaN, Infinity])('%f is refused with its place', v => {
    expect(() => writeJson({ parts: [{ area: 1 }, { area: v }] })).toThrow(`$.parts[1].area is ${v}`);
  });

  test('read and written again is the same', () => {
    fc.assert(
      fc.property(fc.jsonValue(), value => {
        const text = writeJson(value);
        expect(writeJson(JSON.parse(text))).toBe(text);
      }),
    );
  });
});
