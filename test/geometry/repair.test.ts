import { describe, expect, test } from 'vitest';
import {
  area,
  circle,
  GeometryFailure,
  type Outline,
  offset,
  polygon,
  type Region,
  rectangle,
  repair,
  reverse,
  signedArea,
  solid,
  union,
} from '../../lib/geometry/index.js';

const failure = (work: () => unknown): GeometryFailure => {
  try {
    work();
  } catch (error) {
    if (error instanceof GeometryFailure) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
};

const points = (list: readonly (readonly [number, number])[]): Outline => polygon(list.map(([x, y]) => ({ x, y })));

describe('put right', () => {
  test('vertices typed twice, also across the start', () => {
    const twice = points([
      [0, 0],
      [10, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0, 0],
    ]);
    expect(repair(solid(twice)).outer).toEqual(rectangle(0, 0, 10, 10));
  });
  test('directions of outer outline and openings', () => {
    const turned = repair({ outer: reverse(rectangle(0, 0, 10, 10)), openings: [rectangle(2, 2, 4, 4)] });
    expect(signedArea(turned.outer)).toBe(100);
    expect(signedArea(turned.openings[0]!)).toBe(-4);
  });
  test('an arc of three quarters of a turn, bulge tan(3 pi / 8) = 1 + sqrt 2', () => {
    const long: Outline = [
      { x: 1, y: 0, bulge: 1 + Math.SQRT2 },
      { x: 0, y: -1, bulge: Math.SQRT2 - 1 },
    ];
    const whole = repair(solid(long));
    expect(whole.outer).toHaveLength(3);
    expect(area(whole)).toBeCloseTo(Math.PI, 12);
    expect(offset(solid(long), 1)[0]!.outer).toHaveLength(2);
  });
  test('an opening without area is dropped', () => {
    expect(
      repair({
        outer: rectangle(0, 0, 10, 10),
        openings: [
          points([
            [2, 2],
            [4, 4],
          ]),
        ],
      }).openings,
    ).toEqual([]);
  });
  test('what is right comes back as it was', () => {
    const right: Region = { outer: rectangle(0, 0, 10, 10), openings: [reverse(circle(2, { x: 5, y: 5 }))] };
    expect(repair(right)).toEqual(right);
    expect(repair(right).outer).toBe(right.outer);
  });
});

describe('refused with the place', () => {
  test('a coordinate that is no number', () => {
    const bad = failure(() =>
      offset(
        solid([
          { x: 0, y: 0, bulge: 0 },
          { x: 4, y: Number.NaN, bulge: 0 },
          { x: 0, y: 4, bulge: 0 },
        ]),
        1,
      ),
    );
    expect(bad.code).toBe('not-finite');
    expect(bad.place.x).toBe(4);
    expect(
      failure(() =>
        union([
          solid([
            { x: 1, y: 2, bulge: Infinity },
            { x: 3, y: 4, bulge: 0 },
          ]),
        ]),
      ).code,
    ).toBe('not-finite');
  });
  test('nothing inside', () => {
    expect(failure(() => repair(solid([]))).code).toBe('empty');
    expect(
      failure(() =>
        repair(
          solid(
            points([
              [1, 1],
              [5, 5],
            ]),
          ),
        ),
      ).code,
    ).toBe('empty');
  });
  test('a bow tie crosses itself', () => {
    const bow = failure(() =>
      repair(
        solid(
          points([
            [0, 0],
            [10, 10],
            [10, 0],
            [0, 12],
          ]),
        ),
      ),
    );
    expect(bow.code).toBe('self-crossing');
  });
  test('an arc that bulges through the other side', () => {
    const through: Outline = [
      { x: 0, y: 0, bulge: 0 },
      { x: 20, y: 0, bulge: 0 },
      { x: 20, y: 3, bulge: 1 },
      { x: 0, y: 3, bulge: 0 },
    ].map(v => (v.bulge === 1 ? { ...v, bulge: -1 } : v));
    expect(failure(() => offset(solid(through), 1)).code).toBe('self-crossing');
  });
  test('an opening across the edge, outside it, or in another opening', () => {
    const plate = rectangle(0, 0, 20, 20);
    const code = (...openings: Outline[]): string => failure(() => repair({ outer: plate, openings })).code;
    expect(code(circle(3, { x: 0, y: 10 }))).toBe('self-crossing');
    expect(code(circle(3, { x: 40, y: 10 }))).toBe('self-crossing');
    expect(code(circle(5, { x: 10, y: 10 }), circle(2, { x: 10, y: 10 }))).toBe('self-crossing');
    expect(code(circle(3, { x: 8, y: 10 }), circle(3, { x: 12, y: 10 }))).toBe('self-crossing');
  });
  test('the place is where the outline crosses', () => {
    // two concave half circles whose circles overlap in a lens 0.1 long: found by a random search
    const spike: Outline = [
      { x: -20, y: 32, bulge: -1 },
      { x: -28, y: 14, bulge: -1 },
      { x: -34, y: 0, bulge: 0 },
      { x: 20, y: -30, bulge: 0 },
      { x: 38, y: 8, bulge: 0 },
    ];
    const bad = failure(() => offset(solid(spike), 3));
    expect(bad.code).toBe('self-crossing');
    expect(Math.hypot(bad.place.x + 28, bad.place.y - 14)).toBeLessThan(0.2);
  });
});

describe('taken as it is', () => {
  test('an opening that touches the edge, openings that touch each other', () => {
    const touching: Region = {
      outer: rectangle(0, 0, 20, 20),
      openings: [circle(3, { x: 3, y: 10 }), circle(3, { x: 9, y: 10 })].map(reverse),
    };
    expect(area(repair(touching))).toBeCloseTo(400 - 18 * Math.PI, 10);
    expect(offset(touching, -1)).toHaveLength(1);
  });
  test('an overlap of coordinates written to six digits', () => {
    const tangent: Region = {
      outer: rectangle(0, 0, 20, 20),
      openings: [circle(3, { x: 2.999999, y: 10 }), circle(3, { x: 8.999998, y: 10 })].map(reverse),
    };
    expect(repair(tangent).openings).toHaveLength(2);
  });
});
