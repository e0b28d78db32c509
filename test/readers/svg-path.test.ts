import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, test } from 'vitest';
import { distanceToSegment } from '../../lib/geometry/locate.js';
import { area, length, signedArea } from '../../lib/geometry/measure.js';
import { asCircle } from '../../lib/geometry/outline.js';
import { polylineSegments, segments } from '../../lib/geometry/segment.js';
import type { ReadDrawing } from '../../lib/readers/drawing.js';
import { readSvgPath } from '../../lib/readers/svg-path.js';
import { pathCommands } from '../../lib/readers/svg-tokens.js';

const edges = (d: ReadDrawing) => [
  ...d.regions.flatMap(r => [r.outer, ...r.openings].flatMap(segments)),
  ...d.open.flatMap(polylineSegments),
];

/** The farthest of the judge's points from what was read. */
const farthest = (data: string, drawing: ReadDrawing, count = 400): number => {
  const judge = new svgPathProperties(data);
  const all = edges(drawing);
  let most = 0;
  for (let k = 0; k <= count; k++) {
    const q = judge.getPointAtLength((judge.getTotalLength() * k) / count);
    most = Math.max(most, Math.min(...all.map(s => distanceToSegment(s, { x: q.x, y: -q.y }))));
  }
  return most;
};

describe('grammar', () => {
  test('packed numbers and flags, repeated sets, M that becomes L (W3C SVG 2, 9.3.9)', () => {
    expect(pathCommands('M10-20.5.5.5e1z')).toEqual([
      { letter: 'M', values: [10, -20.5] },
      { letter: 'L', values: [0.5, 5] },
      { letter: 'z', values: [] },
    ]);
    expect(pathCommands('m0 0a5,5 0 1110,0 5 5 0 0 01 2')).toEqual([
      { letter: 'm', values: [0, 0] },
      { letter: 'a', values: [5, 5, 0, 1, 1, 10, 0] },
      { letter: 'a', values: [5, 5, 0, 0, 0, 1, 2] },
    ]);
    expect(pathCommands(' \n')).toEqual([]);
  });

  test.each([
    ['L 0 0', /'L 0 0' at character 1; allowed: M or m first/],
    ['M 0 0 L 1', /ends at character 10; allowed: a number, L takes 2/],
    ['M 0 0 A 1 1 0 2 0 3 3', /'2 0 3 3' at character 15; allowed: a flag 0 or 1/],
    ['M 0 0 X 1 1', /'X 1 1' at character 7; allowed: a command/],
    ['M 0 0, L 1 1', /'L 1 1' at character 8; allowed: a number after the comma/],
    ['M 0 0 L 1e999 0', /command 2 has a number out of range/],
    ['M 0 0 ſ 1', /a command/],
  ])('%s is refused with its place', (data, message) => {
    expect(() => readSvgPath(data)).toThrow(message);
  });
});

