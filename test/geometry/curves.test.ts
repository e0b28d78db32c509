import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endDirection, startDirection } from '../../lib/geometry/along.js';
import type { ArcFit } from '../../lib/geometry/arc-spline.js';
import { arcsFromBezier, arcsFromCubic, arcsFromPoints, arcsFromQuadratic } from '../../lib/geometry/curves.js';
import { arcsFromEllipse } from '../../lib/geometry/ellipse.js';
import { area, signedArea } from '../../lib/geometry/measure.js';
import { cross, dot, type Point } from '../../lib/geometry/point.js';
import { polylineSegments, type Segment } from '../../lib/geometry/segment.js';

const p = (x: number, y: number): Point => ({ x, y });

/** Bernstein form, not the code under test's de Casteljau. */
const cubicAt = (c: readonly Point[], t: number): Point => {
  const s = 1 - t;
  const w = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return p(
    w.reduce((sum, k, i) => sum + k * c[i]!.x, 0),
    w.reduce((sum, k, i) => sum + k * c[i]!.y, 0),
  );
};

/** Distance to an edge by the angle about its centre. */
const away = (s: Segment, q: Point): number => {
  const ends = Math.min(Math.hypot(q.x - s.from.x, q.y - s.from.y), Math.hypot(q.x - s.to.x, q.y - s.to.y));
  if (s.kind === 'line') {
    const [vx, vy] = [s.to.x - s.from.x, s.to.y - s.from.y];
    const t = ((q.x - s.from.x) * vx + (q.y - s.from.y) * vy) / (vx * vx + vy * vy);
    return t > 0 && t < 1 ? Math.abs(vx * (q.y - s.from.y) - vy * (q.x - s.from.x)) / Math.hypot(vx, vy) : ends;
  }
  const turn = (Math.atan2(q.y - s.center.y, q.x - s.center.x) - s.start) * Math.sign(s.sweep);
  const on = ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI) <= Math.abs(s.sweep);
  return on ? Math.abs(Math.hypot(q.x - s.center.x, q.y - s.center.y) - s.radius) : ends;
};
const strays = (fit: ArcFit, at: (t: number) => Point, samples = 4001): number => {
  const edges = polylineSegments(fit.line);
  let most = 0;
  for (let k = 0; k < samples; k++) most = Math.max(most, Math.min(...edges.map(s => away(s, at(k / (samples - 1))))));
  return most;
};
const kinks = (fit: ArcFit): number[] => {
  const s = polylineSegments(fit.line);
  return s.slice(1).map((e, i) => {
    const [u, v] = [endDirection(s[i]!), startDirection(e)];
    return Math.abs(Math.atan2(cross(u, v), dot(u, v)));
  });
};
const arcs = (fit: ArcFit): number => fit.line.length - 1;

/** The asymptotic least number of arcs of any tangent-continuous spline: see fitArcs. */
const least = (at: (t: number) => Point, tolerance: number): number => {
  const n = 20000;
  const pts = Array.from({ length: n + 1 }, (_, k) => at(k / n));
  let sum = 0;
  let last: { k: number; s: number } | undefined;
  for (let i = 1; i < n; i++) {
    const [a, b, c] = [pts[i - 1]!, pts[i]!, pts[i + 1]!];
    const [u, v] = [p(b.x - a.x, b.y - a.y), p(c.x - b.x, c.y - b.y)];
    const s = (Math.hypot(u.x, u.y) + Math.hypot(v.x, v.y)) / 2;
    const k = Math.atan2(cross(u, v), dot(u, v)) / s;
    if (last) sum += Math.cbrt(Math.abs((k - last.k) / s)) * s;
    last = { k, s };
  }
  return sum * Math.cbrt(Math.sqrt(3) / 216 / tolerance);
};

const coordinate = fc.integer({ min: 0, max: 100 });
const fourPoints = fc.uniqueArray(fc.record({ x: coordinate, y: coordinate }), {
  minLength: 4,
  maxLength: 4,
  selector: q => `${q.x} ${q.y}`,
});

