import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, signedArea } from '../../lib/geometry/measure.js';
import {
  annularSector,
  circle,
  type Outline,
  type Polyline,
  polygon,
  rectangle,
  reversePolyline,
  vertex,
} from '../../lib/geometry/outline.js';
import type { Point } from '../../lib/geometry/point.js';
import { chain } from '../../lib/readers/chain.js';
import type { Piece } from '../../lib/readers/piece.js';
import { regionsOf } from '../../lib/readers/regions.js';

const p = (x: number, y: number): Point => ({ x, y });
const line = (x0: number, y0: number, x1: number, y1: number, source = `line ${x0},${y0} to ${x1},${y1}`): Piece => ({
  line: [vertex(p(x0, y0)), vertex(p(x1, y1))],
  closed: false,
  source,
});
const square = (x: number, y: number, size: number): Piece[] => [
  line(x, y, x + size, y),
  line(x + size, y, x + size, y + size),
  line(x + size, y + size, x, y + size),
  line(x, y + size, x, y),
];
const shape = (outline: Outline): Piece[] =>
  outline.map((v, i) => ({
    line: [v, vertex(outline[(i + 1) % outline.length]!)],
    closed: false,
    source: `edge ${i}`,
  }));

/** Shuffles and turns pieces about by a seed. */
const muddled = (pieces: readonly Piece[], seeds: readonly number[]): Piece[] =>
  pieces
    .map((piece, i) => ({ piece, key: (seeds[i % seeds.length]! * (i + 1)) % 1 }))
    .sort((a, b) => a.key - b.key)
    .map(({ piece, key }) => (key > 0.5 ? { ...piece, line: reversePolyline(piece.line) } : piece));

describe('chain', () => {
  test('lines and arcs in any order and direction close to the outline they came from', () => {
    const felloe = annularSector(235, 305, 0.2, Math.PI / 4);
    const exact = signedArea(felloe);
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.01, max: 0.99, noNaN: true }), { minLength: 4, maxLength: 4 }), seeds => {
        const { outlines, open, report } = chain(muddled(shape(felloe), seeds));
        expect(outlines).toHaveLength(1);
        expect(outlines[0]).toHaveLength(4);
        expect(Math.abs(signedArea(outlines[0]!))).toBeCloseTo(exact, 6);
        expect(open).toEqual([]);
        expect(report).toEqual({ gaps: [], doubled: [], stray: [], specks: [] });
      }),
    );
  });

  test('a gap within the bridge is closed in the middle and told; one beyond it is left open and told', () => {
    const near = chain([line(0, 0, 10, 0), line(10.006, 0, 10, 10), line(10, 10, 0, 0)]);
    expect(near.outlines).toHaveLength(1);
    expect(near.report.gaps).toEqual([{ at: p(10.003, 0), width: expect.closeTo(0.006, 9), bridged: true }]);
    const far = chain([line(0, 0, 10, 0), line(10.06, 0, 10, 10), line(10, 10, 0, 0)]);
    expect(far.outlines).toEqual([]);
    expect(far.report.gaps).toEqual([
      { at: { x: expect.closeTo(10.03, 9), y: 0 }, width: expect.closeTo(0.06, 9), bridged: false },
    ]);
    expect(far.open).toHaveLength(1);
    expect(far.report.stray[0]).toMatchObject({ length: expect.closeTo(10 + 10 + Math.sqrt(200), 1) });
    const wide = chain([line(0, 0, 10, 0), line(10.06, 0, 10, 10), line(10, 10, 0, 0)], 0.1);
    expect(wide.outlines).toHaveLength(1);
  });

  test('an edge drawn twice, backwards, or in part again is left out and told', () => {
    const again = chain([...square(0, 0, 10), line(10, 10, 10, 0, 'again'), line(2, 0, 7, 0, 'in part')]);
    expect(again.outlines).toHaveLength(1);
    expect(again.report.doubled).toEqual([
      { at: p(10, 5), source: 'again' },
      { at: p(4.5, 0), source: 'in part' },
    ]);
    const whole = chain([...square(0, 0, 10), ...square(0, 0, 10)]);
    expect(whole.outlines).toHaveLength(1);
    expect(whole.report.doubled).toHaveLength(4);
    const ring = { line: circle(5), closed: true, source: 'circle' };
    expect(chain([ring, { ...ring, source: 'circle again' }]).report.doubled).toEqual([
      expect.objectContaining({ source: 'circle again' }),
    ]);
    expect(chain([ring, { line: circle(5.1), closed: true, source: 'other' }]).report.doubled).toEqual([]);
  });

  test('two frames that share an edge, drawn by both, are two outlines', () => {
    const { outlines, report } = chain([...square(0, 0, 10), ...square(10, 0, 10)]);
    expect(outlines.map(o => Math.abs(signedArea(o)))).toEqual([100, 100]);
    expect(report.doubled).toEqual([]);
  });

  test('two squares that touch at a corner come apart there, from whichever piece it starts', () => {
    const pieces = [...square(0, 0, 10), ...square(10, 10, 10)];
    for (let i = 0; i < pieces.length; i++) {
      const { outlines } = chain([...pieces.slice(i), ...pieces.slice(0, i)]);
      expect(outlines.map(o => Math.abs(signedArea(o)))).toEqual([100, 100]);
    }
  });

  test('stray pieces: a lone mark, a tail on a closed outline; a speck', () => {
    const { outlines, open, report } = chain([
      ...square(0, 0, 10),
      line(10, 10, 15, 15, 'tail'),
      line(30, 0, 40, 0, 'mark'),
      line(5, 5, 5, 5, 'speck'),
    ]);
    expect(outlines).toHaveLength(1);
    expect(open).toHaveLength(2);
    expect(report.stray.map(s => s.source).sort()).toEqual(['mark', 'tail']);
    expect(report.stray.find(s => s.source === 'mark')).toMatchObject({
      at: { x: 30, y: 0 },
      to: { x: 40, y: 0 },
      length: 10,
    });
    expect(report.specks).toEqual([{ at: { x: 5, y: 5, bulge: 0 }, source: 'speck' }]);
  });

  test('every piece is in one outline, one run or the report: lengths add up', () => {
    const end = fc.record({ x: fc.integer({ min: 0, max: 4 }), y: fc.integer({ min: 0, max: 4 }) });
    const length = (l: Polyline, closed: boolean): number =>
      l.reduce((t, v, i) => {
        const next = l[i + 1] ?? (closed ? l[0] : undefined);
        return next ? t + Math.hypot(next.x - v.x, next.y - v.y) : t;
      }, 0);
    fc.assert(
      fc.property(fc.array(fc.tuple(end, end), { minLength: 1, maxLength: 25 }), list => {
        const pieces = list.map(([a, b], i) => line(a.x, a.y, b.x, b.y, `${i}`));
        const { outlines, open, report } = chain(pieces);
        const total = pieces.reduce((t, q) => t + length(q.line, false), 0);
        const dropped = report.doubled.reduce((t, d) => t + length(pieces[Number(d.source)]!.line, false), 0);
        const kept = outlines.reduce((t, o) => t + length(o, true), 0) + open.reduce((t, o) => t + length(o, false), 0);
        expect(kept + dropped).toBeCloseTo(total, 6);
        expect(report.stray.reduce((t, s) => t + s.length, 0)).toBeCloseTo(
          open.reduce((t, o) => t + length(o, false), 0),
          6,
        );
        for (const o of outlines) expect(o.length).toBeGreaterThanOrEqual(2);
      }),
      { numRuns: 1000 },
    );
  });

  test('the bridge is checked', () => {
    expect(() => chain([], 0)).toThrow(/bridge/);
  });
});

