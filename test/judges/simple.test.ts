import { expect, test } from 'vitest';
import { crossesItself } from './simple.js';

test('a square is simple, a bow tie and a figure with a doubled loop are not', () => {
  expect(
    crossesItself([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]),
  ).toBe(false);
  expect(
    crossesItself([
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]),
  ).toBe(true);
  expect(
    crossesItself([
      [0, 0],
      [10, 0],
      [10, 10],
      [4, 10],
      [4, -5],
      [0, -5],
    ]),
  ).toBe(true);
});
