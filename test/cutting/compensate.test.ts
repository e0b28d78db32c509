import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { withMates } from '../../lib/geometry/mates.js';
import { area, length, signedArea } from '../../lib/geometry/measure.js';
import { offset } from '../../lib/geometry/offset.js';
import {
  asCircle,
  circle,
  type Outline,
  polygon,
  rectangle,
  reverse,
  solid,
  vertex,
} from '../../lib/geometry/outline.js';
import { segments } from '../../lib/geometry/segment.js';
import { felloe } from '../../lib/parts/felloe.js';
import { hubDisc } from '../../lib/parts/hub-disc.js';
import { BEAM, bar, plate, QUARTER_INCH, SAW } from './pieces.js';

const radii = (outline: Outline) =>
  segments(outline)
    .flatMap(s => (s.kind === 'arc' ? [s.radius] : []))
    .sort((a, b) => a - b);

test('an 8 in disc with a 15 mm bore and a 1/4 in cutter: circles of 101.6 + 3.175 and 7.5 - 3.175, one entity each', () => {
  const disc = hubDisc({ diameter: 203.2, bore: { kind: 'through', diameter: 15 }, thickness: 19.05, stock: 'ply' });
  const { value, findings } = cut(disc, QUARTER_INCH, 'router');
  expect(findings).toEqual([]);
  expect(value.first.outside).toHaveLength(1);
  expect(asCircle(value.first.outside[0]!)?.radius).toBeCloseTo(104.775, 12);
  expect(value.first.inside).toHaveLength(1);
  expect(asCircle(value.first.inside[0]!)?.radius).toBeCloseTo(4.325, 12);
  expect(signedArea(value.first.inside[0]!)).toBeLessThan(0);
  expect(asCircle(value.footprint[0]!.outer)?.radius).toBeCloseTo(107.95, 12);
});

test('a felloe stays at its four edges and a quarter circle round each corner, its arcs R + r and R - r', () => {
  const part = felloe({ outer: 381, inner: 273.05, thickness: 19.05, stock: 'plank', sweep: (2 * Math.PI) / 5 });
  const [outside, ...more] = cut(part, QUARTER_INCH, 'router').value.first.outside;
  expect(more).toEqual([]);
  expect(outside).toHaveLength(8);
  const expected = [3.175, 3.175, 3.175, 3.175, 269.875, 384.175];
  radii(outside!).forEach((r, i) => {
    expect(Math.abs(r - expected[i]!)).toBeLessThan(1e-9);
  });
});

test('by hand, outlines stay finished; the footprint is the saw cut all round', () => {
  const part = plate({ outer: rectangle(0, 0, 80, 50), openings: [reverse(circle(1, { x: 40, y: 25 }))] });
  const { value, findings } = cut(part, SAW, 'hand');
  expect(findings).toEqual([]);
  expect(value.first.outside).toEqual([part.region.outer]);
  expect(value.first.inside).toEqual(part.region.openings);
  expect(area(value.footprint[0]!)).toBeCloseTo(80 * 50 + 2 * (80 + 50) * 3.2 + Math.PI * 3.2 ** 2, 8);
});

const anySector = fc.record({
  inner: fc.double({ min: 40, max: 400, noNaN: true }),
  band: fc.double({ min: 10, max: 100, noNaN: true }),
  count: fc.integer({ min: 3, max: 24 }),
  diameter: fc.double({ min: 0.1, max: 10, noNaN: true }),
});

test('Steiner: the tool-centre outline of an outline without inside corners encloses A + P r + pi r²', () => {
  fc.assert(
    fc.property(anySector, ({ inner, band, count, diameter }) => {
      const sweep = (2 * Math.PI) / count;
      const part = felloe({ outer: inner + band, inner, sweep, thickness: 10, stock: 'ply' });
      const r = diameter / 2;
      const { outside } = cut(part, { kind: 'router', diameter }, 'router').value.first;
      const finished = area(part.region);
      const steiner = finished + length(part.region.outer) * r + Math.PI * r * r;
      expect(Math.abs(signedArea(outside[0]!) / steiner - 1)).toBeLessThan(1e-9);
      // and the cut's other side is the finished outline
      expect(Math.abs(area(offset([solid(outside[0]!)], -r)[0]!) / finished - 1)).toBeLessThan(1e-9);
    }),
  );
});

test('an opening as wide as the cutter or narrower is a stop with both widths', () => {
  const part = plate({ outer: circle(50), openings: [reverse(circle(3))] });
  const { value, findings } = cut(part, QUARTER_INCH, 'router');
  expect(findings).toMatchObject([{ level: 'stop', rule: 'narrow-opening', where: 'plate', value: 6, limit: 6.35 }]);
  expect(value.first.inside).toEqual(part.region.openings);
  expect(cut(part, { kind: 'router', diameter: 5.99 }, 'router').findings).toEqual([]);
});