describe('regionsOf', () => {
  test('nesting four deep: outer, opening, island, its opening', () => {
    const rings = [
      rectangle(0, 0, 100, 100),
      circle(40, p(50, 50)),
      circle(30, p(50, 50)),
      circle(10, p(50, 50)),
      rectangle(200, 0, 210, 10),
    ];
    const regions = regionsOf(rings);
    expect(regions.map(r => r.openings.length)).toEqual([1, 1, 0]);
    expect(regions.map(area)).toEqual([
      expect.closeTo(1e4 - Math.PI * 1600, 6),
      expect.closeTo(Math.PI * 800, 6),
      expect.closeTo(100, 9),
    ]);
    for (const r of regions) {
      expect(signedArea(r.outer)).toBeGreaterThan(0);
      for (const o of r.openings) expect(signedArea(o)).toBeLessThan(0);
    }
  });

  test('an opening that touches the edge, and neighbours that share one', () => {
    const touching = regionsOf([rectangle(0, 0, 10, 10), polygon([p(0, 5), p(5, 3), p(5, 7)])]);
    expect(touching.map(r => r.openings.length)).toEqual([1]);
    expect(regionsOf([rectangle(0, 0, 10, 10), rectangle(10, 0, 20, 10)])).toHaveLength(2);
  });

  test('outlines that cross are refused with the place, even apart from all others', () => {
    expect(() => regionsOf([rectangle(100, 100, 110, 110), rectangle(0, 0, 10, 10), rectangle(5, 5, 15, 15)])).toThrow(
      /cross/,
    );
    expect(() => regionsOf([polygon([p(0, 0), p(10, 10), p(10, 0), p(0, 8)])])).toThrow(/cross/);
  });
});
