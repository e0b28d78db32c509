import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { locate } from '../../lib/geometry/locate.js';
import { area, bounds, centroid } from '../../lib/geometry/measure.js';
import { movePoint, moveRegion } from '../../lib/geometry/motion.js';
import { reverse, solid } from '../../lib/geometry/outline.js';
import type { Point } from '../../lib/geometry/point.js';
import type { Model, Piece } from '../../lib/models/model.js';
import { waterWheel } from '../../lib/models/water-wheel.js';
import type { WaterWheelOptions } from '../../lib/models/water-wheel-options.js';
import type { Part } from '../../lib/parts/part.js';
import type { Stock } from '../../lib/stock/stock.js';
import { degrees } from '../../lib/units/length.js';

const sheet = (name: string, thickness: number): Stock => ({
  name,
  kind: 'sheet',
  width: 1220,
  length: 2440,
  thickness,
  true: 0,
  margin: 5,
});
const stock = [sheet('ply', 18), sheet('thin', 12), sheet('leaf', 6)];

const RAKE = degrees(12);
const MILL: WaterWheelOptions = {
  rim: { outside: 900, band: 100, felloes: 6, stock: 'ply' },
  paddles: { count: 12, rake: RAKE, depth: 150, stock: 'thin' },
  spokes: { count: 6, width: 50, stock: 'ply' },
  hub: { diameter: 190, bore: { axle: 25 }, stock: 'ply' },
  axle: { length: 260 },
  method: 'router',
};

function built(options: WaterWheelOptions): Model {
  const { value, findings } = waterWheel(options, stock);
  if (!value || findings.some(f => f.level === 'stop')) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}

const partOf = (model: Model, piece: Piece): Part => model.parts.find(p => p.id === piece.part)!;
const pieces = (model: Model, kind: Part['kind']): Piece[] => model.pieces.filter(p => partOf(model, p).kind === kind);

/** Middles of all slots of a rim, as the wheel sees them, and their areas. */
function slots(model: Model, z: number): { readonly at: Point; readonly area: number }[] {
  return pieces(model, 'felloe')
    .filter(p => p.z === z)
    .flatMap(piece =>
      moveRegion(partOf(model, piece).region, piece).openings.map(o => {
        const region = solid(reverse(o));
        return { at: centroid(region), area: area(region) };
      }),
    );
}

const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 1e-6;

/** Where tabs come through: the middles of their ends, the paddle stood up, turned and moved. */
function tabEnds(model: Model): Point[] {
  const [paddle] = pieces(model, 'paddle');
  const part = partOf(model, paddle!);
  const { maxY } = bounds(part.region.outer);
  const ends = part.region.outer.flatMap((v, i) => {
    const next = part.region.outer[(i + 1) % part.region.outer.length]!;
    return Math.abs(v.y - maxY) < 1e-9 && Math.abs(next.y - maxY) < 1e-9 ? [(v.x + next.x) / 2] : [];
  });
  return pieces(model, 'paddle').flatMap(piece => ends.map(x => movePoint({ x, y: -part.thickness / 2 }, piece)));
}

describe('slots', () => {
  const mill = built(MILL);

  test('every tab has one slot in each rim, the fit larger than itself', () => {
    const ends = tabEnds(mill);
    expect(ends).toHaveLength(24);
    for (const z of [0, 18 + 260]) {
      const found = slots(mill, z);
      expect(found).toHaveLength(24);
      for (const end of ends) expect(found.filter(s => near(s.at, end))).toHaveLength(1);
    }
    const paddle = partOf(mill, pieces(mill, 'paddle')[0]!);
    // both ends have two tabs as long as the rims are thick
    const tab = (area(paddle.region) - 150 * 260) / 4 / 18;
    for (const s of slots(mill, 0)) expect(s.area).toBeCloseTo((tab + 0.2) * 12.2, 6);
  });

  test('a paddle passes through the middle of the band at its angle, leaning by the rake', () => {
    const [first] = pieces(mill, 'paddle');
    const at = first!.turn - RAKE - Math.PI / 2;
    const through = movePoint({ x: 0, y: -6 }, first!);
    // 400 mm from the centre, anticlockwise from up
    expect(through.x).toBeCloseTo(-400 * Math.sin(at), 9);
    expect(through.y).toBeCloseTo(400 * Math.cos(at), 9);
    // a point u along it lies at r² = m² + u² + 2 m u cos(rake), cosine rule
    const tip = movePoint({ x: 75, y: -6 }, first!);
    expect(Math.hypot(tip.x, tip.y)).toBeCloseTo(Math.sqrt(400 * 400 + 75 * 75 + 2 * 400 * 75 * Math.cos(RAKE)), 9);
  });

  test('slots keep their wall to both edges of the band, to seams and to spokes', () => {
    for (const piece of pieces(mill, 'felloe')) {
      for (const o of moveRegion(partOf(mill, piece).region, piece).openings)
        for (const p of o) {
          const radius = Math.hypot(p.x, p.y);
          expect(radius).toBeGreaterThanOrEqual(350 + 6 - 0.01);
          expect(radius).toBeLessThanOrEqual(450 - 6 + 1e-9);
          // six seams, each under a spoke 50 mm wide
          for (let k = 0; k < 6; k++) {
            const [x, y] = [-Math.sin((k * Math.PI) / 3), Math.cos((k * Math.PI) / 3)];
            if (p.x * x + p.y * y > 0) expect(Math.abs(p.x * y - p.y * x)).toBeGreaterThanOrEqual(25 + 6);
          }
        }
    }
  });

  test('felloes less their slots: two rings in all', () => {
    const total = pieces(mill, 'felloe').reduce((sum, p) => sum + area(partOf(mill, p).region), 0);
    const open = 2 * slots(mill, 0).reduce((sum, s) => sum + s.area, 0);
    expect(total + open).toBeCloseTo(2 * Math.PI * (450 * 450 - 350 * 350), 5);
  });
});

