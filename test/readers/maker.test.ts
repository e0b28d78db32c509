import fc from 'fast-check';
import makerjs from 'makerjs';
import { describe, expect, test } from 'vitest';
import { area, perimeter, signedArea } from '../../lib/geometry/measure.js';
import {
  annularSector,
  asCircle,
  circle,
  polygon,
  type Region,
  rectangle,
  reverse,
  vertex,
} from '../../lib/geometry/outline.js';
import { polar } from '../../lib/geometry/point.js';
import { type MakerModel, readMaker, toMaker } from '../../lib/readers/maker.js';

const plate: Region = {
  outer: rectangle(0, 0, 100, 60),
  openings: [
    reverse(circle(10, { x: 30, y: 30 })),
    reverse(annularSector(5, 15, 0.3, 1.2).map(v => vertex({ x: v.x + 60, y: v.y + 30 }, v.bulge))),
  ],
};

describe('readMaker', () => {
  test('makerjs’s own ring: two circles, area pi (R² - r²)', () => {
    const { regions } = readMaker(new makerjs.models.Ring(100, 50));
    expect(regions).toHaveLength(1);
    expect(area(regions[0]!)).toBeCloseTo(Math.PI * 7500, 9);
    expect(asCircle(regions[0]!.openings[0]!)).toMatchObject({ radius: expect.closeTo(50, 12) });
  });

  test('rounded rectangle, slot, bolt circle: areas by formula, holes recognised', () => {
    const model = {
      models: {
        frame: new makerjs.models.RoundRectangle(200, 120, 15),
        slot: makerjs.model.move(new makerjs.models.Slot([0, 0], [30, 0], 6), [20, 60]),
        bolts: makerjs.model.move(new makerjs.models.BoltCircle(20, 3, 6), [140, 60]),
      },
    };
    const { regions, report } = readMaker(model);
    expect(regions).toHaveLength(1);
    expect(regions[0]!.openings).toHaveLength(7);
    expect(regions[0]!.outer).toHaveLength(8);
    const exact = 200 * 120 - (4 - Math.PI) * 225 - (30 * 12 + Math.PI * 36) - 6 * Math.PI * 9;
    expect(area(regions[0]!)).toBeCloseTo(exact, 8);
    expect(report).toEqual({ gaps: [], doubled: [], stray: [], specks: [] });
  });

  test('origins add up, units are turned to mm', () => {
    const model: MakerModel = {
      units: makerjs.unitType.Inch,
      origin: [1, 0],
      models: { a: { origin: [1, 2], paths: { c: { type: 'circle', origin: [1, 0], radius: 0.5 } } } },
    };
    const round = asCircle(readMaker(model).regions[0]!.outer);
    expect(round).toEqual({
      center: { x: expect.closeTo(76.2, 12), y: expect.closeTo(50.8, 12) },
      radius: expect.closeTo(12.7, 12),
    });
  });

  test('a combined model (makerjs union) chains to one outline with its arcs', () => {
    const both = makerjs.model.combineUnion(
      new makerjs.models.Rectangle(40, 20),
      makerjs.model.move(new makerjs.models.Oval(30, 30), [25, -5]),
    );
    const { regions } = readMaker(both);
    expect(regions).toHaveLength(1);
    // 40 x 20 beside a disc of radius 15 about (40, 10): the disc's half to the right and its segments above and below the edge, by integration
    const judge = makerjs.measure.modelExtents(both)!;
    expect(Math.max(...regions[0]!.outer.map(v => v.y))).toBeLessThanOrEqual(judge.high[1]! + 1e-9);
    const half = Math.sqrt(225 - 100);
    const sliver = 225 * Math.acos(10 / 15) - 10 * half; // one circular segment above y = 20; Machinery's Handbook
    const inside = (Math.PI * 225 - 2 * sliver) / 2;
    expect(area(regions[0]!)).toBeCloseTo(800 + Math.PI * 225 - inside, 4);
  });

  test('unknown paths are told, broken ones refused by name', () => {
    expect(readMaker({ paths: { s: { type: 'spline', origin: [0, 0] } } }).skipped).toEqual([
      'model.paths.s: a path of type spline',
    ]);
    expect(() => readMaker({ paths: { s: { type: 'line', origin: [0, 0] } } })).toThrow(/model\.paths\.s\.end/);
    expect(() =>
      readMaker({ models: { a: { paths: { s: { type: 'circle', origin: [0, 0], radius: -1 } } } } }),
    ).toThrow(/model\.models\.a\.paths\.s\.radius is -1/);
    expect(() => readMaker({ units: 'cubit' })).toThrow(/model\.units is cubit; allowed: mm, cm, m, inch, foot/);
  });
});

describe('toMaker', () => {
  test('makerjs finds the chains, the sizes and the circle in it', () => {
    const model = toMaker([plate]) as makerjs.IModel;
    const chains = makerjs.model.findChains(model) as makerjs.IChain[];
    expect(chains).toHaveLength(3);
    expect(chains.every(c => c.endless)).toBe(true);
    expect(chains.reduce((t, c) => t + c.pathLength, 0)).toBeCloseTo(perimeter(plate), 9);
    expect(makerjs.measure.modelExtents(model)).toMatchObject({ low: [0, 0], high: [100, 60] });
  });

  test('out and in again: the same regions', () => {
    const piece = fc.record({
      inner: fc.double({ min: 20, max: 60, noNaN: true }),
      band: fc.double({ min: 5, max: 40, noNaN: true }),
      from: fc.double({ min: -3, max: 3, noNaN: true }),
      sweep: fc.double({ min: 0.1, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(piece, ({ inner, band, from, sweep }) => {
        const middle = polar(inner + band / 2, from + sweep / 2);
        const hole = reverse(circle(Math.min(band / 3, inner * sweep * 0.2), middle));
        const region = { outer: annularSector(inner, inner + band, from, sweep), openings: [hole] };
        const { regions, report } = readMaker(
          toMaker([
            region,
            {
              outer: polygon([
                { x: 500, y: 0 },
                { x: 510, y: 0 },
                { x: 500, y: 10 },
              ]),
              openings: [],
            },
          ]),
        );
        expect(regions).toHaveLength(2);
        expect(area(regions[0]!)).toBeCloseTo(area(region), 6);
        expect(perimeter(regions[0]!)).toBeCloseTo(perimeter(region), 6);
        expect(regions[0]!.outer.filter(v => v.bulge !== 0)).toHaveLength(2);
        expect(asCircle(regions[0]!.openings[0]!)).toBeDefined();
        expect(report).toEqual({ gaps: [], doubled: [], stray: [], specks: [] });
        expect(signedArea(regions[1]!.outer)).toBeCloseTo(50, 9);
      }),
      { numRuns: 300 },
    );
  });
});
