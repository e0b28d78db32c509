import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import type { Relief } from '../../lib/cutting/relief.js';
import { difference, intersection } from '../../lib/geometry/boolean.js';
import { distanceToSegment } from '../../lib/geometry/locate.js';
import { withMates } from '../../lib/geometry/mates.js';
import { area } from '../../lib/geometry/measure.js';
import { offset } from '../../lib/geometry/offset.js';
import { type Outline, polygon, type Region, rectangle, reverse, solid, vertex } from '../../lib/geometry/outline.js';
import { distance, type Point } from '../../lib/geometry/point.js';
import { segments } from '../../lib/geometry/segment.js';
import type { Part, Pocket } from '../../lib/parts/part.js';
import type { Cutter } from '../../lib/stock/stock.js';
import { near } from '../close.js';
import { BEAM, bar, plate, QUARTER_INCH, SAW } from './pieces.js';

const R = 3.175;
const SIX: Cutter = { kind: 'router', diameter: 6 };

/** A plate 100 x 60 with a notch from above, 20 wide and 25 deep, tagged all round. */
const notched = (width = 20, mates: readonly number[] = [3, 4, 5]): Part =>
  plate(
    solid(
      withMates(
        polygon(
          [
            [0, 0],
            [100, 0],
            [100, 60],
            [50 + width / 2, 60],
            [50 + width / 2, 35],
            [50 - width / 2, 35],
            [50 - width / 2, 60],
            [0, 60],
          ].map(([x, y]) => ({ x: x!, y: y! })),
        ),
        'slot',
        mates,
      ),
    ),
  );

const outside = (part: Part, relief: Relief, cutter = QUARTER_INCH): Outline =>
  cut(part, cutter, 'router', { relief }).value.first.outside[0]!;

/** What the cutter leaves of a board. */
const left = (centres: Outline, radius: number): Region[] => offset([solid(centres)], -radius);

const nearest = (outline: Outline, p: Point): number =>
  Math.min(...segments(outline).map(s => distanceToSegment(s, p)));

test('at a right angle the centre goes on by r (sqrt 2 - 1) along the bisector: the cutter just covers the corner', () => {
  const centres = outside(notched(), 'bisector');
  const at = { x: 40, y: 35 };
  near(nearest(centres, at), R);
  const tip = { x: 40 + R / Math.SQRT2, y: 35 + R / Math.SQRT2 };
  expect(Math.min(...centres.map(v => distance(v, tip)))).toBeLessThan(1e-9);
  // the plane geometry of one relief: the cap of r beyond each wall, r² (pi / 4 - 1 / 2)
  const overcut = area(notched().region) - area(left(centres, R)[0]!);
  expect(Math.abs(overcut - 2 * 2 * R * R * (Math.PI / 4 - 1 / 2))).toBeLessThan(0.02);
});

test('to the side only the shorter wall is cut into, and the corner is square', () => {
  const centres = outside(notched(), 'side');
  const [wood] = left(centres, R);
  // the notch is 25 deep and 20 wide: its floor is the shorter wall, its sides stay to the last micrometre
  const gone = difference([notched().region], [wood!]);
  expect(gone).toHaveLength(2);
  for (const g of gone) for (const v of g.outer) expect(v.y).toBeLessThanOrEqual(35 + 1e-9);
  for (const x of [40, 60]) near(nearest(centres, { x, y: 35 }), R);
  expect(Math.abs(area(gone[0]!) - (Math.PI * R * R) / 2)).toBeLessThan(0.2);
});

test('none, a laser and hands leave corners as they are', () => {
  const plain = outside(notched(), 'none');
  expect(plain).toHaveLength(8 + 6); // an arc about each of the six corners that stand out
  const part = notched();
  const laser = (relief: Relief) => cut(part, BEAM, 'laser', { relief }).value.first.outside;
  expect(laser('bisector')).toEqual(laser('none'));
  expect(cut(part, SAW, 'hand', { relief: 'bisector' }).value.first.outside).toEqual([part.region.outer]);
  expect(cut(part, QUARTER_INCH, 'router').value.first.outside).toEqual([outside(part, 'bisector')]);
});

test('the note about inside corners is told of those that stay', () => {
  const findings = (mates: readonly number[], relief: Relief) =>
    cut(notched(20, mates), QUARTER_INCH, 'router', { relief }).findings;
  expect(findings([3, 4, 5], 'bisector')).toEqual([]);
  expect(findings([3], 'bisector')[0]!.message).toContain('1 inside corner');
  expect(findings([3, 4, 5], 'none')[0]!.message).toContain('2 inside corners');
  expect(findings([], 'bisector')[0]!.message).toContain('2 inside corners');
});

