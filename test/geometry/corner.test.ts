import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { endDirection, startDirection } from '../../lib/geometry/along.js';
import { chamfer, chamferAll, fillet, filletAll } from '../../lib/geometry/corner.js';
import { signedArea } from '../../lib/geometry/measure.js';
import { circle, type Outline, polygon, rectangle, reverse, vertex } from '../../lib/geometry/outline.js';
import { cross, distance, dot, polar } from '../../lib/geometry/point.js';
import { segments } from '../../lib/geometry/segment.js';

/** Half a disc of radius 10, flat side down. */
const half: Outline = [vertex({ x: -10, y: 0 }), vertex({ x: 10, y: 0 }, 1)];
/** A lens: two arcs of radius 10 whose centres stand 12 apart; corners at (0, 8) and (0, -8). */
const lens: Outline = [vertex({ x: 0, y: -8 }, 0.5), vertex({ x: 0, y: 8 }, 0.5)];

const joints = (outline: Outline): number[] => {
  const s = segments(outline);
  return s.map((e, i) => {
    const u = endDirection(s[(i + s.length - 1) % s.length]!);
    const v = startDirection(e);
    return Math.atan2(cross(u, v), dot(u, v));
  });
};
const sharp = (outline: Outline): number => joints(outline).filter(a => Math.abs(a) > 1e-7).length;

describe('fillet', () => {
  test('a square corner loses 0.2146 r² (Machinery’s Handbook, "spandrel or fillet"), its arc has bulge tan(22.5°)', () => {
    const done = fillet(rectangle(0, 0, 40, 30), 2, 8);
    expect(1200 - signedArea(done)).toBeCloseTo(64 * (1 - Math.PI / 4), 10);
    expect(done.map(v => v.bulge).filter(b => b !== 0)).toEqual([expect.closeTo(Math.SQRT2 - 1, 15)]);
  });

  test('line to arc: in a half disc of radius R the circle r touches the flat at sqrt(R² - 2 R r)', () => {
    // Pythagoras: the fillet's centre is r above the flat and R - r from the disc's centre
    const done = fillet(half, 1, 2);
    expect(done).toHaveLength(3);
    expect(done[1]!.x).toBeCloseTo(Math.sqrt(100 - 40), 12);
    const arc = segments(done)[1]!;
    expect(arc.kind === 'arc' && arc.radius).toBeCloseTo(2, 12);
    const big = segments(done)[2]!;
    expect(big.kind === 'arc' && distance(big.center, { x: 0, y: 0 })).toBeCloseTo(0, 12);
    expect(sharp(done)).toBe(1);
  });

  test('arc to arc: a lens of R = 10, centres 12 apart, rounded by r: centre at height sqrt((R - r)² - 36)', () => {
    const done = fillet(lens, 1, 1);
    const arc = segments(done).find(s => s.kind === 'arc' && Math.abs(s.radius - 1) < 1e-9);
    expect(arc?.kind === 'arc' && arc.center.y).toBeCloseTo(Math.sqrt(81 - 36), 12);
    expect(arc?.kind === 'arc' && arc.center.x).toBeCloseTo(0, 12);
    expect(sharp(filletAll(lens, 1))).toBe(0);
  });

  test('inside corner of an arc bite: outside the bite’s circle', () => {
    // a plate with a half round bite of radius 5 in its top: both its corners stand out, the bite turns right
    const plate: Outline = [
      ...polygon([
        { x: -20, y: -10 },
        { x: 20, y: -10 },
        { x: 20, y: 0 },
      ]),
      vertex({ x: 5, y: 0 }, -1),
      vertex({ x: -5, y: 0 }),
      vertex({ x: -20, y: 0 }),
    ];
    const done = fillet(plate, 3, 2);
    const arc = segments(done)[3]!;
    expect(arc.kind === 'arc' && arc.sweep).toBeGreaterThan(0);
    expect(arc.kind === 'arc' && arc.center.x).toBeCloseTo(Math.sqrt(49 - 4), 12);
    expect(arc.kind === 'arc' && arc.center.y).toBeCloseTo(-2, 12);
  });

  test('a cusp: the horn between two circles touching inside each other', () => {
    // radius 10 at the origin less radius 6 touching it at (10, 0): the horn's fillet is tangent to both
    const upper: Outline = [vertex({ x: 10, y: 0 }, 1), vertex({ x: -10, y: 0 }), vertex({ x: -2, y: 0 }, -1)];
    const done = fillet(upper, 0, 0.5);
    const arc = segments(done).find(s => s.kind === 'arc' && Math.abs(s.radius - 0.5) < 1e-9);
    if (arc?.kind !== 'arc') throw new Error('no fillet');
    expect(distance(arc.center, { x: 0, y: 0 })).toBeCloseTo(9.5, 10);
    expect(distance(arc.center, { x: 4, y: 0 })).toBeCloseTo(6.5, 10);
    expect(sharp(done)).toBe(2);
  });

  test('the largest that fits: a strip of width 10 takes 5 at two corners, 10 at one', () => {
    const strip = rectangle(0, 0, 40, 10);
    expect(() => filletAll(strip, 5.1)).toThrow(/radius is 5.1 mm on 4 corners; allowed: up to 5 mm/);
    expect(filletAll(strip, 5)).toHaveLength(6);
    expect(() => fillet(strip, 0, 11)).toThrow(/corner 0 at \(0, 0\); allowed: up to 10 mm/);
    expect(fillet(strip, 0, 10)).toHaveLength(4);
  });

  test('an arc that would run into another edge is refused', () => {
    // a big corner with a spike reaching into where the arc would pass
    const spiked = polygon([
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 100 },
      { x: 12, y: 100 },
      { x: 8, y: 8 },
      { x: 4, y: 100 },
      { x: 0, y: 100 },
    ]);
    expect(() => fillet(spiked, 0, 60)).toThrow(/radius is 60 mm on corner 0 at \(0, 0\); allowed: up to \d/);
    expect(fillet(spiked, 0, 5)).toHaveLength(8);
  });

  test('smooth joins are no corners', () => {
    expect(() => fillet(circle(5), 0, 1)).toThrow(/index is 0, where the edges run on smoothly/);
    expect(filletAll(circle(5), 1)).toEqual(circle(5));
    expect(() => fillet(half, 7, 1)).toThrow(/index is 7; allowed: 0 to 1/);
    expect(() => fillet(half, 0, Number.NaN)).toThrow(/radius is NaN/);
  });

  test('outside and inside corners, in an opening too', () => {
    const ell = polygon([
      { x: 0, y: 0 },
      { x: 30, y: 0 },
      { x: 30, y: 10 },
      { x: 10, y: 10 },
      { x: 10, y: 30 },
      { x: 0, y: 30 },
    ]);
    expect(filletAll(ell, 2, 'inside')).toHaveLength(7);
    expect(filletAll(ell, 2, 'outside')).toHaveLength(11);
    const window = reverse(rectangle(0, 0, 10, 10));
    expect(filletAll(window, 2, 'outside')).toEqual(window);
    expect(signedArea(filletAll(window, 2, 'inside'))).toBeCloseTo(-100 + 4 * (4 - Math.PI), 10);
  });
});