describe('readSvgPath', () => {
  test('the two arcs of a circle are that circle: radius 40 about (50, 50), y up', () => {
    const { regions, deviation } = readSvgPath('M10 50A40 40 0 0 1 90 50 40 40 0 0 1 10 50Z');
    expect(asCircle(regions[0]!.outer)).toEqual({
      center: { x: expect.closeTo(50, 12), y: expect.closeTo(-50, 12) },
      radius: expect.closeTo(40, 12),
    });
    expect(deviation).toBe(0);
    expect(signedArea(regions[0]!.outer)).toBeCloseTo(Math.PI * 1600, 8);
  });

  test('large and sweep flags of an elliptical arc, all four, by the judge', () => {
    for (const flags of ['0 0', '0 1', '1 0', '1 1']) {
      const data = `M275 175a150 100 30 ${flags} -100 -60`;
      const drawing = readSvgPath(data);
      expect(drawing.open).toHaveLength(1);
      expect(farthest(data, drawing)).toBeLessThan(0.011);
    }
  });

  test('a pie wedge (SVG 2, example arcs01): area of three quarters of a disc of radius 150', () => {
    const { regions } = readSvgPath('M300,200 h-150 a150,150 0 1,0 150,-150 z');
    expect(area(regions[0]!)).toBeCloseTo(0.75 * Math.PI * 150 * 150, 6);
    expect(regions[0]!.outer).toHaveLength(4); // 270 degrees are two arcs
  });

  test('a window in a plate, drawn in either direction; relative moves after z', () => {
    for (const inner of ['h10v10h-10z', 'v10h10v-10z']) {
      const { regions } = readSvgPath(`M0 0H40V30H0Zm5 5${inner}m20 0${inner}`);
      expect(regions).toHaveLength(1);
      expect(regions[0]!.openings).toHaveLength(2);
      expect(area(regions[0]!)).toBeCloseTo(1000, 9);
    }
  });

  test('scale and direction of y', () => {
    const up = readSvgPath('M0 0L10 0 10 5z', { scale: 25.4, yDown: false }).regions[0]!;
    expect(area(up)).toBeCloseTo(25 * 25.4 * 25.4, 6);
    expect(Math.max(...up.outer.map(v => v.y))).toBeCloseTo(5 * 25.4, 9);
    const ring = readSvgPath('M0 0A5 10 40 1 1 8 3Z', { yDown: false }).regions[0]!;
    const flipped = readSvgPath('M0 0A5 10 -40 1 0 8 -3Z').regions[0]!;
    expect(area(ring)).toBeCloseTo(area(flipped), 9);
    expect(length(ring.outer)).toBeCloseTo(length(flipped.outer), 9);
  });

  test('smooth commands are the ones they stand for, after a curve of their kind and after none (SVG 2, 9.3.6 and 9.3.7)', () => {
    const pairs = [
      ['M0 0T10 0T20 5', 'M0 0Q0 0 10 0Q20 0 20 5'],
      ['M0 0Q5 9 10 0T20 0t9 1', 'M0 0Q5 9 10 0Q15 -9 20 0Q25 9 29 1'],
      ['M0 0S5 9 10 0s5 -4 9 1', 'M0 0C0 0 5 9 10 0C15 -9 15 -4 19 1'],
      ['M0 0C1 2 5 9 10 0S4 4 9 11', 'M0 0C1 2 5 9 10 0C15 -9 4 4 9 11'],
      ['M0 0Q5 9 10 0S4 4 9 11', 'M0 0Q5 9 10 0C10 0 4 4 9 11'],
      ['M0 0C1 2 5 9 10 0L11 0T20 7', 'M0 0C1 2 5 9 10 0L11 0Q11 0 20 7'],
    ];
    for (const [short, long] of pairs)
      expect(readSvgPath(short!)).toMatchObject({ open: readSvgPath(long!).open, regions: readSvgPath(long!).regions });
  });

  test('an open subpath and one closed by its ends', () => {
    const drawing = readSvgPath('M0 0L10 0L10 10L0 0M20 0L30 0');
    expect(drawing.regions).toHaveLength(1);
    expect(drawing.open).toHaveLength(1);
    expect(drawing.report.stray).toEqual([expect.objectContaining({ source: 'subpath from command 5', length: 10 })]);
  });

  test('any path: the judge’s points lie within the tolerance of what was read', () => {
    // evenly drawn: the judge has its own ideas of curves with controls in one place
    const drawn = (seed: number): string => {
      let state = seed;
      const next = (): number => {
        state = (state * 1103515245 + 12345) % 2147483648;
        return state / 2147483648;
      };
      const v = (): string => (next() * 100 - 50).toFixed(2);
      const some = (n: number): string => Array.from({ length: n }, v).join(next() > 0.5 ? ' ' : ',');
      const flag = (): string => (next() > 0.5 ? '1' : '0');
      const makers = [
        () => `l${some(2)}`,
        () => `C${some(6)}`,
        () => `s${some(4)}`,
        () => `q${some(4)}T${some(2)}t${some(2)}`, // T after anything else: below, the judge takes it otherwise than SVG 2
        () => `h${v()}`,
        () => `V${v()}`,
        () => `a${(20 + next() * 40).toFixed(1)} ${(20 + next() * 40).toFixed(1)} ${v()} ${flag()}${flag()}${some(2)}`,
      ];
      const count = 1 + Math.floor(next() * 4);
      return `M0 0${Array.from({ length: count }, () => makers[Math.floor(next() * makers.length)]!()).join('')}`;
    };
    let read = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), seed => {
        const data = drawn(seed);
        let drawing: ReadDrawing;
        try {
          drawing = readSvgPath(data, { tolerance: 0.05 });
        } catch (e) {
          expect(String(e)).toMatch(/cross/); // a closed path may cross itself
          return;
        }
        if (!(new svgPathProperties(data).getTotalLength() > 0.1)) return;
        read++;
        expect(drawing.deviation).toBeLessThanOrEqual(0.05);
        // the judge measures its arcs and curves by sampling: to a few hundredths
        expect(farthest(data, drawing, 60)).toBeLessThan(0.1);
      }),
      { numRuns: 200 },
    );
    expect(read).toBeGreaterThan(100);
  });
});
