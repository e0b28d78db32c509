import { expect, test } from 'vitest';
import { offset, type Region } from '../../lib/geometry/index.js';
import { difference, fineOffset, finePaths, finePerimeter, type Judge } from '../soak/fine-polygons.js';

/** Offsets that random searches found to fail, each with what was wrong. Corners as x, y, bulge. */
type Corners = readonly (readonly [number, number, number])[];
interface Case {
  readonly what: string;
  readonly by: number;
  readonly outer: Corners;
  readonly openings?: readonly Corners[];
}

const Q = Math.tan(Math.PI / 8);
const CASES: readonly Case[] = [
  {
    what: 'a short slice decided the order of two curves nearer to each other than the tolerance',
    by: 1,
    outer: [
      [38, 8, 0],
      [28, 24, 0],
      [4, 36, -1],
      [-12, 32, 0],
      [-26, 14, 0],
      [-32, -8, 0],
      [-18, -26, 0],
      [-2, -38, 0],
      [12, -36, 0],
      [30, -10, Q],
    ],
    openings: [
      [
        [14, 21, 0],
        [12, 21, 0],
        [11, 20, 0],
        [10, 22, Q],
        [11, 23, 0],
        [12, 24, 1e-7],
        [14, 24, 0],
        [14, 22, 1],
      ],
    ],
  },
  {
    what: 'a tiny slice, absorbed by the arc before it, brought its own nearly straight edge along',
    by: -2.6867016653571447,
    outer: [
      [-36, -36, 0],
      [36, -36, 0],
      [36, 36, 0],
      [-36, 36, 0],
    ],
    openings: [
      [
        [1, -3, -1e-5],
        [-1, -3, -Q],
        [-2, -2, 1],
        [0, 0, -Q],
        [1, -1, -1e-7],
      ],
      [
        [19, -9, 1e-5 * Q],
        [18, -10, -1],
        [16, -9, 1],
        [16, -7, 0],
        [18, -7, 0],
        [19, -7, 0],
      ],
    ],
  },
  {
    what: 'a ray from an arc with a far centre found its middle inside another slice of the same circle',
    by: 0.7482906927791352,
    outer: [
      [32, 8, -1],
      [26, 18, Q / 1e3],
      [18, 26, Q / 1e3],
      [0, 32, Q],
      [-12, 30, Q],
      [-26, 30, 1e-7],
      [-34, 6, 0],
      [-36, 0, Q],
      [-28, -24, -1],
      [-18, -28, -Q / 1e5],
      [0, -36, -0.001],
      [12, -34, 0],
      [30, -24, -Q / 1e7],
      [36, -8, Q / 1e7],
    ],
  },
  {
    what: 'the same, shrunk',
    by: -6,
    outer: [
      [30, 2, 0],
      [20, 20, -1e-7],
      [10, 38, Q],
      [-6, 36, -Q / 1e7],
      [-24, 28, 0],
      [-26, 10, 0],
      [-28, -4, 0],
      [-20, -16, 0],
      [-8, -34, 0],
      [6, -28, 0],
      [20, -32, 1],
      [28, -8, -Q / 1e7],
    ],
    openings: [
      [
        [-3, 16, -1],
        [3, 16, -1],
      ],
    ],
  },
  {
    what: 'two openings grow into each other: what was left of one passed a half turn and was taken for the other',
    by: -0.1659546984326312,
    outer: [
      [0, 0, 0],
      [36, 0, 0],
      [36, 44, 0],
      [0, 44, 0],
    ],
    openings: [
      [
        [3, 12, -1],
        [9, 12, -1],
      ],
      [
        [17, 5, -1],
        [15, 2, 0],
        [12, 3, 0],
        [11, 5, 0],
        [10, 7, 0],
        [13, 9, 0],
        [16, 8, -1],
        [17, 6, 0],
      ],
      [
        [9, 14, -1],
        [15, 14, -1],
      ],
    ],
  },
];

const JUDGE: Judge = { chordError: 0.0005, units: 1e5 };
const outline = (corners: Corners) => corners.map(([x, y, bulge]) => ({ x, y, bulge }));

test.each(CASES)('$what', ({ by, outer, openings = [] }) => {
  const region: Region = { outer: outline(outer), openings: openings.map(outline) };
  const want = fineOffset(finePaths([region], JUDGE), by, JUDGE);
  const error = difference(finePaths(offset(region, by), JUDGE), want, JUDGE);
  expect(error).toBeLessThan(4 * JUDGE.chordError * finePerimeter(want, JUDGE));
});