test('edges keep their carriers and tags; a spur has none', () => {
  const plain = outside(notched(), 'none');
  const spurred = outside(notched(), 'bisector');
  for (const s of segments(spurred)) {
    const on = segments(plain).some(p => distanceToSegment(p, s.from) < 1e-9 && distanceToSegment(p, s.to) < 1e-9);
    if (!on) expect(spurred.find(v => v.x === s.from.x && v.y === s.from.y)!.mate).toBeUndefined();
  }
  expect(spurred.filter(v => v.mate === 'slot')).toHaveLength(3);
});

/** An opening whose walls meet at an angle, one of them an arc, far from anything else. */
const wedge = (angle: number, bulge: number): Outline => {
  const to = { x: 60 * Math.cos(angle), y: 60 * Math.sin(angle) };
  return withMates([vertex({ x: 0, y: 0 }), vertex({ x: 60, y: 0 }), vertex(to, bulge)], 'slot', [0, 2]);
};

const anyWedge = fc.record({
  angle: fc.double({ min: 0.7, max: 2.6, noNaN: true }),
  bulge: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
  relief: fc.constantFrom<Relief>('bisector', 'side'),
  radius: fc.double({ min: 0.5, max: 4, noNaN: true }),
});

test('at any angle, with a curved wall, the corner itself is reached and no more than a cutter round it is taken', () => {
  fc.assert(
    fc.property(anyWedge, ({ angle, bulge, relief, radius }) => {
      const hole = wedge(angle, bulge);
      const part = plate({ outer: rectangle(-200, -200, 200, 200), openings: [reverse(hole)] });
      const { value, findings } = cut(part, { kind: 'router', diameter: 2 * radius }, 'router', { relief });
      if (findings.some(f => f.level === 'stop')) return;
      const [centres] = value.first.inside;
      expect(Math.abs(nearest(centres!, { x: 0, y: 0 }) - radius)).toBeLessThan(1e-6);
      const over = difference(offset([solid(reverse(centres!))], radius), [solid(hole)]);
      for (const v of over.flatMap(r => r.outer)) {
        const reach = Math.min(...[hole[0]!, hole[1]!, hole[2]!].map(c => distance(c, v)));
        if (reach > 2 * radius + 0.1) expect(nearest(hole, v)).toBeLessThan(1e-6);
      }
    }),
  );
});

test('to the side along an arc the cutter stays on the arc', () => {
  // the arc wall is the longer one: its carrier's centre and radius
  const hole = withMates(
    [vertex({ x: 0, y: 0 }), vertex({ x: 20, y: 0 }), vertex({ x: 20, y: 50 }), vertex({ x: 0, y: 50 }, -0.1)],
    'slot',
    [0, 3],
  );
  const arc = segments(hole)[3]!;
  if (arc.kind !== 'arc') throw new Error('no arc');
  const part = plate({ outer: rectangle(-100, -100, 100, 100), openings: [reverse(hole)] });
  const [centres] = cut(part, SIX, 'router', { relief: 'side' }).value.first.inside;
  const walls = segments(centres!).filter(s => s.kind === 'arc');
  expect(walls).toHaveLength(1);
  const [wall] = walls;
  if (wall?.kind !== 'arc') throw new Error('no arc');
  expect(distance(wall.center, arc.center)).toBeLessThan(1e-8);
  near(wall.radius, arc.radius + 3);
  // it ends over the corner, square to the arc
  near(Math.min(distance(wall.from, hole[0]!), distance(wall.to, hole[0]!)), 3);
});

test('a slot hardly wider than the cutter: both corners of its floor, however close', () => {
  for (const width of [6.0001, 6.004, 6.15])
    for (const relief of ['bisector', 'side'] as const) {
      const centres = outside(notched(width), relief, SIX);
      for (const x of [50 - width / 2, 50 + width / 2]) near(nearest(centres, { x, y: 35 }), 3);
      expect(left(centres, 3)).toHaveLength(1);
    }
});

const pocketed = (to: number, beyond: number, from = 40): Part =>
  bar({
    kind: 'pocket',
    face: 'front',
    depth: 5,
    area: solid(withMates(rectangle(from, -8, to, 8), 'lap', [0, 2, 3])),
    beyond: solid(withMates(rectangle(from, -8, beyond, 8), 'lap', [0, 2, 3])),
  });

