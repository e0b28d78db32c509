import { describe, expect, test } from 'vitest';
import {
  area,
  circle,
  offset,
  perimeter,
  type Region,
  rectangle,
  reverse,
  solid,
  union,
} from '../../lib/geometry/index.js';
import { entities, ring, sector } from './shapes.js';

const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);
const square = solid(rectangle(0, 0, 10, 10));

describe('published numbers', () => {
  // Steiner's formula for a convex body, A + P d + pi d²: Santaló, "Integral Geometry and Geometric Probability", ch. 1
  test.each([0.5, 1.5875, 40])('a square grown by %d mm', d => {
    expect(total(offset(square, d))).toBeCloseTo(100 + 40 * d + Math.PI * d * d, 9);
    expect(entities(offset(square, d))).toBe(8);
  });
});

describe('both signs', () => {
  test('a square shrunk', () => {
    expect(offset(square, -1)).toEqual([solid(rectangle(1, 1, 9, 9))]);
    expect(offset(square, -5)).toEqual([]);
    expect(offset(square, -50)).toEqual([]);
  });
  test('a ring: both circles move', () => {
    expect(offset(ring(5, 10), 1)).toEqual([ring(4, 11)]);
    expect(offset(ring(5, 10), -1)).toEqual([ring(6, 9)]);
    expect(offset(ring(5, 10), 5)).toEqual([solid(circle(15))]);
    expect(offset(ring(5, 10), 6)).toEqual([solid(circle(16))]);
    expect(offset(ring(5, 10), -2.5)).toEqual([]);
  });
  test('a dumb-bell falls in two when its neck is gone', () => {
    const bell = union([square, solid(rectangle(9, 4, 21, 6)), solid(rectangle(20, 0, 30, 10))]);
    expect(offset(bell, -0.5)).toHaveLength(1);
    expect(offset(bell, -1)).toHaveLength(2);
    // each square keeps a tongue between the two arcs about the neck's corners
    const tongue = 2 * (1.5 - (Math.sqrt(1.25) / 2 + 1.125 * Math.asin(1 / 1.5)));
    expect(total(offset(bell, -1.5))).toBeCloseTo(2 * (49 + tongue), 10);
  });
  test('a hole breaks through the edge', () => {
    const plate: Region = { outer: rectangle(0, 0, 30, 10), openings: [reverse(circle(3, { x: 8, y: 5 }))] };
    expect(offset(plate, -0.9)[0]!.openings).toHaveLength(1);
    expect(offset(plate, -1.5)).toHaveLength(2);
  });
  test('an arc of radius R becomes R + d and R - d about its centre', () => {
    const felloe = sector(235, 305, 0.3, 1);
    const [grown] = offset(felloe, 1.5875);
    expect(entities([grown!])).toBe(8);
    expect(area(grown!)).toBeCloseTo(area(felloe) + perimeter(felloe) * 1.5875 + Math.PI * 1.5875 ** 2, 6);
    const [shrunk] = offset(felloe, -1.5875);
    expect(entities([shrunk!])).toBe(4);
  });
});

describe('mitred corners', () => {
  test('a square stays a square', () => {
    expect(offset(square, 1, { join: 'mitre' })).toEqual([solid(rectangle(-1, -1, 11, 11))]);
  });
  test('a corner past the limit is rounded', () => {
    expect(total(offset(square, 1, { join: 'mitre', limit: 1.2 }))).toBeCloseTo(140 + Math.PI, 10);
  });
});

describe('several at once', () => {
  test('neighbours merge when they grow', () => {
    const pair = [square, solid(rectangle(11, 0, 21, 10))];
    expect(offset(pair, 0.4)).toHaveLength(2);
    expect(offset(pair, 1)).toHaveLength(1);
  });
  test('touching regions shrink as one', () => {
    expect(offset([square, solid(rectangle(10, 0, 20, 10))], -1)).toEqual([solid(rectangle(1, 1, 19, 9))]);
  });
});

test('a distance that is no number is refused', () => {
  expect(() => offset(square, Number.NaN)).toThrow(/by is NaN/);
});

describe('cases that once failed', () => {
  test('two holes that grow into each other: what is left of either passes a half turn', () => {
    const holes = [circle(3, { x: 6, y: 12 }), circle(3, { x: 12, y: 14 })];
    for (const [a, b] of [holes, holes.map(reverse), [...holes].reverse()]) {
      const plate: Region = { outer: rectangle(0, 0, 36, 44), openings: [a!, b!] };
      const r = 3.165954698432631;
      const half = Math.acos(Math.sqrt(10) / r);
      const lens = r * r * (2 * half - Math.sin(2 * half));
      const [left, ...others] = offset(plate, 3 - r);
      expect(others).toEqual([]);
      expect(left!.openings).toHaveLength(1);
      expect(area(left!)).toBeCloseTo((36 - 2 * (r - 3)) * (44 - 2 * (r - 3)) - 2 * Math.PI * r * r + lens, 9);
    }
  });
});
