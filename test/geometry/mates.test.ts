import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  annularSector,
  area,
  chamferAll,
  circle,
  difference,
  fillet,
  flatten,
  intersection,
  MIRROR,
  type Motion,
  moveOutline,
  movePolyline,
  moveRegion,
  type Outline,
  offset,
  perimeter,
  polylineSegments,
  type Region,
  rectangle,
  repair,
  reverse,
  reversePolyline,
  segments,
  solid,
  union,
  vertex,
  withMates,
  withoutMates,
} from '../../lib/geometry/index.js';
import { isPlain, type Judge } from '../soak/fine-polygons.js';
import { randomDistance, randomPair, randomRegion, seeded } from '../soak/random-regions.js';
import { type Carrier, carriersOf, moved, strays, taggedAtRandom } from './tagged.js';

const JUDGE: Judge = { chordError: 0.001, units: 1e5 };
const RUNS = { numRuns: 150, seed: 1 };

const accepted = (region: Region): boolean => {
  try {
    return isPlain(region, JUDGE) && Boolean(repair(region));
  } catch {
    return false;
  }
};
const seed = fc.integer({ min: 1, max: 1e6 });
const pair = seed
  .map(s => {
    const random = seeded(s);
    return randomPair(random).map(r => taggedAtRandom(random, r)) as [Region, Region];
  })
  .filter(p => p.every(accepted));
const offsetCase = seed
  .map(s => {
    const random = seeded(s);
    return { region: taggedAtRandom(random, randomRegion(random)), by: randomDistance(random) };
  })
  .filter(({ region }) => accepted(region));
const motion: fc.Arbitrary<Motion> = fc.record({
  mirrored: fc.boolean(),
  turn: fc.double({ min: -4, max: 4, noNaN: true }),
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
});

const outlines = (regions: readonly Region[]): Outline[] => regions.flatMap(r => [r.outer, ...r.openings]);
const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);
const mates = (outline: Outline): (string | undefined)[] => outline.map(v => v.mate);
const onCarriers = (regions: readonly Region[], carriers: readonly Carrier[]): void =>
  expect(strays(outlines(regions), carriers)).toEqual([]);
/** Same area and outlines, tags or none. */
const sameShape = (got: readonly Region[], plain: readonly Region[]): void => {
  expect(got.map(r => r.openings.length)).toEqual(plain.map(r => r.openings.length));
  const edge = plain.reduce((t, r) => t + perimeter(r), 1);
  expect(Math.abs(total(got) - total(plain))).toBeLessThan(1e-8 * edge);
};

const square = rectangle(0, 0, 10, 10);
const sides = (...edges: number[]): Region => solid(withMates(square, 'seam', edges));

describe('each edge of a result bears the tag of the edges it lies on', () => {
  test.each([
    ['union', (a: Region, b: Region) => union([a, b])],
    ['difference', (a: Region, b: Region) => difference([a], [b])],
    ['intersection', (a: Region, b: Region) => intersection([a], [b])],
  ])('%s', (_, operation) => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const result = operation(a, b);
        onCarriers(result, [...carriersOf(a), ...carriersOf(b)]);
        sameShape(result, operation(withoutMates(a), withoutMates(b)));
      }),
      RUNS,
    );
  });

  test.each(['round', 'mitre'] as const)('offset of both signs, %s', join => {
    fc.assert(
      fc.property(offsetCase, ({ region, by }) => {
        for (const d of [by, -by]) {
          const result = offset(region, d, { join });
          onCarriers(
            result,
            carriersOf(region).map(c => moved(c, d)),
          );
          sameShape(result, offset(withoutMates(region), d, { join }));
        }
      }),
      RUNS,
    );
  });

  test('without tags given there are none, not even empty ones', () => {
    fc.assert(
      fc.property(offsetCase, ({ region, by }) => {
        for (const r of offset(withoutMates(region), by))
          for (const v of outlines([r]).flat()) expect(Object.keys(v)).toEqual(['x', 'y', 'bulge']);
      }),
      RUNS,
    );
  });
});

