import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  area,
  bounds,
  difference,
  intersection,
  type Motion,
  moveRegion,
  type Outline,
  offset,
  perimeter,
  polar,
  type Region,
  repair,
  reverse,
  segments,
  signedArea,
  solid,
  union,
  vertex,
} from '../../lib/geometry/index.js';
import { isPlain, type Judge } from '../soak/fine-polygons.js';
import { randomDistance, randomPair, randomRegion, seeded } from '../soak/random-regions.js';
import { entities } from './shapes.js';

const JUDGE: Judge = { chordError: 0.001, units: 1e5 };
const RUNS = { numRuns: 60, seed: 1 };

const seed = fc.integer({ min: 1, max: 1e6 });
/** A plain random region and a distance; regions that cross themselves are drawn again. */
const offsetCase = seed
  .map(s => {
    const random = seeded(s);
    return { region: randomRegion(random), by: randomDistance(random) };
  })
  .filter(({ region }) => isPlain(region, JUDGE) && accepted(region));
const pair = seed.map(s => randomPair(seeded(s))).filter(p => p.every(r => isPlain(r, JUDGE) && accepted(r)));
const motion: fc.Arbitrary<Motion> = fc.record({
  mirrored: fc.boolean(),
  turn: fc.double({ min: -4, max: 4, noNaN: true }),
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
});

function accepted(region: Region): boolean {
  try {
    return Boolean(repair(region));
  } catch {
    return false;
  }
}

const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);
const edge = (regions: readonly Region[]): number => regions.reduce((t, r) => t + perimeter(r), 0);
const close = (a: number, b: number, allowed: number): void => expect(Math.abs(a - b)).toBeLessThanOrEqual(allowed);

describe('offset', () => {
  // A + P d + pi d² for convex outlines (Steiner 1840): Santaló, "Integral Geometry and Geometric Probability", ch. 1
  test('Steiner’s formula', () => {
    const convex = fc.record({
      n: fc.integer({ min: 3, max: 30 }),
      a: fc.double({ min: 1, max: 100, noNaN: true }),
      b: fc.double({ min: 1, max: 100, noNaN: true }),
      shift: fc.double({ min: 0, max: 6, noNaN: true }),
      d: fc.double({ min: 0.01, max: 50, noNaN: true }),
    });
    fc.assert(
      fc.property(convex, ({ n, a, b, shift, d }) => {
        const outline = Array.from({ length: n }, (_, i) => {
          const p = polar(1, shift + (2 * Math.PI * i) / n);
          return vertex({ x: a * p.x, y: b * p.y });
        });
        const region = solid(outline);
        const want = area(region) + perimeter(region) * d + Math.PI * d * d;
        close(total(offset(region, d)), want, 1e-9 * want);
      }),
      RUNS,
    );
  });

  // a corner that turns by t gains d² tan(t / 2): two right-angled triangles with legs d and d tan(t / 2)
  test('mitres of a convex polygon', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 20 }), fc.double({ min: 0.1, max: 9, noNaN: true }), (n, d) => {
        const region = solid(Array.from({ length: n }, (_, i) => vertex(polar(30, (2 * Math.PI * i) / n))));
        const want = area(region) + perimeter(region) * d + n * d * d * Math.tan(Math.PI / n);
        close(total(offset(region, d, { join: 'mitre', limit: 3 })), want, 1e-9 * want);
      }),
      RUNS,
    );
  });

  test('out and back holds the region, in and back lies within it', () => {
    fc.assert(
      fc.property(offsetCase, ({ region, by }) => {
        const there = offset(region, by);
        const back = there.flatMap(r => offset(r, -by));
        const missing = by > 0 ? difference([region], back) : difference(back, [region]);
        expect(total(missing)).toBeLessThan(1e-6 * perimeter(region));
      }),
      RUNS,
    );
  });

  test('direction, start, place, mirror and turn do not matter', () => {
    fc.assert(
      fc.property(offsetCase, motion, fc.nat(), ({ region, by }, moved, start) => {
        const want = offset(region, by);
        const turned: Outline = region.outer.map((_, i) => region.outer[(i + start) % region.outer.length]!);
        for (const other of [
          { outer: reverse(region.outer), openings: region.openings.map(reverse) },
          { outer: turned, openings: [...region.openings].reverse() },
          moveRegion(region, moved),
        ]) {
          const got = offset(other, by);
          close(total(got), total(want), 1e-8 * (1 + edge(want)));
          expect(got).toHaveLength(want.length);
        }
      }),
      RUNS,
    );
  });

  test('scale', () => {
    fc.assert(
      fc.property(offsetCase, fc.constantFrom(0.01, 100), ({ region, by }, k) => {
        const larger = (o: Outline): Outline => o.map(v => ({ x: v.x * k, y: v.y * k, bulge: v.bulge }));
        const scaled = { outer: larger(region.outer), openings: region.openings.map(larger) };
        fc.pre(accepted(scaled)); // how thin an overlap passes for a rounding is a length
        const want = offset(region, by);
        close(total(offset(scaled, by * k)) / k / k, total(want), 1e-6 * (1 + edge(want)));
      }),
      RUNS,
    );
  });

  test('an arc keeps its centre: every radius is R + d, R - d or d', () => {
    fc.assert(
      fc.property(offsetCase, ({ region, by }) => {
        const radii = (r: Region): number[] =>
          [r.outer, ...r.openings].flatMap(segments).flatMap(s => (s.kind === 'arc' ? [s.radius] : []));
        const from = radii(region).flatMap(r => [r + by, r - by, Math.abs(by)]);
        for (const s of offset(region, by)
          .flatMap(r => [r.outer, ...r.openings])
          .flatMap(segments)) {
          if (s.kind !== 'arc' || Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) < 1e-2 * s.radius) continue;
          expect(Math.min(...[...from, Math.abs(by)].map(r => Math.abs(r - s.radius)))).toBeLessThan(1e-5 * s.radius);
        }
      }),
      RUNS,
    );
  });
});