test('a pocket grows by the relief of its corners in the wood, not of those at an open edge', () => {
  const part = pocketed(100, 200);
  const [pocket] = cut(part, SIX, 'router').value.first.pockets;
  const [plain] = cut(part, SIX, 'router', { relief: 'none' }).value.first.pockets;
  const grown = difference([pocket!.area], [plain!.area]);
  expect(grown).toHaveLength(4); // a cap at both walls of two corners
  for (const cap of grown) expect(Math.abs(area(cap) - 3.05 ** 2 * (Math.PI / 4 - 1 / 2))).toBeLessThan(0.05);
  expect(difference([plain!.area], [pocket!.area])).toEqual([]);
  // a cutter kept inside the area reaches the corners, and has a little room to
  const reached = offset(offset([pocket!.area], -3.04), 3.04);
  const square = intersection([solid(rectangle(40, -8, 60, 8))], reached);
  expect(Math.abs(square.reduce((sum, r) => sum + area(r), 0) - 20 * 16)).toBeLessThan(1e-6);
  expect(cut(part, SIX, 'router').findings).toEqual([]);
});

test('relief that would cut through the wood is left out and told with its place', () => {
  const slotted = (gap: number): Part =>
    plate({
      outer: rectangle(0, 0, 100, 60),
      openings: [reverse(withMates(rectangle(20, gap, 60, 30), 'slot', [0, 1, 2, 3]))],
    });
  // into a wall, (1 - 1 / sqrt 2) r = 0.93 mm
  expect(cut(slotted(1), QUARTER_INCH, 'router').findings).toEqual([]);
  const { value, findings } = cut(slotted(0.9), QUARTER_INCH, 'router');
  expect(findings.map(f => f.rule)).toEqual(['inside-corner', 'relief-through', 'relief-through']);
  expect(findings[1]).toMatchObject({ level: 'warn', where: 'plate', place: { part: 'plate', at: { y: 0.9 } } });
  const [centres] = value.first.inside;
  near(nearest(centres!, { x: 20, y: 0.9 }), R * Math.SQRT2);
  near(nearest(centres!, { x: 20, y: 30 }), R);
});

test('relief to the side that would come out goes along the bisector', () => {
  const slotted = (wall: number): Part =>
    plate({
      outer: rectangle(0, 0, 100, 60),
      openings: [reverse(withMates(rectangle(wall, 20, 20, 60 - 5), 'slot', [0, 1, 2, 3]))],
    });
  // the upper and lower walls are the shorter ones: 5 mm are left over the upper, a radius is taken
  expect(cut(slotted(5), QUARTER_INCH, 'router', { relief: 'side' }).findings).toEqual([]);
  const thin = plate({
    outer: rectangle(0, 0, 100, 60),
    openings: [reverse(withMates(rectangle(20, 20, 40, 57.5), 'slot', [0, 1, 2, 3]))],
  });
  const { value, findings } = cut(thin, QUARTER_INCH, 'router', { relief: 'side' });
  expect(findings).toEqual([]);
  const [centres] = value.first.inside;
  const has = (x: number, y: number) =>
    expect(Math.min(...centres!.map(v => distance(v, { x, y })))).toBeLessThan(1e-9);
  has(20 + R, 20);
  has(20 + R / Math.SQRT2, 57.5 - R / Math.SQRT2);
});

test('two reliefs that would meet in the wood between them: one stays', () => {
  const thin = (wall: number): Part => {
    const slot = (x: number): Outline => reverse(withMates(rectangle(x, 10, x + 20, 50), 'slot', [0, 1, 2, 3]));
    return plate({ outer: rectangle(0, 0, 100, 60), openings: [slot(10), slot(30 + wall)] });
  };
  const through = (wall: number) =>
    cut(thin(wall), QUARTER_INCH, 'router').findings.filter(f => f.rule === 'relief-through').length;
  expect([2, 1.8, 0.9].map(through)).toEqual([0, 2, 4]);
});

test('a pocket near a hole or over another pocket keeps its wood', () => {
  const well = (y: number, face: 'front' | 'back' = 'front', depth = 5): Pocket => {
    const area = solid(withMates(rectangle(20, y, 40, y + 8), 'key', [0, 1, 2, 3]));
    return { kind: 'pocket', face, depth, area, beyond: area };
  };
  const told = (...features: Part['features']) =>
    cut(bar(...features), SIX, 'router').findings.filter(f => f.rule === 'relief-through').length;
  expect(told(well(-8.5), well(0.2))).toBe(4);
  expect(told(well(-8.5), well(0.2, 'back', 4))).toBe(0);
  expect(told(well(-8.5), well(0.2, 'back', 5))).toBe(4);
  const hole = { kind: 'drill', at: { x: 44.5, y: -5.9 }, diameter: 8, from: 'through', depth: 10 } as const;
  expect(told(well(-8))).toBe(0);
  expect(told(well(-8), hole)).toBe(1);
});
