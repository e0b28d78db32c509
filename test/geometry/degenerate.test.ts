import { describe, expect, test } from 'vitest';
import { type Outline, offset, polygon, solid } from '../../lib/geometry/index.js';
import { felloe } from '../bench/wheel-shapes.js';
import { difference, fineOffset, finePaths, finePerimeter, type Judge } from '../soak/fine-polygons.js';

/** Distances that meet a width or a radius exactly, or miss it by a millionth; against the fine polygons of an independent library. */
const JUDGE: Judge = { chordError: 0.0002, units: 1e6 };
const D = 1.5875;

const points = (list: readonly (readonly [number, number])[]): Outline => polygon(list.map(([x, y]) => ({ x, y })));
const slotted = (w: number): Outline =>
  points([
    [0, 0],
    [40, 0],
    [40, 30],
    [20 + w / 2, 30],
    [20 + w / 2, 10],
    [20 - w / 2, 10],
    [20 - w / 2, 30],
    [0, 30],
  ]);
const tabbed = (w: number): Outline =>
  points([
    [0, 0],
    [40, 0],
    [40, 10],
    [20 + w / 2, 10],
    [20 + w / 2, 30],
    [20 - w / 2, 30],
    [20 - w / 2, 10],
    [0, 10],
  ]);
const QUARTER = Math.tan(Math.PI / 8);
const rounded = (w: number, h: number, r: number): Outline =>
  points([
    [r, 0],
    [w - r, 0],
    [w, r],
    [w, h - r],
    [w - r, h],
    [r, h],
    [0, h - r],
    [0, r],
  ]).map((v, i) => ({
    ...v,
    bulge: i % 2 === 1 ? QUARTER : 0,
  }));
const disc = (r: number): Outline => [
  { x: r, y: 0, bulge: 1 },
  { x: -r, y: 0, bulge: 1 },
];
/** the outline of thread 390 of the tracker of maker.js, a general geometry library, which came back empty there */
const published = points([
  [36, 36],
  [864, 36],
  [864, 144],
  [756, 360],
  [576, 360],
  [540, 504],
  [36, 504],
]);
const even = felloe(() => 0.5).outer;

const CASES: readonly (readonly [string, Outline, number])[] = [
  ['published polygon, in 36', published, -36],
  ['published polygon, in 30', published, -30],
  ['slot exactly two offsets wide', slotted(2 * D), D],
  ['slot a millionth wider', slotted(2 * D + 1e-6), D],
  ['slot a millionth narrower', slotted(2 * D - 1e-6), D],
  ['tab exactly two offsets wide', tabbed(2 * D), -D],
  ['tab a millionth wider', tabbed(2 * D + 1e-6), -D],
  ['tab a millionth narrower', tabbed(2 * D - 1e-6), -D],
  ['corner radius exactly the offset', rounded(60, 30, D), -D],
  ['corner radius half the offset', rounded(60, 30, D / 2), -D],
  ['corner radius 6, in 6', rounded(60, 30, 6), -6],
  ['disc that vanishes', disc(D), -D],
  ['disc of 5', disc(5), -D],
  [
    'square that vanishes',
    points([
      [0, 0],
      [2 * D, 0],
      [2 * D, 2 * D],
      [0, 2 * D],
    ]),
    -D,
  ],
  [
    'vertices on straight edges',
    points([
      [0, 0],
      [10, 0],
      [20, 0],
      [30, 0],
      [30, 10],
      [30, 20],
      [0, 20],
      [0, 10],
    ]),
    D,
  ],
  [
    'vertex typed twice',
    points([
      [0, 0],
      [30, 0],
      [30, 0],
      [30, 20],
      [0, 20],
    ]),
    D,
  ],
  ['felloe, in by its notch', even, -12],
  ['felloe, in by 17.5', even, -17.5],
  ['felloe that vanishes', even, -35.001],
  ['felloe, out', even, D],
];

describe.each(CASES)('%s', (_, outline, by) => {
  test('is within the judge’s tolerance', () => {
    const region = solid(outline);
    const want = fineOffset(finePaths([region], JUDGE), by, JUDGE);
    const got = finePaths(offset(region, by), JUDGE);
    expect(difference(got, want, JUDGE)).toBeLessThan(4 * JUDGE.chordError * (finePerimeter(want, JUDGE) + 1));
  });
});

test('what vanishes leaves nothing, not slivers', () => {
  expect(offset(solid(disc(D)), -D)).toEqual([]);
  expect(
    offset(
      solid(
        points([
          [0, 0],
          [2 * D, 0],
          [2 * D, 2 * D],
          [0, 2 * D],
        ]),
      ),
      -D,
    ),
  ).toEqual([]);
  expect(offset(solid(even), -35.5)).toEqual([]);
});

test('a slot exactly two offsets wide closes without a seam', () => {
  const [closed] = offset(solid(slotted(2 * D)), D);
  expect(closed!.openings).toEqual([]);
});

test('a tab exactly two offsets wide is gone', () => {
  const [base] = offset(solid(tabbed(2 * D)), -D);
  // but for a cusp between the arcs about the two inside corners
  expect(Math.max(...base!.outer.map(v => v.y))).toBeCloseTo(10, 6);
});
