import { describe, expect, test } from 'vitest';
import { endDirection, startDirection } from '../../lib/geometry/along.js';
import { signedArea } from '../../lib/geometry/measure.js';
import { cross, distance, dot, type Point } from '../../lib/geometry/point.js';
import { polylineSegments } from '../../lib/geometry/segment.js';
import { arcsFromSpline, type Spline } from '../../lib/geometry/spline.js';

const p = (x: number, y: number): Point => ({ x, y });
const h = Math.SQRT1_2;
/** The full circle of nine controls. Source: Piegl and Tiller, The NURBS Book, 2nd ed., section 7.5, figure 7.16. */
const circle: Spline = {
  degree: 2,
  controls: [p(1, 0), p(1, 1), p(0, 1), p(-1, 1), p(-1, 0), p(-1, -1), p(0, -1), p(1, -1), p(1, 0)].map(q =>
    p(10 * q.x, 10 * q.y),
  ),
  knots: [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
  weights: [1, h, 1, h, 1, h, 1, h, 1],
};

const kinks = (line: ReturnType<typeof arcsFromSpline>['line']): number[] => {
  const s = polylineSegments(line);
  return s.slice(1).map((e, i) => {
    const [u, v] = [endDirection(s[i]!), startDirection(e)];
    return Math.abs(Math.atan2(cross(u, v), dot(u, v)));
  });
};

describe('arcsFromSpline', () => {
  test('the NURBS circle is four arcs of its radius', () => {
    const { line, deviation } = arcsFromSpline(circle, 0.001);
    expect(line).toHaveLength(5);
    for (const s of polylineSegments(line)) expect(s.kind === 'arc' && s.radius).toBeCloseTo(10, 9);
    expect(deviation).toBeLessThan(1e-9);
    expect(signedArea(line.slice(0, -1))).toBeCloseTo(Math.PI * 100, 6);
  });

  test('clamped without inner knots it is a Bézier: area under a cubic bump by its controls', () => {
    // integral of y dx over a cubic Bézier with controls (0,0) (0,h) (w,h) (w,0) is 0.6 w h (Bernstein products)
    const bump = { degree: 3, controls: [p(100, 0), p(100, 60), p(0, 60), p(0, 0)], knots: [0, 0, 0, 0, 1, 1, 1, 1] };
    expect(signedArea(arcsFromSpline(bump, 1e-5).line)).toBeCloseTo(0.6 * 100 * 60, 1);
  });

  test('a uniform cubic (not clamped): starts at (P0 + 4 P1 + P2) / 6, tangent-continuous across its knots', () => {
    const controls = [p(0, 0), p(10, 0), p(20, 10), p(30, -10), p(45, 0), p(60, 5)];
    const { line } = arcsFromSpline({ degree: 3, controls, knots: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] }, 0.01);
    expect(distance(line[0]!, p(60 / 6, 10 / 6))).toBeLessThan(1e-12);
    expect(Math.max(...kinks(line))).toBeLessThan(1e-9);
  });

  test('a knot as often as the degree is a corner, degree 1 a run of lines', () => {
    const corner = {
      degree: 2,
      controls: [p(0, 0), p(5, 0), p(10, 0), p(10, 5), p(10, 10)],
      knots: [0, 0, 0, 1, 1, 2, 2, 2],
    };
    expect(arcsFromSpline(corner, 0.01).line).toEqual([p(0, 0), p(10, 0), p(10, 10)].map(q => ({ ...q, bulge: 0 })));
    const lines = { degree: 1, controls: [p(0, 0), p(3, 0), p(3, 4)], knots: [0, 0, 1, 2, 2] };
    expect(arcsFromSpline(lines, 0.01).line).toHaveLength(3);
  });

  test.each([
    [{ ...circle, knots: [0, 1] }, /knots is 2 knots; allowed: 12 for 9 controls/],
    [{ ...circle, knots: [0, 0, 0, 1, 1, 2, 1, 3, 3, 4, 4, 4] }, /knots\[6\] is 1/],
    [{ ...circle, weights: [1, 1] }, /weights is 2 weights/],
    [{ ...circle, weights: [1, h, 0, h, 1, h, 1, h, 1] }, /weights\[2\] is 0/],
    [{ ...circle, degree: 0 }, /degree is 0/],
    [{ ...circle, controls: [p(0, 0)] }, /controls is 1 points/],
    [{ ...circle, knots: new Array(12).fill(0) }, /knots is all in one place/],
  ])('refuses by name %#', (spline, message) => {
    expect(() => arcsFromSpline(spline as Spline, 0.01)).toThrow(message);
  });
});