describe('Béziers', () => {
  test('the usual cubic of a quarter circle strays 0.0273 % from it (Riškus 2006): one arc of radius 100 within 0.03', () => {
    const k = 55.228475; // 4/3 (sqrt(2) - 1), Riškus, "Approximation of a cubic Bezier curve by circular arcs and vice versa", 2006
    const fit = arcsFromCubic(p(100, 0), p(100, k), p(k, 100), p(0, 100), 0.03);
    expect(arcs(fit)).toBe(1);
    expect(fit.line[0]!.bulge).toBeCloseTo(Math.SQRT2 - 1, 9);
    expect(fit.deviation).toBeCloseTo(0.0273, 4);
  });

  test('a parabola’s area: a quadratic over a chord of 100 with its control 100 high encloses 2/3 of 100 x 50', () => {
    // Archimedes, Quadrature of the Parabola
    const fit = arcsFromQuadratic(p(100, 0), p(50, 100), p(0, 0), 1e-5);
    expect(signedArea(fit.line)).toBeCloseTo((2 / 3) * 100 * 50, 2);
  });

  test('a straight one is one line, a doubled end control keeps its direction', () => {
    const line = arcsFromCubic(p(0, 0), p(10, 10), p(20, 20), p(100, 100), 0.01);
    expect(line.line).toEqual([
      { x: 0, y: 0, bulge: 0 },
      { x: 100, y: 100, bulge: 0 },
    ]);
    const fit = arcsFromCubic(p(0, 0), p(0, 0), p(40, 60), p(100, 0), 0.01);
    const u = startDirection(polylineSegments(fit.line)[0]!);
    expect(Math.atan2(u.y, u.x)).toBeCloseTo(Math.atan2(60, 40), 9);
  });

  test('a cusp becomes a corner there and nowhere else', () => {
    const fit = arcsFromCubic(p(0, 0), p(100, 100), p(0, 100), p(100, 0), 0.01);
    expect(kinks(fit).filter(k => k > 1e-9)).toHaveLength(1);
    expect(strays(fit, t => cubicAt([p(0, 0), p(100, 100), p(0, 100), p(100, 0)], t))).toBeLessThanOrEqual(0.01);
  });

  test('the tolerance holds, measured here; no kink; ends and end directions kept; the deviation told is the one found', () => {
    fc.assert(
      fc.property(fourPoints, fc.constantFrom(1, 0.1, 0.01, 0.001), (controls, tolerance) => {
        const fit = arcsFromBezier(controls, tolerance);
        const found = strays(fit, t => cubicAt(controls, t), 1001);
        expect(found).toBeLessThanOrEqual(tolerance * 1.0001);
        expect(fit.deviation).toBeLessThanOrEqual(tolerance);
        expect(found).toBeLessThanOrEqual(fit.deviation * 1.02 + 1e-9);
        const s = polylineSegments(fit.line);
        const [u, v] = [startDirection(s[0]!), p(controls[1]!.x - controls[0]!.x, controls[1]!.y - controls[0]!.y)];
        // a hairpin at the end, smaller than the tolerance, is left out
        const off = Math.abs(Math.atan2(cross(u, v), dot(u, v)));
        expect(off < 1e-8 || off > 1).toBe(true);
        expect(fit.line[0]).toMatchObject(controls[0]!);
        expect(fit.line.at(-1)).toMatchObject(controls[3]!);
        for (const q of fit.line) expect(Math.abs(q.bulge)).toBeLessThanOrEqual(1);
        // a corner only where the curve turns a radian or more within a fiftieth of the tolerance
        expect(kinks(fit).filter(k => k > 1e-8 && k < 1)).toEqual([]);
      }),
      {
        numRuns: 300,
        examples: [
          [[p(10, 92), p(6, 91), p(7, 99), p(94, 44)], 0.01],
          [[p(3, 93), p(3, 94), p(0, 0), p(0, 1)], 1],
        ],
      },
    );
  });

  test('hairpins and curls smaller than the tolerance are laid as well', () => {
    // each of these once found no way on
    const found = [
      [p(43, 0.002), p(78, 0), p(49, 0)],
      [p(99, 0.002), p(99, 0.001), p(14, 0.001)],
      [p(95, 0), p(14, 0), p(56, 0), p(55, 0)],
      [p(0.518, 0.523), p(0.822, 0.926), p(0.319, 0.093), p(0.154, 0.681)],
      [p(94, 0.002), p(71, 0.001), p(4, 0), p(5, 0.002)],
    ];
    for (const controls of found)
      for (const tolerance of [1, 0.1, 0.01]) {
        const fit = arcsFromBezier(controls, tolerance);
        expect(fit.deviation).toBeLessThanOrEqual(tolerance);
        expect(arcs(fit)).toBeLessThan(40);
      }
  });

  test('few: within 1.5 times the asymptotic least, and two for the ends', () => {
    const shapes = [
      [p(0, 0), p(100, 0), p(0, 60), p(100, 60)],
      [p(0, 0), p(20, 80), p(90, 80), p(100, 0)],
      [p(0, 0), p(150, 100), p(-50, 100), p(100, 0)],
    ];
    for (const shape of shapes)
      for (const tolerance of [0.1, 0.01, 0.001, 0.0001]) {
        const bound = least(t => cubicAt(shape, t), tolerance);
        expect(arcs(arcsFromBezier(shape, tolerance))).toBeLessThanOrEqual(1.5 * bound + 2);
        if (tolerance === 0.0001) expect(arcs(arcsFromBezier(shape, tolerance))).toBeLessThanOrEqual(1.3 * bound);
      }
  });

  test('refuses by name', () => {
    expect(() => arcsFromCubic(p(0, 0), p(0, 0), p(0, 0), p(0, 0), 0.1)).toThrow(/controls/);
    expect(() => arcsFromQuadratic(p(0, 0), p(Number.NaN, 0), p(1, 1), 0.1)).toThrow(/controls\[1\]/);
    expect(() => arcsFromQuadratic(p(0, 0), p(3, 0), p(1, 1), 0)).toThrow(/tolerance/);
  });
});

