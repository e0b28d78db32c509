import { describe, expect, test } from 'vitest';
import { locate } from '../../lib/geometry/locate.js';
import { area } from '../../lib/geometry/measure.js';
import { asCircle, circle, rectangle, reverse, solid, vertex } from '../../lib/geometry/outline.js';
import { hardTemplate, sideTemplate } from '../../lib/parts/hard-template.js';
import { lapLines } from '../../lib/parts/lap-lines.js';
import type { Drill, Feature, Part, Pocket } from '../../lib/parts/part.js';
import { near } from '../close.js';

/** A half lap across a bar, and a blind recess in its back. */
const lap: Pocket = {
  kind: 'pocket',
  face: 'front',
  depth: 9,
  area: solid(rectangle(40, 0, 70, 60)),
  beyond: solid(rectangle(40, -10, 70, 70)),
};
const recess = solid(rectangle(120, 20, 150, 40));
const back: Pocket = { kind: 'pocket', face: 'back', depth: 5, area: recess, beyond: recess };
const screw: Feature = { kind: 'drill', at: { x: 20, y: 30 }, diameter: 8, from: 'back', depth: 10 };

const bar: Part = {
  id: 'bar',
  kind: 'spoke',
  name: 'Bar',
  quantity: 3,
  stock: 'plank',
  thickness: 18,
  grain: 0,
  region: {
    outer: rectangle(0, 0, 200, 60),
    openings: [reverse(circle(10, { x: 95, y: 30 })), reverse(rectangle(170, 20, 180, 40))],
  },
  features: [lap, back, screw],
};

const laser = { stock: 'hardboard', thickness: 3, kerf: 0.2 };
const router = { ...laser, kerf: 3 };
const drills = (p: Part): Drill[] => p.features.flatMap(f => (f.kind === 'drill' ? [f] : []));
const scores = (p: Part) => p.features.flatMap(f => (f.kind === 'score' ? [f.line] : []));
const at = (p: Part, x: number, y: number) => drills(p).some(d => Math.hypot(d.at.x - x, d.at.y - y) < 1e-9);

describe('lap lines', () => {
  test('of a half lap are its two walls; of a recess, all round', () => {
    expect(lapLines(bar, lap).map(l => l.line.map(v => [v.x, v.y]))).toEqual([
      [
        [70, 0],
        [70, 60],
      ],
      [
        [40, 60],
        [40, 0],
      ],
    ]);
    expect(lapLines(bar, back)).toMatchObject([{ closed: true }]);
  });
});

describe('a template for a laser', () => {
  const made = hardTemplate(bar, laser);

  test('is of the thin board, one of it, and any way round', () => {
    expect(made).toMatchObject({ id: 'bar', quantity: 1, stock: 'hardboard', thickness: 3 });
    expect(made.grain).toBeUndefined();
  });

  test('has a notch of 3 x 3 mm at each end of a lap line, its point on the line', () => {
    // four triangles of 4.5 mm2 from the bar with its slot; the round opening is only marked
    near(area(made.region), 200 * 60 - 10 * 20 - 4 * 4.5);
    for (const x of [40, 70]) {
      expect(made.region.outer.some(v => Math.hypot(v.x - x, v.y - 3) < 1e-9)).toBe(true);
      expect(locate(made.region, { x, y: 2.9 })).toBe('outside');
      expect(locate(made.region, { x, y: 57.1 })).toBe('outside');
    }
  });

  test('pricks middles of holes and bores and corners inside, 1 mm', () => {
    expect(drills(made).every(d => d.diameter === 1 && d.from === 'through' && d.depth === 3)).toBe(true);
    const points = [95, 30, 20, 30, 120, 20, 150, 20, 150, 40, 120, 40];
    for (let i = 0; i < points.length; i += 2) expect(at(made, points[i]!, points[i + 1]!)).toBe(true);
    expect(drills(made)).toHaveLength(6);
  });

  test('marks the bore, lap lines of the front whole, of the back in dashes', () => {
    const lines = scores(made);
    expect(lines.filter(l => l.length === 3 && asCircle(l.slice(0, 2)))).toHaveLength(1);
    expect(lines.filter(l => l.length === 2 && l[0]!.x === 40 && l[1]!.x === 40)).toHaveLength(1);
    const dashed = lines.filter(l => l.every(v => v.x >= 120 && v.x <= 150));
    expect(dashed.length).toBeGreaterThan(10);
  });
});

test("a router's bit cuts no notch: a hole stands on the lap line, 4 mm inside", () => {
  const made = hardTemplate(bar, router);
  near(area(made.region), 200 * 60 - 10 * 20);
  for (const x of [40, 70]) for (const y of [4, 56]) expect(at(made, x, y)).toBe(true);
  expect(drills(made).every(d => d.diameter === 2)).toBe(true);
});

test('holes leave wood between them: of two in one place there is one', () => {
  const twice = { ...bar, features: [screw, { ...screw, diameter: 4, at: { x: 20.5, y: 30 } }] };
  expect(drills(hardTemplate(twice, laser))).toHaveLength(2);
});

test('a turned piece has one for its second side, another has none', () => {
  const outline = rectangle(0, 0, 200, 18);
  const marks = [[vertex({ x: 100, y: 0 }), vertex({ x: 100, y: 18 })]];
  const side = sideTemplate({ ...bar, side: { outline, marks } }, laser);
  expect(side).toMatchObject({ id: 'bar-side', thickness: 3, region: { outer: outline } });
  expect(scores(side!)).toEqual(marks);
  expect(sideTemplate(bar, laser)).toBeUndefined();
});
