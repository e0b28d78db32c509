import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../lib/drawings/drawing.js';
import { Unusable } from '../../lib/findings/unusable.js';
import { signedArea } from '../../lib/geometry/measure.js';
import { arcVertices, circle, type Outline, rectangle, vertex } from '../../lib/geometry/outline.js';
import { ORIGIN, polar } from '../../lib/geometry/point.js';
import { writeDxf } from '../../lib/writers/dxf.js';
import { near } from '../close.js';
import { readDxf } from '../readers/dxf.js';

/** An annular sector of 72 degrees: a fifth of a ring. */
const sector = (outer: number, inner: number): Outline => {
  const turn = (2 * Math.PI) / 5;
  return [
    ...arcVertices(ORIGIN, outer, 0, turn),
    vertex(polar(outer, turn)),
    ...arcVertices(ORIGIN, inner, turn, -turn),
    vertex(polar(inner, 0)),
  ];
};

const drawing = (closed: readonly Outline[], title = 'Test'): Drawing => ({
  title,
  layers: [{ name: 'OUTSIDE', closed, open: [] }],
});

const groups = (text: string): string[] =>
  text
    .trimEnd()
    .split('\n')
    .filter((_, i) => i % 2 === 0);

describe('what a reader finds', () => {
  test('an annular sector of 30 in by 21.5 in has a fifth of the ring', () => {
    // area of an annular sector, Machinery's Handbook: angle / 2 (R^2 - r^2)
    const text = writeDxf(drawing([sector(381, 273.05)]));
    const [outline] = readDxf(text).layers.get('OUTSIDE')?.closed ?? [];
    near(signedArea(outline ?? []), (Math.PI / 5) * (381 * 381 - 273.05 * 273.05));
    expect(outline).toHaveLength(4);
  });

  test('a full circle is one CIRCLE', () => {
    const layer = readDxf(writeDxf(drawing([circle(17.5, { x: 3, y: -4 })]))).layers.get('OUTSIDE');
    expect(layer?.circles).toBe(1);
    expect(layer?.closed[0]).toEqual(circle(17.5, { x: 3, y: -4 }));
  });

  test('an open run stays open and keeps its bulges', () => {
    const line = [vertex({ x: 0, y: 0 }, 0.5), vertex({ x: 10, y: 0 }, -0.25), vertex({ x: 20, y: 5 }, 0.75)];
    const text = writeDxf({ title: 't', layers: [{ name: 'SCORE', closed: [], open: [line] }] });
    const read = readDxf(text).layers.get('SCORE');
    expect(read?.closed).toHaveLength(0);
    expect(read?.open[0]?.map(v => v.bulge)).toEqual([0.5, -0.25, 0]);
  });

  test('millimetres, metric, and the true extent of arcs', () => {
    // a half circle of radius 5 on top of a 10 mm square
    const arch = [
      vertex({ x: 0, y: 0 }),
      vertex({ x: 10, y: 0 }),
      vertex({ x: 10, y: 10 }, 1),
      vertex({ x: 0, y: 10 }),
    ];
    const { header } = readDxf(writeDxf(drawing([arch])));
    expect(header).toMatchObject({
      $INSUNITS: 4,
      $MEASUREMENT: 1,
      $EXTMIN: { x: 0, y: 0, z: 0 },
      $EXTMAX: { x: 10, y: 15, z: 0 },
    });
  });

  test('any outline comes back to the ninth decimal, bulges to 15 digits', () => {
    const corner = fc.record({
      x: fc.double({ min: -3000, max: 3000, noNaN: true }),
      y: fc.double({ min: -3000, max: 3000, noNaN: true }),
      bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.99, max: 0.99, noNaN: true })),
    });
    fc.assert(
      fc.property(
        fc.array(fc.array(corner, { minLength: 3, maxLength: 9 }), { minLength: 1, maxLength: 5 }),
        outlines => {
          const read = readDxf(writeDxf(drawing(outlines))).layers.get('OUTSIDE')?.closed ?? [];
          expect(read.map(o => o.length)).toEqual(outlines.map(o => o.length));
          read.flat().forEach((v, i) => {
            const given = outlines.flat()[i];
            expect(Math.abs(v.x - (given?.x ?? Number.NaN))).toBeLessThanOrEqual(6e-10);
            expect(Math.abs(v.y - (given?.y ?? Number.NaN))).toBeLessThanOrEqual(6e-10);
            near(v.bulge, given?.bulge ?? Number.NaN, 1e-14);
          });
        },
      ),
    );
  });
});