describe('booleans', () => {
  test('areas add up', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const both = total(intersection([a], [b]));
        const sum = area(a) + area(b);
        close(total(union([a, b])) + both, sum, 1e-9 * sum);
        close(total(difference([a], [b])) + both, area(a), 1e-9 * sum);
      }),
      RUNS,
    );
  });

  test('union does not mind the order', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const [one, two] = [union([a, b]), union([b, a])];
        close(total(one), total(two), 1e-9 * total(one));
        expect(entities(one)).toBe(entities(two));
      }),
      RUNS,
    );
  });

  test('the parts of a cut fit together again', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const whole = union([...difference([a], [b]), ...intersection([a], [b])]);
        close(total(whole), area(a), 1e-8 * (1 + area(a)));
        expect(total(difference(whole, [a]))).toBeLessThan(1e-7 * perimeter(a));
      }),
      RUNS,
    );
  });
});

describe('every result', () => {
  test('is plain, turns the right way, and comes out the same again', () => {
    fc.assert(
      fc.property(pair, offsetCase, ([a, b], { region, by }) => {
        for (const result of [union([a, b]), difference([a], [b]), intersection([a], [b]), offset(region, by)]) {
          for (const r of result) {
            expect(repair(r)).toEqual(r);
            expect(signedArea(r.outer)).toBeGreaterThan(0);
            for (const o of r.openings) expect(signedArea(o)).toBeLessThan(0);
          }
          const again = union(result);
          close(total(again), total(result), 1e-9 * (1 + total(result)));
          expect(again.length).toBe(result.length);
        }
        expect(offset(region, by)).toEqual(offset(region, by));
      }),
      RUNS,
    );
  });

  test('a grown region reaches exactly as far out as it grew', () => {
    fc.assert(
      fc.property(offsetCase, ({ region, by }) => {
        const reach = Math.abs(by);
        const [grown] = offset(region, reach);
        const [from, to] = [bounds(region.outer), bounds(grown!.outer)];
        close(to.maxX, from.maxX + reach, 1e-9);
        close(to.minY, from.minY - reach, 1e-9);
      }),
      RUNS,
    );
  });
});
