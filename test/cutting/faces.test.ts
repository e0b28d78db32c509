import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { intersection } from '../../lib/geometry/boolean.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { offset } from '../../lib/geometry/offset.js';
import { asCircle, circle, polygon, rectangle, solid } from '../../lib/geometry/outline.js';
import type { Drill, Label, Pocket, Score } from '../../lib/parts/part.js';
import { near } from '../close.js';
import { BEAM, bar, lap, QUARTER_INCH, SAW, well } from './pieces.js';

const hole = (from: Drill['from'], diameter = 8): Drill => ({
  kind: 'drill',
  at: { x: 20, y: 5 },
  diameter,
  from,
  depth: from === 'through' ? 10 : 3,
});
const mark = (face: Score['face']): Score => ({
  kind: 'score',
  face,
  line: [
    { x: 70, y: 0, bulge: 0 },
    { x: 80, y: 5, bulge: 0 },
  ],
});
const label: Label = { kind: 'label', text: 'A1', at: { x: 30, y: 2 }, height: 5, turn: 0.3 };

test('a lap runs past both edges by the whole cutter, a well stays as it is', () => {
  const pockets = cut(bar(lap(), well(circle(5, { x: 80, y: 0 }))), QUARTER_INCH, 'router').value.first.pockets;
  expect(pockets.map(p => p.depth)).toEqual([5, 4]);
  expect(bounds(pockets[0]!.area.outer)).toEqual({ minX: 40, minY: -16.35, maxX: 60, maxY: 16.35 });
  expect(asCircle(pockets[1]!.area.outer)).toEqual({ center: { x: 80, y: 0 }, radius: 5 });
});

const anyLap = fc.record({
  width: fc.double({ min: 7, max: 40, noNaN: true }),
  slant: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
  diameter: fc.double({ min: 1, max: 6.9, noNaN: true }),
});

test('the cutter clears every corner of a lap across a bar at any slant without leaving the area', () => {
  fc.assert(
    fc.property(anyLap, ({ width, slant, diameter }) => {
      const half = width / 2 / Math.cos(slant);
      const edge = (side: number, y: number) => ({ x: 50 + side * half + y * Math.tan(slant), y });
      const strip = (h: number) => solid(polygon([edge(-1, -h), edge(1, -h), edge(1, h), edge(-1, h)]));
      const pocket: Pocket = { kind: 'pocket', face: 'front', depth: 5, area: strip(10), beyond: strip(200) };
      const { value, findings } = cut(bar(pocket), { kind: 'router', diameter }, 'router');
      expect(findings).toEqual([]);
      const clear = value.first.pockets.map(p => p.area);
      const reached = offset(offset(clear, -diameter / 2), diameter / 2);
      const cleared = intersection(reached, [pocket.area]).reduce((sum, r) => sum + area(r), 0);
      expect(Math.abs(cleared / area(pocket.area) - 1)).toBeLessThan(1e-9);
    }),
  );
});

test('a pocket narrower than the cutter is a stop that says what fits', () => {
  const { findings } = cut(bar(lap('front', 40, 46)), QUARTER_INCH, 'router');
  expect(findings).toMatchObject([{ level: 'stop', rule: 'narrow-pocket', where: 'bar', limit: 6.35 }]);
  expect(findings[0]!.value).toBeGreaterThan(5.95);
  expect(findings[0]!.value).toBeLessThanOrEqual(6);
  expect(cut(bar(lap('front', 40, 46.5)), QUARTER_INCH, 'router').findings).toEqual([]);
});

