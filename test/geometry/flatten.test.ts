import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { difference } from '../../lib/geometry/boolean.js';
import { GeometryFailure } from '../../lib/geometry/failure.js';
import { flatten, flattenPolyline, flattenRegion } from '../../lib/geometry/flatten.js';
import { area, perimeter } from '../../lib/geometry/measure.js';
import { circle, type Outline, polygon, type Region, rectangle, reverse, vertex } from '../../lib/geometry/outline.js';
import { cross, distance, type Point, polar, subtract } from '../../lib/geometry/point.js';
import { repair } from '../../lib/geometry/repair.js';
import { pointOn, segmentFrom, segments } from '../../lib/geometry/segment.js';

const sides = ['nearest', 'outward', 'inward'] as const;
const flatArea = (points: readonly Point[]): number => area({ outer: polygon(points), openings: [] });

/** Signed distance of a point to the left of the nearest edge line among a polygon's run, by brute force over edges. */
const distanceTo = (p: Point, ring: readonly Point[]): number =>
  Math.min(
    ...ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const v = subtract(b, a);
      const l2 = v.x * v.x + v.y * v.y;
      const t = l2 > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * v.x + (p.y - a.y) * v.y) / l2)) : 0;
      return distance(p, { x: a.x + t * v.x, y: a.y + t * v.y });
    }),
  );

/** One arc closed by its chord or, clockwise, by three sides of a box round it: the arc alone decides what is inside. */
const arc = fc.record({
  from: fc.record({
    x: fc.double({ min: -500, max: 500, noNaN: true }),
    y: fc.double({ min: -500, max: 500, noNaN: true }),
  }),
  length: fc.double({ min: 0.01, max: 1000, noNaN: true }),
  heading: fc.double({ min: -3.2, max: 3.2, noNaN: true }),
  bulge: fc.oneof(fc.double({ min: -1, max: 1, noNaN: true }), fc.constantFrom(1, -1, 1e-9, -1e-9, 1e-5)),
  tolerance: fc.constantFrom(1, 0.1, 0.01, 0.001, 0.00001),
});