describe('by hand', () => {
  test('round corners of an offset have no tag, mitred ones run the tagged side on', () => {
    const [round] = offset(sides(0), 2);
    expect(round!.outer.filter(v => v.mate)).toEqual([{ x: 0, y: -2, bulge: 0, mate: 'seam' }]);
    const [mitred] = offset(sides(0), 2, { join: 'mitre' });
    expect(mitred!.outer).toHaveLength(4);
    expect(mitred!.outer[0]).toEqual({ x: -2, y: -2, bulge: 0, mate: 'seam' });
    expect(mitred!.outer.filter(v => v.mate)).toHaveLength(1);
  });

  test('out and back, in and back: the tags of a felloe are where they were', () => {
    const felloe = withMates(annularSector(200, 300, 1.2, 0.6), 'seam', [1, 3]);
    for (const d of [5, -5]) {
      const [back] = offset(offset(solid(felloe), d), -d);
      const tagged = segments(back!.outer).filter((_, i) => back!.outer[i]!.mate === 'seam');
      expect(tagged.map(s => s.kind)).toEqual(['line', 'line']);
      for (const s of tagged)
        expect(Math.abs(Math.hypot(s.from.x, s.from.y) - Math.hypot(s.to.x, s.to.y))).toBeGreaterThan(80);
    }
  });

  test('edges on one line become one only if their tags are equal', () => {
    const next = (o: Outline): Outline => moveOutline(o, { turn: 0, x: 10, y: 0 });
    const bottoms = (a: readonly number[], b: readonly number[]): (string | undefined)[] => {
      const [both] = union([sides(...a), solid(next(sides(...b).outer))]);
      return mates(both!.outer);
    };
    expect(bottoms([], [])).toEqual([undefined, undefined, undefined, undefined]);
    expect(bottoms([0], [0])).toEqual(['seam', undefined, undefined, undefined]);
    expect(bottoms([0], [])).toEqual(['seam', undefined, undefined, undefined, undefined]);
    const named = withMates(square, 'lap', [0]);
    expect(mates(union([sides(0), solid(next(named))])[0]!.outer).slice(0, 2)).toEqual(['seam', 'lap']);
  });

  test('of equal edges the one that is tagged counts, of two tags the first', () => {
    const lap = solid(withMates(square, 'lap', [0, 1]));
    expect(mates(union([solid(square), lap])[0]!.outer)).toEqual(['lap', 'lap', undefined, undefined]);
    expect(mates(union([sides(1, 2), lap])[0]!.outer)).toEqual(['lap', 'seam', 'seam', undefined]);
    expect(mates(intersection([lap], [sides(1, 2)])[0]!.outer)).toEqual(['lap', 'lap', 'seam', undefined]);
  });

  test('what a tagged tool cuts is tagged, run the other way', () => {
    const notch = solid(withMates(rectangle(4, 5, 6, 12), 'lap', [0, 1, 3]));
    const [cut] = difference([solid(square)], [notch]);
    expect(mates(cut!.outer)).toEqual([undefined, undefined, undefined, 'lap', 'lap', 'lap', undefined, undefined]);
    expect(cut!.outer[3]).toMatchObject({ x: 6, y: 10 });
  });

  test('a whole circle keeps its tag, of any size; a half tagged one is still round', () => {
    const hole = { outer: square, openings: [reverse(withMates(circle(2, { x: 5, y: 5 }), 'wedge', [0, 1]))] };
    for (const d of [-1, 0, 1]) expect(mates(offset(hole, d)[0]!.openings[0]!)).toEqual(['wedge', 'wedge']);
    const half = union([solid(withMates(circle(3), 'lap', [0]))])[0]!.outer;
    expect(half).toEqual([
      { x: -3, y: 0, bulge: 1 },
      { x: 3, y: 0, bulge: 1, mate: 'lap' },
    ]);
  });

  test('corners cut or rounded have no tag, what is left of their edges has', () => {
    const rounded = fillet(sides(0, 1).outer, 1, 2);
    expect(rounded.map(v => [v.mate, v.bulge > 0])).toEqual([
      ['seam', false],
      [undefined, true],
      ['seam', false],
      [undefined, false],
      [undefined, false],
    ]);
    expect(mates(chamferAll(sides(2).outer, 1)).filter(m => m === 'seam')).toHaveLength(1);
  });

  test('repair: an edge typed twice keeps its tag, an arc of more than a half turn gives it to both its parts', () => {
    const twice = [
      vertex({ x: 0, y: 0 }),
      vertex({ x: 10, y: 0 }, 0, 'lost'),
      vertex({ x: 10, y: 0 }, 0, 'seam'),
      vertex({ x: 0, y: 9 }),
    ];
    expect(mates(repair(solid(twice)).outer)).toEqual([undefined, 'seam', undefined]);
    const long = repair(solid([vertex({ x: -1, y: 0 }, 2, 'lap'), vertex({ x: 1, y: 0 })]));
    expect(mates(long.outer)).toEqual(['lap', 'lap', undefined]);
    const clockwise = repair(solid(reverse(sides(1).outer)));
    expect(clockwise.outer.filter(v => v.mate)).toEqual([{ x: 10, y: 0, bulge: 0, mate: 'seam' }]);
  });

  test('flattened, an outline has points and nothing else', () => {
    for (const p of flatten(withMates(circle(5), 'lap', [0, 1]), 0.1)) expect(Object.keys(p)).toEqual(['x', 'y']);
  });

  test('withMates names the edge an outline has not', () => {
    expect(() => withMates(square, 'seam', [4])).toThrow(/edge is 4; allowed: 0 to 3/);
  });
});

