import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { GeometryFailure } from '../../lib/geometry/failure.js';
import { area } from '../../lib/geometry/measure.js';
import { asCircle, type Outline } from '../../lib/geometry/outline.js';
import { readDxf } from '../../lib/readers/dxf.js';

// drawings written and measured by ezdxf and shapely: see test/data/readers/README.md
const folder = new URL('../data/readers/', import.meta.url);
const drawing = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const expected = JSON.parse(drawing('expected.json')) as {
  plate: { outer: number; openings: Record<string, number>; 'from behind': number };
  faults: { frame: number; polyline: number };
};

const holds = (outline: Outline): number => Math.abs(area({ outer: outline, openings: [] }));

/** A drawing of entities given as [type, [code, value], ...]. */
const file = (entities: readonly string[], header = ''): string =>
  `${header}0\nSECTION\n2\nENTITIES\n${entities.join('')}0\nENDSEC\n0\nEOF\n`;
const entity = (type: string, ...groups: readonly (readonly [number, number | string])[]): string =>
  `0\n${type}\n${groups.map(([code, value]) => `${code}\n${value}\n`).join('')}`;

describe('readDxf', () => {
  test('the plate: every area as ezdxf and shapely measure it, arcs kept, seven openings, nothing odd', async () => {
    const { regions, open, report, skipped, deviation } = await readDxf(drawing('plate.dxf'), { tolerance: 0.001 });
    expect(regions.map(r => r.openings.length)).toEqual([7, 0]);
    const [plate, behind] = regions;
    expect(holds(plate!.outer)).toBeCloseTo(expected.plate.outer, 4);
    expect(plate!.outer.filter(v => v.bulge !== 0)).toHaveLength(4);
    const found = plate!.openings.map(holds);
    // curves may stray by the tolerance over their length, some 80 to 100 mm; lines and arcs not at all
    for (const [i, exact] of Object.values(expected.plate.openings).entries())
      expect(Math.abs(found[i]! - exact)).toBeLessThan(i === 2 || i === 3 ? 0.05 : 1e-4);
    expect(asCircle(plate!.openings[1]!)).toMatchObject({ radius: 12 });
    expect(asCircle(plate!.openings[4]!)).toMatchObject({ radius: expect.closeTo(10, 6) });
    expect(holds(behind!.outer)).toBeCloseTo(expected.plate['from behind'], 9);
    expect(Math.max(...behind!.outer.map(v => v.x))).toBeCloseTo(-50, 9);
    expect(deviation).toBeLessThanOrEqual(0.001);
    expect(open).toEqual([]);
    expect(report).toEqual({ gaps: [], doubled: [], stray: [], specks: [] });
    expect([...skipped].sort()).toEqual([
      'LINE: in paper space',
      'POINT: not a line, arc or curve',
      'TEXT: not a line, arc or curve',
    ]);
  });

  test('only some layers', async () => {
    const { regions } = await readDxf(drawing('plate.dxf'), { layers: ['CURVES'] });
    expect(regions).toHaveLength(2);
  });

  test('faults, in inches: the small gap bridged, the large one told, the doubled edge and the stray line with their places', async () => {
    const { regions, open, report } = await readDxf(drawing('faults.dxf'));
    const square = 25.4 * 25.4;
    expect(regions.map(r => holds(r.outer) / square)).toEqual([
      expect.closeTo(2.00005, 6),
      expect.closeTo(expected.faults.polyline, 6),
    ]);
    expect(report.gaps).toEqual([
      { at: { x: expect.closeTo(2.0001 * 25.4, 6), y: 0 }, width: expect.closeTo(0.0002 * 25.4, 6), bridged: true },
      { at: { x: expect.closeTo(6.001 * 25.4, 6), y: 0 }, width: expect.closeTo(0.002 * 25.4, 6), bridged: false },
    ]);
    expect(report.doubled).toEqual([
      { at: { x: 0, y: 12.7 }, source: expect.stringMatching(/^LINE [0-9A-F]+ on layer 0$/) },
    ]);
    expect(open).toHaveLength(2);
    expect(report.stray.map(s => s.length / 25.4)).toEqual(expect.arrayContaining([expect.closeTo(0.5, 9)]));
    expect(report.stray.find(s => s.length < 20)).toMatchObject({
      at: { x: expect.closeTo(76.2, 9), y: expect.closeTo(76.2, 9) },
    });
  });

  test('vertex identifiers (group 91) between the vertices of an LWPOLYLINE do not cut it short', async () => {
    const corners = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ] as const;
    const text = file([
      entity(
        'LWPOLYLINE',
        [5, 'A1'],
        [8, 'CUT'],
        [90, 4],
        [70, 1],
        ...corners.flatMap(
          ([x, y], i) =>
            [
              [10, x],
              [20, y],
              [42, 0],
              [91, i],
            ] as [number, number][],
        ),
      ),
    ]);
    expect(holds((await readDxf(text)).regions[0]!.outer)).toBe(100);
  });

  test('a bulge above 1 is an arc of more than a half circle; doubled vertices are one', async () => {
    const text = file([
      entity(
        'LWPOLYLINE',
        [8, '0'],
        [90, 3],
        [70, 1],
        [10, 0],
        [20, 0],
        [42, 1 + Math.SQRT2],
        [10, 10],
        [20, 0],
        [10, 10],
        [20, 0],
      ),
    ]);
    // three quarters of the circle of radius 10 / sqrt(2), bulge tan(270° / 4), and the triangle to its centre
    const radius = 10 / Math.SQRT2;
    expect(holds((await readDxf(text)).regions[0]!.outer)).toBeCloseTo(0.75 * Math.PI * radius * radius + 25, 9);
  });

  test('an old POLYLINE with its vertices, cut off or not: no endless wait', async () => {
    const vertex = (x: number, y: number): string => entity('VERTEX', [8, '0'], [10, x], [20, y]);
    const start = entity('POLYLINE', [8, '0'], [66, 1], [70, 1]) + vertex(0, 0) + vertex(4, 0) + vertex(4, 3);
    expect(holds((await readDxf(file([start, entity('SEQEND', [8, '0'])]))).regions[0]!.outer)).toBe(6);
    expect(holds((await readDxf(file([start]))).regions[0]!.outer)).toBe(6);
  });

  test('a fit-point spline is a smooth closed curve through its points', async () => {
    const ring = Array.from({ length: 13 }, (_, i) => [
      20 * Math.cos((i * Math.PI) / 6),
      20 * Math.sin((i * Math.PI) / 6),
    ]);
    const [x0, y0] = ring[0]!;
    ring[12] = [x0!, y0!];
    const text = file([
      entity(
        'SPLINE',
        [8, '0'],
        [70, 0],
        [71, 3],
        ...ring.flatMap(
          ([x, y]) =>
            [
              [11, x!],
              [21, y!],
            ] as [number, number][],
        ),
      ),
    ]);
    expect(holds((await readDxf(text)).regions[0]!.outer)).toBeCloseTo(Math.PI * 400, 0);
  });

  test('ends of a spline chain with lines', async () => {
    const text = file([
      entity(
        'SPLINE',
        [8, '0'],
        [70, 8],
        [71, 2],
        [72, 6],
        [73, 3],
        ...[0, 0, 0, 1, 1, 1].map(k => [40, k] as [number, number]),
        [10, 0],
        [20, 0],
        [10, 50],
        [20, 100],
        [10, 100],
        [20, 0],
      ),
      entity('LINE', [8, '0'], [10, 100], [20, 0], [11, 0], [21, 0]),
    ]);
    const { regions } = await readDxf(text, { tolerance: 0.0001 });
    expect(holds(regions[0]!.outer)).toBeCloseTo((2 / 3) * 5000, 1); // Archimedes, Quadrature of the Parabola
  });

  test('units: the header’s, the option’s, none', async () => {
    const ring = entity('CIRCLE', [8, '0'], [10, 0], [20, 0], [40, 1]);
    const header = (code: number): string => `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n${code}\n0\nENDSEC\n`;
    const radius = async (text: string, scale?: number): Promise<number | undefined> =>
      asCircle((await readDxf(text, scale === undefined ? {} : { scale })).regions[0]!.outer)?.radius;
    expect(await radius(file([ring]))).toBe(1);
    expect(await radius(file([ring], header(1)))).toBe(25.4);
    expect(await radius(file([ring], header(5)))).toBe(10);
    expect(await radius(file([ring], header(1)), 2)).toBe(2);
    await expect(readDxf(file([ring], header(77)))).rejects.toThrow(/\$INSUNITS is 77; allowed: .*option scale/);
  });

  test.each([
    ['', /no ENTITIES|dxf is/],
    ['not a drawing', /dxf is/],
    ['AutoCAD Binary DXF\r\n', /dxf is binary/],
    [file([entity('CIRCLE', [8, '0'], [10, 0], [20, 0], [40, 0])]), /CIRCLE on layer 0, radius is 0/],
    [file([entity('CIRCLE', [8, '0'], [10, 'x'], [20, 0], [40, 1])]), /CIRCLE on layer 0, group 10/],
    [file([entity('LINE', [5, 'BEEF'], [8, 'A'], [10, 0], [20, 0])]), /LINE BEEF on layer A, group 11 is missing/],
    [file([entity('SPLINE', [8, '0'], [71, 3], [10, 0], [20, 0])]), /controls is 1 points/],
    [file([entity('CIRCLE', [8, '0'], [10, 0], [20, 0], [40, 1])]).replace('0\nENDSEC\n0\nEOF\n', ''), /dxf is/],
  ])('refused with the place %#', async (text, message) => {
    await expect(readDxf(text)).rejects.toThrow(message);
  });

  test('damaged drawings are read or refused by name, never waited for', async () => {
    const lines = drawing('plate.dxf').split(/\r?\n/);
    const at = fc.nat({ max: lines.length - 1 });
    const damage = fc.oneof(
      at.map(i => lines.slice(0, i)),
      at.map(i => lines.toSpliced(i, 1)),
      fc.tuple(at, fc.nat({ max: 20 })).map(([i, n]) => lines.toSpliced(i, 2 * n)),
      fc.tuple(at, fc.constantFrom('NaN', '-1', '1e400', '', '0', 'abc', '42')).map(([i, v]) => lines.with(i, v)),
    );
    await fc.assert(
      fc.asyncProperty(damage, async damaged => {
        try {
          const { regions } = await readDxf(damaged.join('\n'));
          for (const r of regions) for (const v of r.outer) expect(Number.isFinite(v.x + v.y + v.bulge)).toBe(true);
        } catch (e) {
          expect(e instanceof Unusable || e instanceof GeometryFailure ? '' : String(e)).toBe('');
        }
      }),
      { numRuns: 150 },
    );
  });

  test('a break in the file is told by its line', async () => {
    const text = file([entity('LINE', [8, '0'], [10, 0], [20, 0], [11, 1], [21, 1])]);
    await expect(readDxf(text.replace('20\n0\n', '20\n'))).rejects.toThrow(/dxf is '.*' in line \d+; allowed/);
    await expect(readDxf(text.replace('0\nENDSEC\n', ''))).rejects.toThrow(/'EOF' in line \d+; allowed: ENDSEC/);
  });

  test('what is left out is counted: unknown entities, odd planes, uneven or missing blocks', async () => {
    const { skipped, regions } = await readDxf(
      file([
        entity('HATCH', [8, '0']),
        entity('HATCH', [8, '0']),
        entity('XNOBODYKNOWS', [8, '0']),
        entity('CIRCLE', [8, '0'], [10, 0], [20, 0], [40, 1], [210, 1], [220, 0], [230, 0]),
        entity('INSERT', [8, '0'], [2, 'GONE'], [10, 0], [20, 0]),
      ]),
    );
    expect(regions).toEqual([]);
    expect(skipped).toEqual([
      'HATCH: not a line, arc or curve (2 times)',
      'XNOBODYKNOWS: not a line, arc or curve',
      'CIRCLE: drawn in a plane other than x and y',
      'INSERT: block GONE is not in the file',
    ]);
  });
});