describe('the wheel', () => {
  test('stands as far apart as the axle is long; nothing takes the same room', () => {
    const mill = built(MILL);
    expect(interference(mill)).toEqual([]);
    expect([...new Set(pieces(mill, 'felloe').map(p => p.z))]).toEqual([0, 278]);
    expect([...new Set(pieces(mill, 'spoke').map(p => p.z))]).toEqual([-18, 296]);
    expect(pieces(mill, 'hub-disc').map(p => p.z)).toEqual([-36, 314, 0, 278]);
    const paddle = partOf(mill, pieces(mill, 'paddle')[0]!);
    const { minY, maxY } = bounds(paddle.region.outer);
    const z = pieces(mill, 'paddle')[0]!.z;
    // tabs end flush with the rims' outer faces
    expect([z + minY, z + maxY]).toEqual([0, 296]);
  });

  test('screws of the spokes keep clear of slots and seams', () => {
    const mill = built({ ...MILL, paddles: { ...MILL.paddles, count: 18 } });
    const holes = pieces(mill, 'spoke')
      .filter(p => p.z < 0)
      .flatMap(piece => partOf(mill, piece).features.flatMap(f => (f.kind === 'drill' ? [movePoint(f.at, piece)] : [])))
      .filter(p => Math.hypot(p.x, p.y) > 350);
    expect(holes.length).toBeGreaterThanOrEqual(6);
    const felloes = pieces(mill, 'felloe')
      .filter(p => p.z === 0)
      .map(p => moveRegion(partOf(mill, p).region, p));
    for (const p of holes) expect(felloes.filter(f => locate(f, p) === 'inside')).toHaveLength(1);
  });

  test.each<[string, Partial<WaterWheelOptions>]>([
    ['laser, three layers', { rim: { ...MILL.rim, thickness: 18, stock: 'leaf' }, method: 'laser' }],
    ['hand, two layers', { rim: { ...MILL.rim, layers: 2 }, method: 'hand' }],
    ['fingered seams', { rim: { ...MILL.rim, seam: { joint: 'finger' } }, method: 'hand' }],
    ['keyed seams', { rim: { ...MILL.rim, seam: { joint: 'key' } } }],
    ['one tab, upright', { paddles: { count: 24, tabs: { count: 1, width: 30 }, stock: 'thin' } }],
    ['no axle', { hub: { diameter: 150, stock: 'ply' } }],
    ['a slot that presses', { fit: { slot: -0.2 } }],
    ['leaning back, three tabs', { paddles: { count: 6, rake: degrees(-30), tabs: { count: 3 }, stock: 'leaf' } }],
  ])('%s', (_, change) => {
    expect(interference(built({ ...MILL, ...change }))).toEqual([]);
  });
});

describe('what cannot be built is a stop with a reason', () => {
  test.each<[string, Partial<WaterWheelOptions>]>([
    ['slot-seam', { paddles: { ...MILL.paddles, count: 59, depth: 60 }, rim: { ...MILL.rim, felloes: 23 } }],
    ['tab-room', { rim: { ...MILL.rim, band: 30 } }],
    ['paddle-crowding', { paddles: { ...MILL.paddles, count: 60, depth: 560, rake: 0 } }],
    ['paddle-depth', { paddles: { ...MILL.paddles, depth: 800, rake: 0 } }],
    ['hub-cover', { hub: { ...MILL.hub, diameter: 90 } }],
    [
      'hub-thickness',
      { axle: { length: 1 }, hub: { ...MILL.hub, thickness: 18, stock: 'ply' }, rim: { ...MILL.rim, stock: 'leaf' } },
    ],
    ['wedge-flank', { spokes: { ...MILL.spokes, width: 14 } }],
    ['spoke-crowding', { spokes: { ...MILL.spokes, count: 24, width: 100 } }],
    ['slot-fit', { fit: { slot: -3 } }],
    ['stock-thickness', { paddles: { ...MILL.paddles, thickness: 10 } }],
  ])('%s', (rule, change) => {
    const { value, findings } = waterWheel({ ...MILL, ...change }, stock);
    expect(value).toBeUndefined();
    expect(findings.filter(f => f.level === 'stop').map(f => f.rule)).toContain(rule);
    for (const f of findings) expect(f.message).toMatch(/allowed: /);
  });

  test('numbers of paddles offered instead can be built', () => {
    const rim = { ...MILL.rim, felloes: 23 };
    const { findings } = waterWheel({ ...MILL, rim, paddles: { ...MILL.paddles, count: 59, depth: 60 } }, stock);
    const offered = /allowed: ([\d, ]+) paddles/.exec(findings.find(f => f.rule === 'slot-seam')?.message ?? '')?.[1];
    const counts = (offered ?? '')
      .split(', ')
      .filter(n => n !== '')
      .map(Number);
    for (const count of counts) built({ ...MILL, rim, paddles: { ...MILL.paddles, count, depth: 60 } });
    expect(findings).toHaveLength(1);
  });
});