describe('flatten', () => {
  test('a circle of diameter 10 at sagitta 0.01: 36 chords', () => {
    // Machinery's Handbook, circular segment: h = r (1 - cos(angle / 2)); 2 acos(1 - 0.01 / 5) = 7.248 degrees, so 25 to a half circle
    expect(flatten(circle(5), 0.01)).toHaveLength(50);
    expect(2 * Math.acos(1 - 0.01 / 5) * 25).toBeGreaterThan(Math.PI);
    expect(2 * Math.acos(1 - 0.01 / 5) * 24).toBeLessThan(Math.PI);
  });

  test('vertices on the curve and sagitta within the tolerance; outward to the right, inward to the left, no further than it', () => {
    fc.assert(
      fc.property(arc, fc.constantFrom(...sides), ({ from, length, heading, bulge, tolerance }, side) => {
        const start = vertex(from, bulge);
        const end = { x: from.x + length * Math.cos(heading), y: from.y + length * Math.sin(heading) };
        const s = segmentFrom(start, end);
        // the outline's own way back is a line, so every corner but those two belongs to the arc
        const ring = flatten([start, vertex(end)], tolerance, side).slice(0, -1);
        const run = [...ring, end];
        const rounding = 1e-9 + (s.kind === 'arc' ? s.radius * 1e-15 : 0); // the samples come from the far centre
        const samples = Array.from({ length: 200 }, (_, i) => pointOn(s, (i + 0.5) / 200));
        if (s.kind === 'line') return run.length === 2;
        for (const p of Math.abs(bulge) > 1e-6 ? samples : []) {
          const near = Math.min(...run.slice(1).map((b, i) => distanceTo(p, [run[i]!, b])));
          expect(near).toBeLessThanOrEqual(tolerance + rounding);
          if (side === 'nearest') continue;
          // the run's nearest piece has the arc's point on the promised hand
          const hand = side === 'outward' ? 1 : -1;
          run.slice(1).forEach((b, i) => {
            const a = run[i]!;
            const v = subtract(b, a);
            if (distanceTo(p, [a, b]) > near + 1e-12) return;
            expect((hand * cross(v, subtract(p, a))) / Math.hypot(v.x, v.y)).toBeGreaterThan(-rounding);
          });
        }
        return true;
      }),
      { numRuns: 300 },
    );
  });

  test('areas: inward <= exact <= outward for a plate with a bitten edge and a round opening', () => {
    const bitten: Outline = [
      vertex({ x: 0, y: 0 }),
      vertex({ x: 40, y: 0 }, -1),
      vertex({ x: 60, y: 0 }),
      vertex({ x: 100, y: 0 }, 0.6),
      vertex({ x: 100, y: 80 }),
      vertex({ x: 0, y: 80 }, -0.2),
    ];
    const region = { outer: bitten, openings: [reverse(circle(9, { x: 50, y: 50 }))] };
    for (const tolerance of [2, 0.1, 0.001]) {
      const total = (side: 'inward' | 'outward') => {
        const flat = flattenRegion(region, tolerance, side);
        return flatArea(flat.outer) + flat.openings.reduce((t, o) => t + flatArea(o), 0);
      };
      expect(total('inward')).toBeLessThan(area(region));
      expect(total('outward')).toBeGreaterThan(area(region));
      const far = tolerance * 700; // perimeter about 520
      expect(total('outward') - total('inward')).toBeLessThan(far);
    }
  });

  test('a hole far smaller than the tolerance still has an area, and stays a hole', () => {
    for (const side of sides) {
      const hole = flatten(reverse(circle(0.01)), 1, side);
      expect(hole.length).toBeGreaterThanOrEqual(4);
      expect(flatArea(hole)).toBeLessThan(-1e-4);
    }
  });

  test('lines stay; a run keeps its end', () => {
    expect(flatten(rectangle(0, 0, 4, 3), 0.1, 'outward')).toHaveLength(4);
    const run = [vertex({ x: 0, y: 0 }, 1), vertex({ x: 10, y: 0 }), vertex({ x: 20, y: 0 }, 9)];
    const flat = flattenPolyline(run, 0.1);
    expect(flat.at(-1)).toEqual({ x: 20, y: 0 });
    expect(flat[0]).toEqual({ x: 0, y: 0 });
    for (const p of flat.slice(0, -1)) expect(distance(p, { x: 5, y: 0 })).toBeCloseTo(5, 12);
  });

  test('a tolerance that is none is refused by name', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => flatten(circle(1), bad)).toThrow(/tolerance/);
  });

  test('segments of a flattened outline number as its corners', () => {
    const ring = flatten(circle(100), 0.5, 'outward');
    expect(segments(polygon(ring))).toHaveLength(ring.length);
  });
});

describe('flattened regions', () => {
  const at = fc.record({
    radius: fc.double({ min: 30, max: 60, noNaN: true }),
    bulge: fc.integer({ min: -250, max: 250 }).map(n => n / 1000),
  });
  const plate = fc.tuple(fc.array(at, { minLength: 4, maxLength: 10 }), fc.integer({ min: 0, max: 3 })).map(
    ([list, holes]): Region => ({
      outer: list.map((p, i) => vertex(polar(p.radius, (2 * Math.PI * i) / list.length), p.bulge)),
      openings: Array.from({ length: holes }, (_, i) => reverse(circle(3, polar(8, (2 * Math.PI * i) / 3)))),
    }),
  );

  test('outward holds the region whole, inward lies in it whole: nothing left over by the boolean', () => {
    let tried = 0;
    fc.assert(
      fc.property(plate, fc.constantFrom(0.3, 0.05, 0.002), (region, tolerance) => {
        const polygons = (side: 'outward' | 'inward'): Region => {
          const flat = flattenRegion(region, tolerance, side);
          return { outer: polygon(flat.outer), openings: flat.openings.map(polygon) };
        };
        let left: [Region[], Region[]];
        try {
          repair(region);
          left = [difference([region], [polygons('outward')]), difference([polygons('inward')], [region])];
        } catch (e) {
          // bulges of sharp corners may cross, and what is given must be plain
          if (e instanceof GeometryFailure && e.code === 'self-crossing') return;
          throw e;
        }
        tried++;
        for (const list of left) expect(list.reduce((t, r) => t + area(r), 0)).toBeLessThan(1e-6);
        expect(area(polygons('outward'))).toBeLessThanOrEqual(area(region) + tolerance * perimeter(region) * 1.1);
        expect(area(polygons('inward'))).toBeGreaterThanOrEqual(area(region) - tolerance * perimeter(region) * 1.1);
      }),
      { numRuns: 300 },
    );
    expect(tried).toBeGreaterThan(200);
  });
});