describe('run the other way and moved', () => {
  test('twice the other way is the same; once, every edge has its own tag', () => {
    fc.assert(
      fc.property(offsetCase, ({ region }) => {
        expect(reverse(reverse(region.outer))).toEqual(region.outer);
        expect(strays([reverse(region.outer)], carriersOf(solid(region.outer)))).toEqual([]);
        const open = [...region.outer.slice(0, -1), vertex(region.outer.at(-1)!)];
        expect(reversePolyline(reversePolyline(open))).toEqual(open);
        expect(mates(reversePolyline(open))).toEqual([...mates(open).slice(0, -1).reverse(), undefined]);
      }),
      RUNS,
    );
  });

  test('a moved or mirrored outline has its tags on the moved edges', () => {
    fc.assert(
      fc.property(offsetCase, motion, ({ region }, m) => {
        const carriers = outlines([region]).flatMap(o =>
          o.map((v, i): Carrier => {
            const edge = movePolyline([v, o[(i + 1) % o.length]!], m);
            return { segment: polylineSegments(edge)[0]!, mate: v.mate };
          }),
        );
        expect(strays(outlines([moveRegion(region, m)]), carriers)).toEqual([]);
        const back = moveRegion(moveRegion(region, MIRROR), MIRROR);
        expect(outlines([back]).map(mates)).toEqual(outlines([region]).map(mates));
      }),
      RUNS,
    );
  });

  test('mirrored, the left side is the right one', () => {
    const there = moveOutline(withMates(withMates(square, 'seam', [3]), 'lap', [0]), MIRROR);
    const edges = segments(there).map((s, i) => [s.from.x + s.to.x + 0, s.from.y + s.to.y + 0, there[i]!.mate]);
    expect(edges).toContainEqual([0, 10, 'seam']);
    expect(edges).toContainEqual([-10, 0, 'lap']);
    expect(edges).toContainEqual([-20, 10, undefined]);
    expect(edges).toContainEqual([-10, 20, undefined]);
  });
});
