import fc from 'fast-check';
import { expect, test } from 'vitest';
import { difference, intersection } from '../../lib/geometry/boolean.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { moveRegion, turning } from '../../lib/geometry/motion.js';
import { circle, solid } from '../../lib/geometry/outline.js';
import { distance } from '../../lib/geometry/point.js';
import {
  betweenFeet,
  betweenMortises,
  longestTenon,
  mortiseBottom,
  mortised,
  tenoned,
} from '../../lib/joints/mortise.js';
import { cartSpoke } from '../../lib/parts/cart-spoke.js';
import { naveDisc } from '../../lib/parts/nave-disc.js';

const wood = { thickness: 19, stock: 'ply' };
const joint = { nave: 80, width: 22, length: 30, clearance: 0.2 };
const disc = naveDisc({ ...wood, diameter: 160, bore: { kind: 'none' }, face: 'front', under: 0 });
const spoke = cartSpoke({ ...wood, nave: 80, rim: 290, width: 36, end: 28 });
const around = (count: number): number[] => Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);

test('six mortises: bottoms form a regular hexagon, whose side is its corners own distance from the centre (Euclid IV.15)', () => {
  // a hexagon with corners 49.9 / cos(30 deg) from the centre has sides as long; each bottom takes the joint's width of one
  const bottom = mortiseBottom(joint);
  expect(bottom).toBeCloseTo(49.9, 12);
  const side = bottom / Math.cos(Math.PI / 6);
  // what is left at each corner of the hexagon is an isosceles triangle of 120 deg: its base is sqrt(3) times its legs
  const leg = (side - joint.width - joint.clearance) / 2;
  expect(betweenMortises(joint, 6)).toBeCloseTo(leg * Math.sqrt(3), 9);
});

test('the wall between mortises is the distance of their nearest corners', () => {
  fc.assert(
    fc.property(fc.integer({ min: 3, max: 20 }), fc.double({ min: 3, max: 12, noNaN: true }), (count, width) => {
      const own = { nave: 100, width, length: 40, clearance: 0.1 };
      fc.pre(betweenMortises(own, count) > 0.5);
      const big = naveDisc({ ...wood, diameter: 200, bore: { kind: 'none' }, face: 'front', under: 0 });
      const { outer } = mortised(big, own, around(count)).region;
      const corners = outer.filter(v => Math.hypot(v.x, v.y) < 99);
      expect(corners).toHaveLength(2 * count);
      const half = width / 2 + 0.05;
      const nearest = corners.flatMap((a, i) => corners.slice(i + 1).map(b => distance(a, b)));
      expect(Math.min(...nearest)).toBeCloseTo(Math.min(betweenMortises(own, count), 2 * half), 6);
      expect(betweenMortises({ ...own, length: longestTenon(own, count, 3) }, count)).toBeCloseTo(3, 9);
    }),
    { numRuns: 50 },
  );
});

test('a mortised disc loses its slots: straight walls from the bottom to the edge', () => {
  const { region, thickness } = mortised(disc, joint, around(12));
  const half = 11.1;
  // slot: a strip from the bottom to the circle, by its segment of the circle
  const edge = Math.sqrt(80 * 80 - half * half);
  const slot = 2 * half * (edge - 49.9) + 80 * 80 * Math.asin(half / 80) - half * edge;
  expect(area(region)).toBeCloseTo(Math.PI * 80 * 80 - 12 * slot, 6);
  expect(thickness).toBe(19);
  expect(region.outer.filter(v => v.mate === 'mortise')).toHaveLength(36);
});

test('a tenon fills its mortise but for the clearance, and its shoulders lie on the edge of the nave', () => {
  const tenon = tenoned(spoke, joint).region;
  expect(bounds(tenon.outer).minX).toBeCloseTo(50, 12);
  const slots = mortised(disc, joint, [-Math.PI / 2]).region;
  expect(intersection([tenon], [slots]).reduce((sum, r) => sum + area(r), 0)).toBeLessThan(1e-6);
  // inside the nave lies the tenon and nothing else of the spoke
  const inside = intersection([tenon], [solid(circle(80))]);
  expect(inside.reduce((sum, r) => sum + area(r), 0)).toBeCloseTo(area(intersection([disc.region], [tenon])[0]!), 6);
  const gap = difference([disc.region], [slots, tenon]).reduce((sum, r) => sum + area(r), 0);
  // round the tenon a gap of half the clearance: along both walls and the bottom
  const wall = Math.sqrt(80 * 80 - 11 * 11) - 50;
  expect(gap).toBeCloseTo(0.1 * (2 * wall + 22.2), 1);
});

test('a tenon adds no wood beyond the edge of the nave, however fast its spoke tapers', () => {
  const body = cartSpoke({ ...wood, nave: 36, rim: 62, width: 48, end: 16 });
  const own = { nave: 36, width: 46, length: 12, clearance: 0.2 };
  // a strip from the tenon's end to its corners on the nave, and the circle's segment over it
  const half = Math.asin(23 / 36);
  const strip = 46 * (36 * Math.cos(half) - 24);
  const segment = 36 * 36 * (half - Math.sin(half) * Math.cos(half));
  expect(area(tenoned(body, own).region)).toBeCloseTo(area(body.region) + strip + segment, 9);
});

test('spokes side by side on the nave keep out of each other', () => {
  const one = tenoned(spoke, joint).region;
  const next = moveRegion(one, turning(Math.PI / 6));
  expect(intersection([one], [next])).toEqual([]);
});

test('pins between the feet have as much wood to the walls as to the edge', () => {
  const { radius, room } = betweenFeet(joint, 12);
  expect(80 - radius).toBeCloseTo(room, 12);
  expect(radius * Math.sin(Math.PI / 12) - 11.1).toBeCloseTo(room, 9);
});