describe('chamfer', () => {
  test('a square corner loses half the setback squared', () => {
    expect(1200 - signedArea(chamfer(rectangle(0, 0, 40, 30), 1, 6))).toBeCloseTo(18, 12);
    expect(1200 - signedArea(chamferAll(rectangle(0, 0, 40, 30), 6))).toBeCloseTo(72, 12);
  });

  test('to an arc: both ends the setback from the corner, measured straight; the arc keeps its circle', () => {
    const done = chamfer(half, 1, 3);
    expect(distance(done[1]!, { x: 10, y: 0 })).toBeCloseTo(3, 12);
    expect(distance(done[2]!, { x: 10, y: 0 })).toBeCloseTo(3, 12);
    const arc = segments(done)[2]!;
    expect(arc.kind === 'arc' && [arc.radius, arc.center.x, arc.center.y]).toEqual([
      expect.closeTo(10, 12),
      expect.closeTo(0, 12),
      expect.closeTo(0, 12),
    ]);
  });

  test('says the largest that fits', () => {
    expect(() => chamfer(rectangle(0, 0, 40, 10), 0, 12)).toThrow(
      /setback is 12 mm on corner 0 at \(0, 0\); allowed: up to 10 mm/,
    );
  });
});

/** A star of straight and curved edges: radii 20 to 100, so that no two edges cross for the small bulges drawn. */
const star = fc
  .array(
    fc.record({
      radius: fc.double({ min: 40, max: 60, noNaN: true }),
      bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.12, max: 0.12, noNaN: true })),
    }),
    { minLength: 4, maxLength: 9 },
  )
  .map(list => list.map((p, i) => vertex(polar(p.radius, (2 * Math.PI * i) / list.length), p.bulge)));

describe('laws', () => {
  test('tangent at both feet, on the old carriers, of the radius asked; or the largest named does fit and 1 % more does not', () => {
    let done = 0;
    fc.assert(
      fc.property(star, fc.nat(8), fc.double({ min: 0.1, max: 80, noNaN: true }), (outline, pick, radius) => {
        const index = pick % outline.length;
        fc.pre(Math.abs(joints(outline)[index]!) > 0.01);
        const before = sharp(outline);
        const check = (r: number): Outline => {
          const result = fillet(outline, index, r);
          const turned = joints(outline)[index]! > 0;
          // an outside corner loses area, an inside one gains
          expect(turned ? signedArea(outline) > signedArea(result) : signedArea(outline) < signedArea(result)).toBe(
            true,
          );
          return result;
        };
        try {
          const result = check(radius);
          done++;
          expect(sharp(result)).toBeLessThanOrEqual(before - 1 + (result.length <= outline.length ? 2 : 0));
          const radii = segments(result).map(s => (s.kind === 'arc' ? Math.abs(s.radius - radius) : Infinity));
          expect(Math.min(...radii)).toBeLessThan(1e-7 * radius);
        } catch (e) {
          if (!(e instanceof Unusable)) throw e;
          const most = Number(/up to ([\d.]+) mm/.exec(e.message)?.[1]);
          expect(most).toBeLessThan(radius);
          expect(most).toBeGreaterThan(0);
          check(most);
          expect(() => fillet(outline, index, most * 1.01)).toThrow(Unusable);
        }
      }),
      { numRuns: 2000 },
    );
    expect(done).toBeGreaterThan(300);
  });

  test('mirrored direction: filleting the reversed outline gives the reversed result’s area', () => {
    fc.assert(
      fc.property(star, fc.double({ min: 0.1, max: 3, noNaN: true }), (outline, radius) => {
        let a: Outline;
        try {
          a = filletAll(outline, radius);
        } catch (e) {
          if (e instanceof Unusable) return;
          throw e;
        }
        expect(signedArea(filletAll(reverse(outline), radius))).toBeCloseTo(-signedArea(a), 6);
        expect(sharp(a)).toBe(0);
      }),
      { numRuns: 300 },
    );
  });
});