describe('the file itself', () => {
  const two: Drawing = {
    title: 'Two layers',
    layers: [
      { name: 'OUTSIDE', closed: [rectangle(0, 0, 10, 20), circle(2)], open: [] },
      { name: 'POCKET_9-525', closed: [rectangle(1, 1, 2, 2)], open: [] },
    ],
  };

  test('is the same bytes however many were written before', () => {
    const first = writeDxf(two);
    writeDxf(drawing([circle(1), circle(2), circle(3)]));
    expect(writeDxf(two)).toBe(first);
  });

  test('has its entities in the order they are cut, its layers in one table each once', () => {
    const line = { closed: [circle(1)], open: [] };
    const text = writeDxf({
      title: 't',
      layers: ['INSIDE', 'OUTSIDE', 'INSIDE'].map(name => ({ name, ...line })),
    });
    const [tables = '', entities = ''] = text.split('ENTITIES');
    expect(tables.match(/\nAcDbLayerTableRecord\n2\n(INSIDE|OUTSIDE)\n/g)).toHaveLength(2);
    expect(entities.match(/\n8\n\w+\n/g)?.map(m => m.trim().split('\n')[1])).toEqual(['INSIDE', 'OUTSIDE', 'INSIDE']);
  });

  test('has each handle once, all below the seed', () => {
    const lines = writeDxf(two).split('\n');
    const pairs = lines.flatMap((line, i) => (i % 2 === 0 ? [[line, lines[i + 1] ?? ''] as const] : []));
    const seed = Number.parseInt(pairs[pairs.findIndex(p => p[1] === '$HANDSEED') + 1]?.[1] ?? '', 16);
    const handles = pairs
      .filter((p, i) => p[0] === '5' && pairs[i - 1]?.[1] !== '$HANDSEED')
      .map(p => Number.parseInt(p[1], 16));
    expect(handles.length).toBeGreaterThan(20);
    expect(new Set(handles).size).toBe(handles.length);
    expect(Math.max(...handles)).toBe(seed - 1);
    // every owner is a handle of the file, or none (0)
    const owners = pairs.filter(p => p[0] === '330').map(p => Number.parseInt(p[1], 16));
    expect(owners.filter(o => o !== 0 && !handles.includes(o))).toEqual([]);
  });

  test('gives each layer its index colour and its exact colour', () => {
    const text = writeDxf(two);
    expect(text).toContain('2\nOUTSIDE\n62\n142\n420\n29362\n'); // 0x0072b2
    expect(text).toContain('2\nPOCKET_9-525\n62\n122\n420\n40563\n'); // 0x009e73
  });

  test('writes a square byte for byte', () => {
    const text = writeDxf(drawing([rectangle(0, 0, 1, 2)]));
    const entities = text.slice(text.indexOf('ENTITIES'), text.indexOf('OBJECTS'));
    expect(entities.replace(/\n5\n\w+\n330\n\w+\n/, '\n5\nH\n330\nO\n')).toBe(
      'ENTITIES\n0\nLWPOLYLINE\n5\nH\n330\nO\n100\nAcDbEntity\n8\nOUTSIDE\n100\nAcDbPolyline\n90\n4\n70\n1\n' +
        '10\n0\n20\n0\n10\n1\n20\n0\n10\n1\n20\n2\n10\n0\n20\n2\n0\nENDSEC\n0\nSECTION\n2\n',
    );
    expect(text.endsWith('0\nEOF\n')).toBe(true);
  });

  test('holds nothing but whole groups', () => {
    expect(groups(writeDxf(two)).every(code => /^\d+$/.test(code))).toBe(true);
  });
});

describe('what is refused, by name', () => {
  test.each(['A\n0\nSECTION', 'A\rB', 'A\u2028B', 'A\u0000B', 'A\u0085B', 'A\ud800B'])('a title %j', title => {
    expect(() => writeDxf(drawing([circle(1)], title))).toThrow(/title of a drawing is ".*one line of text/);
  });

  test.each(['', 'A B', 'A/B', 'A*', 'Ä', 'A\nB', '0', 'x'.repeat(101)])('a layer named %j', name => {
    expect(() => writeDxf({ title: 't', layers: [{ name, closed: [circle(1)], open: [] }] })).toThrow(
      /a layer name is/,
    );
  });

  test('a layer spelt two ways', () => {
    const layer = { closed: [circle(1)], open: [] };
    expect(() =>
      writeDxf({
        title: 't',
        layers: [
          { name: 'A', ...layer },
          { name: 'a', ...layer },
        ],
      }),
    ).toThrow(Unusable);
  });

  test.each([
    [[vertex({ x: Number.NaN, y: 0 }), vertex({ x: 1, y: 1 })]],
    [[vertex({ x: 0, y: 0 }), vertex({ x: Infinity, y: 1 })]],
    [[vertex({ x: 0, y: 0 }, Number.NaN), vertex({ x: 1, y: 1 })]],
    [[vertex({ x: 0, y: 0 })]],
    [[]],
  ])('a line %j', line => {
    expect(() => writeDxf(drawing([line]))).toThrow(Unusable);
    expect(() => writeDxf({ title: 't', layers: [{ name: 'SCORE', closed: [], open: [line] }] })).toThrow(Unusable);
  });
});
