import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, perimeter } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { annularSector, asCircle, circle, type Outline, type Region, reverse } from '../../lib/geometry/outline.js';
import { polar } from '../../lib/geometry/point.js';
import type { ReadDrawing } from '../../lib/readers/drawing.js';
import { readDxf } from '../../lib/readers/dxf.js';
import { readSvgPath } from '../../lib/readers/svg-path.js';
import { writeDxf } from '../../lib/writers/dxf.js';
import { pathData } from '../../lib/writers/svg-path.js';

/** A felloe-like sector with a round hole and a slot, anywhere. */
const region = fc
  .record({
    inner: fc.integer({ min: 40, max: 300 }),
    band: fc.integer({ min: 30, max: 90 }),
    sweep: fc.integer({ min: 40, max: 160 }).map(d => (d * Math.PI) / 180),
    turn: fc.integer({ min: -314, max: 314 }).map(n => n / 100),
    x: fc.integer({ min: -900, max: 900 }),
    y: fc.integer({ min: -900, max: 900 }),
  })
  .map(({ inner, band, sweep, turn, x, y }): Region => {
    const hole = reverse(circle(band / 8, polar(inner + band / 2, sweep / 4)));
    const slot = reverse(annularSector(inner + band / 3, inner + (2 * band) / 3, sweep / 2, sweep / 4));
    return moveRegion({ outer: annularSector(inner, inner + band, 0, sweep), openings: [hole, slot] }, { turn, x, y });
  });

const same = (read: ReadDrawing, written: Region, digits: number): void => {
  expect(read.regions).toHaveLength(1);
  const [found] = read.regions;
  expect(found!.openings).toHaveLength(2);
  expect(area(found!)).toBeCloseTo(area(written), digits);
  expect(perimeter(found!)).toBeCloseTo(perimeter(written), digits + 1);
  expect(found!.outer).toHaveLength(written.outer.length);
  expect(found!.openings.filter(o => asCircle(o) !== undefined)).toHaveLength(1);
  expect(read.report).toEqual({ gaps: [], doubled: [], stray: [], specks: [] });
  expect(read.deviation).toBe(0);
};

describe('written and read again', () => {
  test('DXF: the same region, arcs and circle kept', async () => {
    await fc.assert(
      fc.asyncProperty(region, async written => {
        const layers = [
          { name: 'INSIDE', closed: written.openings, open: [] as Outline[] },
          { name: 'OUTSIDE', closed: [written.outer], open: [] as Outline[] },
        ];
        same(await readDxf(writeDxf({ title: 'round trip', layers })), written, 4);
      }),
      { numRuns: 60 },
    );
  });

  test('SVG path data: the same region, arcs and circle kept', () => {
    fc.assert(
      fc.property(region, written => {
        const data = [written.outer, ...written.openings].map(o => pathData(o, true)).join('');
        same(readSvgPath(data), written, 3);
      }),
      { numRuns: 200 },
    );
  });
});
