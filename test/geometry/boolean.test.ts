import { describe, expect, test } from 'vitest';
import {
  area,
  asCircle,
  circle,
  difference,
  intersection,
  type Region,
  rectangle,
  reverse,
  signedArea,
  solid,
  union,
} from '../../lib/geometry/index.js';
import { entities, ring, sector } from './shapes.js';

const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);
const square = solid(rectangle(0, 0, 10, 10));

describe('published numbers', () => {
  // lens of two unit circles whose centres are 1 apart: 2 pi / 3 - sqrt(3) / 2; CRC Concise Encyclopedia of Mathematics, "Lens"
  test('lens of two circles through each other’s centres', () => {
    const lens = intersection([solid(circle(1))], [solid(circle(1, { x: 1, y: 0 }))]);
    expect(total(lens)).toBeCloseTo((2 * Math.PI) / 3 - Math.sqrt(3) / 2, 12);
    expect(lens[0]!.outer).toHaveLength(2);
  });
});

describe('shared edges', () => {
  test('two squares with a common side are one rectangle of four corners', () => {
    const both = union([square, solid(rectangle(10, 0, 20, 10))]);
    expect(both).toEqual([solid(rectangle(0, 0, 20, 10))]);
  });
  test.each([3, 5, 8, 12, 24])('a ring of %i touching felloes unites to two circles', n => {
    const step = (2 * Math.PI) / n;
    const united = union(Array.from({ length: n }, (_, i) => sector(235, 305, i * step, (i + 1) * step)));
    expect(united).toHaveLength(1);
    expect(asCircle(united[0]!.outer)?.radius).toBeCloseTo(305, 10);
    expect(united[0]!.openings).toHaveLength(1);
    expect(asCircle(united[0]!.openings[0]!)?.radius).toBeCloseTo(235, 10);
  });
  test('a disc that fills a hole leaves no seam', () => {
    expect(union([ring(5, 10), solid(circle(5))])).toEqual([solid(circle(10))]);
  });
  test('a region less itself is nothing, united with itself is itself', () => {
    const felloe = sector(235, 305, 0.2, 0.9);
    expect(difference([felloe], [felloe])).toEqual([]);
    expect(entities(union([felloe, felloe]))).toBe(4);
    expect(total(intersection([felloe], [felloe]))).toBeCloseTo(area(felloe), 7);
  });
});

describe('touching', () => {
  test('squares that share a corner stay two', () => {
    expect(union([square, solid(rectangle(10, 10, 20, 20))])).toHaveLength(2);
  });
  test('the inscribed circle leaves four corners', () => {
    const corners = difference([square], [solid(circle(5, { x: 5, y: 5 }))]);
    expect(corners).toHaveLength(4);
    expect(total(corners)).toBeCloseTo(100 - 25 * Math.PI, 11);
  });
  test('two discs that touch stay two', () => {
    expect(union([solid(circle(5)), solid(circle(3, { x: 8, y: 0 }))])).toHaveLength(2);
  });
  test('a hole that touches the edge from inside stays a hole', () => {
    const [moon] = difference([solid(circle(10))], [solid(circle(5, { x: 5, y: 0 }))]);
    expect(area(moon!)).toBeCloseTo(75 * Math.PI, 10);
  });
});

describe('operands', () => {
  test('regions of one operand may overlap', () => {
    const two = [square, solid(rectangle(5, 0, 15, 10))];
    expect(total(union(two))).toBeCloseTo(150, 12);
    expect(total(difference(two, [solid(rectangle(0, 0, 15, 5))]))).toBeCloseTo(75, 12);
    expect(total(intersection(two, two))).toBeCloseTo(150, 12);
  });
  test('an island in an opening is a region of its own', () => {
    const target = union([ring(5, 10), ring(1, 3)]);
    expect(target).toHaveLength(2);
    expect(total(target)).toBeCloseTo(83 * Math.PI, 10);
  });
  test('no regions', () => {
    expect(union([])).toEqual([]);
    expect(difference([square], [])).toEqual([square]);
    expect(intersection([square], [])).toEqual([]);
  });
  test('outlines given the wrong way round are turned', () => {
    const opening = rectangle(2, 2, 4, 4);
    const [plate] = union([{ outer: reverse(rectangle(0, 0, 10, 10)), openings: [opening] }]);
    expect(plate!.outer).toEqual(rectangle(0, 0, 10, 10));
    expect(signedArea(plate!.openings[0]!)).toBe(-4);
  });
  test('outers run anticlockwise, openings clockwise', () => {
    for (const r of difference([solid(circle(20))], [ring(5, 10), solid(circle(2, { x: 14, y: 0 }))])) {
      expect(signedArea(r.outer)).toBeGreaterThan(0);
      for (const o of r.openings) expect(signedArea(o)).toBeLessThan(0);
    }
  });
});
