import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { thinWall, thinWalls } from '../../../lib/cutting/checks/thin-wall.js';
import { moveRegion } from '../../../lib/geometry/motion.js';
import { offset } from '../../../lib/geometry/offset.js';
import {
  annularSector,
  circle,
  type Outline,
  polygon,
  rectangle,
  reverse,
  solid,
  vertex,
} from '../../../lib/geometry/outline.js';
import type { Drill, Part } from '../../../lib/parts/part.js';
import { bar, lap, plate, well } from '../pieces.js';

const hole = (x: number, y: number, diameter: number, from: Drill['from'] = 'through', depth = 10): Drill => ({
  kind: 'drill',
  at: { x, y },
  diameter,
  from,
  depth,
});

const thinnest = (part: Part, limit = 5): number | undefined =>
  thinWalls(part, limit)
    .map(w => w.thickness)
    .sort((a, b) => a - b)[0];

const outlined = (outer: Outline, ...openings: Outline[]): Part => plate({ outer, openings: openings.map(reverse) });

test('a hole of 10 mm, 7 mm from the edge, keeps a wall of 2 mm: told with its place', () => {
  const [finding, ...more] = thinWall(bar(hole(30, 3, 10)), 2.5);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ level: 'warn', rule: 'thin-wall', where: 'bar', limit: 2.5 });
  expect(finding!.value).toBeCloseTo(2, 12);
  expect(finding!.place).toMatchObject({ part: 'bar' });
  expect(finding!.place!.at.x).toBeCloseTo(30, 9);
  expect(finding!.place!.at.y).toBeCloseTo(9, 9);
  expect(finding!.message).toContain('wall of 2 mm between its outline and a hole at (30 mm, 9 mm)');
  expect(thinWall(bar(hole(30, 3, 10)), 2)).toEqual([]);
});

describe('a wall is measured', () => {
  test('between holes', () => {
    expect(thinnest(bar(hole(30, 0, 6), hole(39, 0, 6)))).toBeCloseTo(3, 12);
  });

  test('between arcs about one centre', () => {
    expect(thinnest(outlined(circle(50), circle(47.5)))).toBeCloseTo(2.5, 12);
    expect(thinnest(plate(solid(annularSector(97, 100, 0.2, 1))))).toBeCloseTo(3, 12);
  });

  test('from the corner of an opening', () => {
    const diamond = polygon(
      [
        [0, -8],
        [8, 0],
        [0, 8],
        [-8, 0],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    expect(thinnest(outlined(rectangle(-10, -30, 30, 30), diamond))).toBeCloseTo(2, 12);
    expect(thinnest(outlined(rectangle(-10, -10, 20, 20), rectangle(-7, -6, 0, 0)))).toBeCloseTo(3, 12);
  });

  test('between pockets, and between a pocket and a hole, where they stand at one height', () => {
    expect(thinnest(bar(lap('front', 10, 30), lap('front', 32, 50)))).toBeCloseTo(2, 12);
    expect(thinnest(bar(lap('front', 10, 30), lap('back', 32, 50)))).toBeUndefined();
    expect(thinnest(bar(lap('front', 10, 30), hole(35, 0, 6)))).toBeCloseTo(2, 12);
    expect(thinnest(bar(lap('front', 10, 30), hole(35, 0, 6, 'back', 5)))).toBeUndefined();
    expect(thinnest(bar(lap('front', 10, 30), hole(35, 0, 6, 'back', 5.5)))).toBeCloseTo(2, 12);
  });

  test('in a fin that stands out', () => {
    const fin = polygon(
      [
        [0, 0],
        [40, 0],
        [40, 20],
        [21.5, 20],
        [21.5, 35],
        [18.5, 35],
        [18.5, 20],
        [0, 20],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    expect(thinnest(outlined(fin))).toBeCloseTo(3, 12);
  });
});

describe('no wall', () => {
  const none: readonly (readonly [string, Part])[] = [
    ['at a corner that is rounded or cut off', plate(offset([solid(rectangle(0, 0, 30, 30))], 1)[0]!)],
    [
      'at a point',
      outlined(
        polygon([
          { x: 0, y: 0 },
          { x: 60, y: -12 },
          { x: 60, y: 12 },
        ]),
      ),
    ],
    [
      'at a point with a blunt end',
      outlined(
        polygon([
          { x: 0, y: -1 },
          { x: 60, y: -15 },
          { x: 60, y: 15 },
          { x: 0, y: 1 },
        ]),
      ),
    ],
    ['where a pocket runs out over the edge', bar(lap('front', 40, 60))],
    ['beside a hole in the middle of a pocket', bar(lap('front', 20, 80), hole(50, 0, 8))],
    [
      'across a gap',
      outlined(
        polygon(
          [
            [0, 0],
            [30, 0],
            [30, 20],
            [16, 20],
            [16, 8],
            [14, 8],
            [14, 20],
            [0, 20],
          ].map(([x, y]) => ({ x: x!, y: y! })),
        ),
      ),
    ],
    ['in a counterbore', bar(hole(50, 0, 10, 'front', 5), hole(50, 0, 5))],
    ['round a half circle', outlined([vertex({ x: 4, y: 0 }, 1), vertex({ x: -4, y: 0 })])],
  ];
  test.each(none)('%s', (_, part) => {
    expect(thinWalls(part, 3)).toEqual([]);
  });

  test('beneath a well that is as deep as the wood', () => {
    expect(thinnest(bar(well(rectangle(10, -8, 30, 8)), hole(20, 9.9, 0.5)))).toBeDefined();
    expect(thinnest(bar(well(rectangle(10, -8, 30, 8)), hole(20, 0, 3)), 1.9)).toBeUndefined();
  });
});

test('among random holes the thinnest wall is the one of the distances between circles, however the part is turned', () => {
  const any = fc.record({
    holes: fc.array(
      fc.record({
        x: fc.double({ min: 12, max: 88, noNaN: true }),
        y: fc.double({ min: 12, max: 68, noNaN: true }),
        r: fc.double({ min: 1, max: 6, noNaN: true }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    turn: fc.double({ min: 0, max: 6, noNaN: true }),
  });
  fc.assert(
    fc.property(any, ({ holes, turn }) => {
      const gaps = holes.flatMap((a, i) => holes.slice(0, i).map(b => Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r));
      fc.pre(gaps.every(g => g > 0.01));
      const edges = holes.flatMap(h => [h.x, h.y, 100 - h.x, 80 - h.y].map(d => d - h.r));
      const openings = holes.map(h => reverse(circle(h.r, h)));
      const region = moveRegion({ outer: rectangle(0, 0, 100, 80), openings }, { turn, x: 3, y: -7 });
      expect(thinnest(plate(region), 200)).toBeCloseTo(Math.min(...gaps, ...edges), 6);
    }),
    { numRuns: 200 },
  );
});
