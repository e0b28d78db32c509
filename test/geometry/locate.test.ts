import { expect, test } from 'vitest';
import { circle, locate, rectangle, solid } from '../../lib/geometry/index.js';
import { ring } from './shapes.js';

test('a ring', () => {
  expect(locate(ring(5, 10), { x: 0, y: 0 })).toBe('outside');
  expect(locate(ring(5, 10), { x: 7, y: 0 })).toBe('inside');
  expect(locate(ring(5, 10), { x: 0, y: -7 })).toBe('inside');
  expect(locate(ring(5, 10), { x: 5, y: 0 })).toBe('boundary');
  expect(locate(ring(5, 10), { x: 11, y: 0 })).toBe('outside');
});

test('points level with vertices', () => {
  const square = solid(rectangle(0, 0, 10, 10));
  expect(locate(square, { x: -1, y: 0 })).toBe('outside');
  expect(locate(square, { x: 5, y: 10 })).toBe('boundary');
  expect(locate(square, { x: 11, y: 10 })).toBe('outside');
  expect(locate(solid(circle(3)), { x: 0, y: 0 })).toBe('inside');
  expect(locate(solid(circle(3)), { x: -4, y: 0 })).toBe('outside');
});
