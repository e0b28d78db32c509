import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { biarc, turnFrom } from '../../lib/geometry/biarc.js';
import { polylineBounds } from '../../lib/geometry/measure.js';
import type { Polyline } from '../../lib/geometry/outline.js';
import { distance, subtract } from '../../lib/geometry/point.js';
import { smoothProfile } from '../../lib/geometry/profile.js';
import { polylineSegments, type Segment } from '../../lib/geometry/segment.js';

const chordAngle = (s: Segment): number => Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x);
const leaving = (s: Segment): number => chordAngle(s) - (s.kind === 'arc' ? s.sweep / 2 : 0);
const arriving = (s: Segment): number => chordAngle(s) + (s.kind === 'arc' ? s.sweep / 2 : 0);
const wrap = (a: number): number => Math.atan2(Math.sin(a), Math.cos(a));

/** The largest kink along a run, radians. */
const kink = (line: Polyline): number => {
  const s = polylineSegments(line);
  return Math.max(0, ...s.slice(1).map((next, i) => Math.abs(wrap(leaving(next) - arriving(s[i]!)))));
};
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const finite = fc.double({ min: -300, max: 300, noNaN: true });

describe('biarc', () => {
  test('quarter turn: one arc of bulge tan(pi / 8)', () => {
    const line = biarc({ x: 1, y: 0 }, Math.PI / 2, { x: 0, y: 1 }, Math.PI);
    expect(line).toHaveLength(2);
    expect(line[0]!.bulge).toBeCloseTo(Math.SQRT2 - 1, 15);
  });

  test('parallel tangents along x from (0,0) to (4,2): joint halfway (Bolton 1975), each arc of radius 2.5', () => {
    const line = biarc({ x: 0, y: 0 }, 0, { x: 4, y: 2 }, 0);
    expect(line).toHaveLength(3);
    expect(line[1]!.x).toBeCloseTo(2, 12);
    expect(line[1]!.y).toBeCloseTo(1, 12);
    // r = (x² + y²) / (2 y) for an arc level at its start: (4 + 1) / 2
    for (const s of polylineSegments(line)) expect(s.kind === 'arc' && s.radius).toBeCloseTo(2.5, 12);
  });

  test('a line where both directions are the chord, two half circles where they stand square to it', () => {
    expect(biarc({ x: 1, y: 2 }, Math.PI / 4, { x: 3, y: 4 }, Math.PI / 4)).toEqual([
      { x: 1, y: 2, bulge: 0 },
      { x: 3, y: 4, bulge: 0 },
    ]);
    const s = biarc({ x: 0, y: 0 }, Math.PI / 2, { x: 4, y: 0 }, Math.PI / 2);
    expect(s.map(v => Math.abs(v.bulge))).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12), 0]);
  });

  test('ends where told, along the directions told, joined without a kink, |bulge| <= 1; or refused by name', () => {
    fc.assert(
      fc.property(finite, finite, angle, finite, finite, angle, (x0, y0, a0, x1, y1, a1) => {
        fc.pre(Math.hypot(x1 - x0, y1 - y0) > 0.1);
        let line: Polyline;
        try {
          line = biarc({ x: x0, y: y0 }, a0, { x: x1, y: y1 }, a1);
        } catch (e) {
          const chord = Math.atan2(y1 - y0, x1 - x0);
          const off = Math.max(Math.abs(wrap(a0 - chord + Math.PI)), Math.abs(wrap(a1 - chord + Math.PI)));
          expect(off).toBeLessThan(1e-3);
          expect(String(e)).toMatch(/tangent/i);
          return;
        }
        const s = polylineSegments(line);
        expect([line[0]!.x, line[0]!.y, line.at(-1)!.x, line.at(-1)!.y]).toEqual([x0, y0, x1, y1]);
        expect(Math.abs(wrap(leaving(s[0]!) - a0))).toBeLessThan(1e-9);
        expect(Math.abs(wrap(arriving(s.at(-1)!) - a1))).toBeLessThan(1e-9);
        expect(kink(line)).toBeLessThan(1e-9);
        for (const v of line) expect(Math.abs(v.bulge)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 5000 },
    );
    expect(() => biarc({ x: 0, y: 0 }, Math.PI, { x: 1, y: 0 }, Math.PI)).toThrow(/tangent/i);
    expect(() => biarc({ x: 0, y: 0 }, 0, { x: 0, y: 0 }, 1)).toThrow(/to is/);
  });
});