test('an opening whose neck or slot the cutter does not get into is a stop that says what would', () => {
  const neck = polygon(
    [
      [0, 0],
      [30, 0],
      [30, 10],
      [50, 10],
      [50, 0],
      [80, 0],
      [80, 30],
      [50, 30],
      [50, 15],
      [30, 15],
      [30, 30],
      [0, 30],
    ].map(([x, y]) => ({ x: x! - 40, y: y! - 15 })),
  );
  const slot = polygon(
    [
      [0, 0],
      [30, 0],
      [30, 10],
      [50, 10],
      [50, 15],
      [30, 15],
      [30, 30],
      [0, 30],
    ].map(([x, y]) => ({ x: x! - 20, y: y! - 15 })),
  );
  for (const hole of [neck, slot]) {
    const part = plate({ outer: circle(100), openings: [reverse(hole)] });
    const [finding, ...more] = cut(part, QUARTER_INCH, 'router').findings.filter(f => f.level === 'stop');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'narrow-opening', limit: 6.35 });
    expect(finding!.value).toBeGreaterThan(4.95);
    expect(finding!.value).toBeLessThanOrEqual(5.15);
    expect(cut(part, { kind: 'router', diameter: 4.9 }, 'router').findings.filter(f => f.level === 'stop')).toEqual([]);
  }
});

const notched = (width: number) =>
  polygon(
    [
      [0, 0],
      [100, 0],
      [100, 40],
      [50 + width / 2, 40],
      [50 + width / 2, 20],
      [50 - width / 2, 20],
      [50 - width / 2, 40],
      [0, 40],
    ].map(([x, y]) => ({ x: x!, y: y! })),
  );

test('square inside corners keep r / sin 45° - r of wood: a note, none where it does not matter', () => {
  const part = plate(solid(notched(20)));
  const [note, ...more] = cut(part, QUARTER_INCH, 'router').findings;
  expect(more).toEqual([]);
  expect(note).toMatchObject({ level: 'note', rule: 'inside-corner', where: 'plate' });
  expect(note!.value).toBeCloseTo(3.175 * (Math.SQRT2 - 1), 12);
  expect(note!.message).toContain('2 inside corners');
  expect(cut(part, BEAM, 'laser').findings).toEqual([]);
  expect(cut(bar(), QUARTER_INCH, 'router').findings).toEqual([]);
});

test('a notch narrower than the cutter: a warning, or a stop where another piece meets', () => {
  const narrow = plate(solid(notched(6)));
  const rules = (part: typeof narrow) =>
    cut(part, QUARTER_INCH, 'router').findings.flatMap(f => (f.level === 'note' ? [] : [[f.level, f.rule]]));
  expect(rules(narrow)).toEqual([['warn', 'cutter-too-wide']]);
  const mating = (edge: number) => plate(solid(withMates(notched(6), 'lap', [edge])));
  expect(rules(mating(4))).toEqual([['stop', 'cutter-too-wide']]);
  expect(rules(mating(0))).toEqual([['warn', 'cutter-too-wide']]);
  expect(rules(plate(solid(notched(6.4))))).toEqual([]);
});

test('a hollow of a smaller radius than the cutter is a warning with both radii', () => {
  const scooped = solid([
    vertex({ x: 0, y: 0 }),
    vertex({ x: 40, y: 0 }),
    vertex({ x: 40, y: 20 }),
    vertex({ x: 22, y: 20 }, -1),
    vertex({ x: 18, y: 20 }),
    vertex({ x: 0, y: 20 }),
  ]);
  const [finding] = cut(plate(scooped), QUARTER_INCH, 'router').findings.filter(f => f.level === 'warn');
  expect(finding).toMatchObject({ rule: 'tight-radius', value: 2, limit: 3.175, place: { part: 'plate' } });
  expect(finding!.place!.at.x).toBeCloseTo(20, 9);
  expect(finding!.place!.at.y).toBeCloseTo(18, 9);
});

test('a cutter that does not reach through is a stop naming cutter.reach', () => {
  const thick = plate(solid(circle(40)), { thickness: 19.05 });
  const short = { kind: 'router', diameter: 6.35, reach: 19 } as const;
  expect(cut(thick, short, 'router').findings).toMatchObject([
    { level: 'stop', rule: 'cutter-reach', where: 'cutter.reach', value: 19, limit: 19.05 },
  ]);
  expect(cut(thick, short, 'router', { field: 'stock.ply.cutter' }).findings).toMatchObject([
    {
      where: 'stock.ply.cutter.reach',
      message: expect.stringContaining('a cutter that reaches 19.05 mm, or plate of stock no thicker than 19 mm'),
    },
  ]);
  expect(cut(thick, { ...short, reach: 19.05 }, 'router').findings).toEqual([]);
  expect(cut(thick, short, 'hand').findings).toEqual([]);
});