describe('ellipses', () => {
  const whole = { center: p(10, -20), axis: p(80, 60), ratio: 0.4, start: 0, sweep: 2 * Math.PI };
  const ellipseAt = (t: number): Point => {
    const [c, s] = [Math.cos(2 * Math.PI * t), Math.sin(2 * Math.PI * t)];
    return p(10 + 80 * c - 24 * s, -20 + 60 * c + 32 * s);
  };

  test('area pi a b (Machinery’s Handbook), tangent-continuous all round, symmetric', () => {
    for (const tolerance of [1, 0.1, 0.01, 0.0001]) {
      const fit = arcsFromEllipse(whole, tolerance);
      const outline = fit.line.slice(0, -1);
      expect(Math.abs(area({ outer: outline, openings: [] }) - Math.PI * 100 * 40)).toBeLessThan(tolerance * 480);
      expect(strays(fit, ellipseAt)).toBeLessThanOrEqual(tolerance);
      expect(Math.max(...kinks({ ...fit, line: [...outline, outline[0]!, outline[1]!] }))).toBeLessThan(1e-9);
      expect(arcs(fit) % 4).toBe(0);
    }
    expect(arcs(arcsFromEllipse(whole, 1))).toBe(8);
  });

  test('a circle exactly, either way round, in part', () => {
    const fit = arcsFromEllipse({ center: p(1, 2), axis: p(0, 5), ratio: 1, start: 0, sweep: Math.PI / 2 }, 0.1);
    expect(fit.line).toHaveLength(2);
    expect(fit.line[0]!.bulge).toBeCloseTo(Math.SQRT2 - 1, 15);
    expect(fit.line[1]!.x).toBeCloseTo(-4, 12);
    const back = arcsFromEllipse({ center: p(1, 2), axis: p(0, 5), ratio: -1, start: 0, sweep: Math.PI / 2 }, 0.1);
    expect(back.line[1]!.x).toBeCloseTo(6, 12);
    expect(signedArea(arcsFromEllipse({ ...whole, ratio: 1, sweep: -2 * Math.PI }, 1).line.slice(0, -1))).toBeCloseTo(
      -Math.PI * 1e4,
      6,
    );
  });

  test('clockwise by a negative sweep or ratio', () => {
    for (const e of [
      { ...whole, sweep: -2 * Math.PI },
      { ...whole, ratio: -0.4 },
    ]) {
      const fit = arcsFromEllipse(e, 0.01);
      expect(signedArea(fit.line.slice(0, -1))).toBeCloseTo(-Math.PI * 4000, -1);
    }
  });

  test('a part from 20° to 200°', () => {
    const e = { ...whole, start: Math.PI / 9, sweep: Math.PI };
    const fit = arcsFromEllipse(e, 0.01);
    expect(strays(fit, t => ellipseAt((Math.PI / 9 + Math.PI * t) / (2 * Math.PI)))).toBeLessThanOrEqual(0.01);
    expect(Math.max(...kinks(fit))).toBeLessThan(1e-9);
  });
});

describe('points', () => {
  test('24 points of a circle give two or three arcs of its radius', () => {
    const ring = Array.from({ length: 24 }, (_, i) =>
      p(50 * Math.cos((i * Math.PI) / 12), 50 * Math.sin((i * Math.PI) / 12)),
    );
    const fit = arcsFromPoints(ring, 0.001, { closed: true });
    expect(arcs(fit)).toBeLessThanOrEqual(3);
    for (const s of polylineSegments(fit.line)) expect(s.kind === 'arc' && s.radius).toBeCloseTo(50, 3);
    expect(fit.line.at(-1)).toMatchObject({ x: ring[0]!.x, y: ring[0]!.y });
  });

  test('a traced wave: every point within the tolerance, far fewer arcs than points', () => {
    const wave = Array.from({ length: 200 }, (_, i) => p(i, 12 * Math.sin(i / 15)));
    const fit = arcsFromPoints(wave, 0.1, { startTangent: Math.atan(12 / 15) });
    const edges = polylineSegments(fit.line);
    for (const q of wave) expect(Math.min(...edges.map(s => away(s, q)))).toBeLessThanOrEqual(0.1);
    expect(arcs(fit)).toBeLessThan(30);
    expect(Math.max(...kinks(fit))).toBeLessThan(1e-9);
  });

  test('two points: a line; doubled points are refused by place', () => {
    expect(arcsFromPoints([p(0, 0), p(3, 4)], 0.1).line).toHaveLength(2);
    expect(() => arcsFromPoints([p(0, 0), p(1, 1), p(1, 1)], 0.1)).toThrow(/points\[1\]/);
  });
});