test('a part worked from the back lies face down: everything mirrored, lettering reads right', () => {
  const { value } = cut(bar(lap('back'), hole('through'), label), QUARTER_INCH, 'router');
  expect(value.second).toBeUndefined();
  expect(value.first.face).toBe('back');
  const { minX, maxX } = bounds(value.first.outside[0]!);
  near(minX, -103.175);
  near(maxX, 3.175);
  expect(bounds(value.first.pockets[0]!.area.outer)).toMatchObject({ minX: -60, maxX: -40 });
  expect(value.first.drills).toEqual([{ at: { x: -20, y: 5 }, diameter: 8 }]);
  expect(value.first.labels).toEqual([{ ...label, at: { x: -30, y: 2 }, turn: -0.3 }]);
  expect(bounds(value.finished.outer)).toEqual({ minX: -100, minY: -10, maxX: 0, maxY: 10 });
});

test('a part worked on both faces gets its profile and through holes on the first, and each face its own', () => {
  const { value } = cut(
    bar(lap('front'), well(circle(6, { x: 10, y: 0 }), 'back'), hole('through'), hole('back', 5), mark('back'), label),
    QUARTER_INCH,
    'router',
  );
  const { first, second } = value;
  expect([first.face, second?.face]).toEqual(['front', 'back']);
  expect([first.outside.length, second?.outside.length, second?.inside.length]).toEqual([1, 0, 0]);
  expect(first.drills).toEqual([{ at: { x: 20, y: 5 }, diameter: 8 }]);
  expect(second?.drills).toEqual([{ at: { x: -20, y: 5 }, diameter: 5 }]);
  expect(second?.pockets.map(p => asCircle(p.area.outer)?.center.x)).toEqual([-10]);
  expect([first.scores.length, second?.scores.length]).toEqual([0, 1]);
  expect(second!.scores[0]![1]).toMatchObject({ x: -80, y: 5 });
  expect([first.labels.length, second?.labels.length]).toEqual([1, 0]);
});

test('a laser cuts holes out, so their circles are the kerf smaller; what does not go through it can only mark', () => {
  const { value, findings } = cut(bar(hole('through'), hole('front', 5), lap()), BEAM, 'laser');
  expect(value.first.drills).toEqual([{ at: { x: 20, y: 5 }, diameter: 7.8 }]);
  expect(value.first.pockets).toEqual([]);
  expect(value.first.scores.map(s => s.length)).toEqual([5, 3]);
  expect(value.first.scores[0]![0]).toEqual(value.first.scores[0]![4]);
  expect(findings.map(f => [f.level, f.rule, f.value])).toEqual([
    ['warn', 'laser-pocket', 5],
    ['warn', 'laser-pocket', 3],
  ]);
});

test('a hole no wider than the kerf is a stop', () => {
  expect(cut(bar(hole('through', 0.2)), BEAM, 'laser').findings).toMatchObject([
    { level: 'stop', rule: 'narrow-hole', value: 0.2, limit: 0.2 },
  ]);
});

test('by hand a lap is drawn as it is finished and a hole at its diameter', () => {
  const part = bar(lap(), hole('through'));
  const { value, findings } = cut(part, SAW, 'hand');
  expect(findings).toEqual([]);
  expect(value.first.pockets).toEqual([{ depth: 5, area: solid(rectangle(40, -10, 60, 10)) }]);
  expect(value.first.drills[0]!.diameter).toBe(8);
});

test('square corners of a well keep wood, those of a lap lie in the open', () => {
  const { findings } = cut(bar(lap(), well(rectangle(75, -5, 90, 5))), QUARTER_INCH, 'router');
  expect(findings).toMatchObject([{ level: 'note', rule: 'inside-corner', where: 'bar' }]);
  expect(findings[0]!.message).toContain('1.32 mm of wood in 4 inside corners of a pocket');
});

test('nothing a cutter touches with the first face up lies outside the footprint', () => {
  const { value } = cut(bar(lap(), lap('front', 0, 12)), QUARTER_INCH, 'router');
  for (const { area: pocket } of value.first.pockets) {
    const inside = intersection([pocket], value.footprint).reduce((sum, r) => sum + area(r), 0);
    expect(inside).toBeCloseTo(area(pocket), 6);
  }
});