const steps = fc.array(
  fc.record({
    dx: fc.double({ min: 0.05, max: 60, noNaN: true }),
    y: fc.oneof(
      fc.integer({ min: 0, max: 60_000 }).map(n => n / 1000),
      fc.constantFrom(0, 5, 10),
    ),
  }),
  { minLength: 2, maxLength: 12 },
);

describe('smoothProfile', () => {
  test('points of a circle give that circle back: bulges of its chords, radius 50', () => {
    const points = [0.1, 0.35, 0.5, 0.8, 1.2].map(a => ({ x: 50 * Math.sin(a), y: 50 * Math.cos(a) }));
    const line = smoothProfile(points, { startTangent: -0.1, endTangent: -1.2 });
    for (const s of polylineSegments(line)) expect(s.kind === 'arc' && s.radius).toBeCloseTo(50, 6);
  });

  test('a step between two levels', () => {
    const line = smoothProfile([
      { x: 0, y: 4 },
      { x: 10, y: 4 },
      { x: 12, y: 14 },
      { x: 20, y: 14 },
    ]);
    const box = polylineBounds(line);
    expect([box.minY, box.maxY]).toEqual([4, 14]);
    // steeper than upright is not run: arc, upright line, arc with radius half the step's width
    const arcs = polylineSegments(line).filter(s => s.kind === 'arc');
    expect(arcs.map(s => s.kind === 'arc' && s.radius)).toEqual([expect.closeTo(1, 9), expect.closeTo(1, 9)]);
  });

  test('through every point, no kink, never past the neighbours, x never back', () => {
    fc.assert(
      fc.property(steps, list => {
        const points = list.map((s, i) => ({ x: list.slice(0, i + 1).reduce((t, q) => t + q.dx, 0), y: s.y }));
        const line = smoothProfile(points);
        expect(kink(line)).toBeLessThan(1e-9);
        let at = 0;
        for (const v of line) if (at < points.length && distance(v, points[at]!) === 0) at++;
        expect(at).toBe(points.length);
        // piece by piece: from one given point to the next the run stays in their box
        let k = 0;
        for (const s of polylineSegments(line)) {
          const [p, q] = [points[k]!, points[k + 1]!];
          const b = polylineBounds([
            { ...s.from, bulge: s.kind === 'arc' ? Math.tan(s.sweep / 4) : 0 },
            { ...s.to, bulge: 0 },
          ]);
          expect(b.minX).toBeGreaterThanOrEqual(p.x - 1e-6);
          expect(b.maxX).toBeLessThanOrEqual(q.x + 1e-6);
          expect(b.minY).toBeGreaterThanOrEqual(Math.min(p.y, q.y) - 1e-6);
          expect(b.maxY).toBeLessThanOrEqual(Math.max(p.y, q.y) + 1e-6);
          if (s.to.x === q.x && s.to.y === q.y) k++;
        }
        for (const v of line) expect(Math.abs(v.bulge)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 3000 },
    );
  });

  test('a round tip: end direction straight down', () => {
    const line = smoothProfile(
      [
        { x: 0, y: 8 },
        { x: 60, y: 12 },
        { x: 72, y: 0 },
      ],
      { startTangent: 0, endTangent: -Math.PI / 2 },
    );
    const last = polylineSegments(line).at(-1)!;
    expect(Math.abs(arriving(last) + Math.PI / 2)).toBeLessThan(1e-9);
    expect(last.kind === 'arc' && last.radius).toBeCloseTo(12, 9);
    expect(kink(line)).toBeLessThan(1e-9);
  });

  test('refuses by name', () => {
    expect(() => smoothProfile([{ x: 0, y: 0 }])).toThrow(/points/);
    expect(() =>
      smoothProfile([
        { x: 0, y: 0 },
        { x: 0, y: 1 },
      ]),
    ).toThrow(/points\[1\]\.x/);
    expect(() =>
      smoothProfile([
        { x: 0, y: 0 },
        { x: 1, y: Number.NaN },
      ]),
    ).toThrow(/points\[1\]/);
    expect(() =>
      smoothProfile(
        [
          { x: 0, y: 0 },
          { x: 1, y: 1 },
        ],
        { endTangent: 2 },
      ),
    ).toThrow(/endTangent/);
  });

  test('turnFrom is signed', () => {
    expect(turnFrom({ x: 1, y: 0 }, subtract({ x: 0, y: 1 }, { x: 0, y: 0 }))).toBeCloseTo(Math.PI / 2, 15);
  });
});
