import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../lib/drawings/drawing.js';
import { Unusable } from '../../lib/findings/unusable.js';
import { area } from '../../lib/geometry/measure.js';
import { annularSector, circle, type Outline, rectangle, vertex } from '../../lib/geometry/outline.js';
import { readDxf } from '../../lib/readers/dxf.js';
import { writeDxf } from '../../lib/writers/dxf.js';
import { near } from '../close.js';

const drawing = (closed: readonly Outline[], name = 'OUTSIDE'): Drawing => ({
  title: 'Lantern Cove',
  layers: [{ name, closed, open: [] }],
});

/** Values of a group code, in the order they stand. */
const values = (text: string, code: number): string[] => {
  const lines = text.split('\n');
  return lines.filter((_, i) => i % 2 === 1 && lines[i - 1] === String(code));
};

describe('release 12', () => {
  test('an outline is a POLYLINE of VERTEX entities with bulges, closed by SEQEND', () => {
    // DXF reference of release 12: 66 vertices follow, 70 = 1 closed, 42 the tangent of a quarter of the sweep
    const arch = [vertex({ x: 0, y: 0 }), vertex({ x: 10, y: 0 }, 1), vertex({ x: 0, y: 0.5 })];
    const text = writeDxf(drawing([arch]), { version: 'r12' });
    const entities = text.slice(text.indexOf('ENTITIES'), text.indexOf('EOF'));
    expect(entities.replace(/\n/g, ' ')).toBe(
      'ENTITIES 0 POLYLINE 8 OUTSIDE 66 1 10 0 20 0 30 0 70 1' +
        ' 0 VERTEX 8 OUTSIDE 10 0 20 0 30 0 0 VERTEX 8 OUTSIDE 10 10 20 0 30 0 42 1 0 VERTEX 8 OUTSIDE 10 0 20 0.5 30 0' +
        ' 0 SEQEND 8 OUTSIDE 0 ENDSEC 0 ',
    );
  });

  test('its table of layers has their colours; the version and the unit stand in the header', () => {
    const text = writeDxf(drawing([rectangle(0, 0, 1, 1)], 'POCKET_19-05'), { version: 'r12' });
    expect(text).toContain('\n$ACADVER\n1\nAC1009\n');
    expect(text).toContain('\n$INSUNITS\n70\n4\n');
    expect(text).toContain('\nLAYER\n2\nPOCKET_19-05\n70\n0\n62\n122\n6\nCONTINUOUS\n');
  });

  test('no handle, no subclass marker, nothing but ASCII', () => {
    const made = { ...drawing([circle(5)]), title: 'Fähre “Kittiwake”' };
    const text = writeDxf(made, { version: 'r12' });
    expect(values(text, 5)).toEqual([]);
    expect(values(text, 100)).toEqual([]);
    expect(text).toMatch(/^[\n\x20-\x7e]*$/);
    expect(values(text, 999)).toEqual(['F\\U+00E4hre \\U+201CKittiwake\\U+201D']);
  });

  test('any sector is read again as it is from the later release', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 40, max: 900 }),
        fc.integer({ min: 10, max: 170 }),
        fc.constantFrom('mm' as const, 'in' as const),
        async (radius, degrees, units) => {
          const made = drawing([annularSector(radius, radius + 33.3, 0.1, (degrees * Math.PI) / 180)]);
          const [older, later] = await Promise.all(
            (['r12', '2007'] as const).map(version => readDxf(writeDxf(made, { version, units }))),
          );
          expect(older!.regions).toEqual(later!.regions);
          near(area(older!.regions[0]!), area({ outer: made.layers[0]!.closed[0]!, openings: [] }), 1e-7);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('names and texts longer than the release takes are refused', () => {
    const text = { text: 'é'.repeat(60), at: { x: 0, y: 0 }, height: 5, turn: 0 };
    expect(() => writeDxf(drawing([circle(1)], 'A'.repeat(32)), { version: 'r12' })).toThrow(Unusable);
    expect(() =>
      writeDxf({ title: 't', layers: [{ name: 'LABEL', closed: [], open: [], texts: [text] }] }, { version: 'r12' }),
    ).toThrow(/at most 255/);
  });
});

describe('inches', () => {
  test('coordinates, radii and extent are inches, names of layers stay mm', () => {
    const made = drawing([circle(25.4, { x: 254, y: 0 })], 'DRILL_50-8');
    for (const version of ['r12', '2007'] as const) {
      const text = writeDxf(made, { version, units: 'in' });
      expect(text).toContain('\n$INSUNITS\n70\n1\n');
      expect(text).toContain('\n$MEASUREMENT\n70\n0\n');
      expect(values(text.slice(text.indexOf('\nENTITIES')), 40)).toEqual(['1']);
      expect(values(text.slice(text.indexOf('\nENTITIES')), 10)).toEqual(['10']);
      expect(text).toContain('\n$EXTMAX\n10\n11\n20\n1\n');
      expect(text).toContain('DRILL_50-8');
    }
  });
});
