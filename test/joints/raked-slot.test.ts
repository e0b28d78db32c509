import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { solid } from '../../lib/geometry/outline.js';
import { polar } from '../../lib/geometry/point.js';
import {
  barReach,
  barsApart,
  fromRay,
  fromSlot,
  type RakedBar,
  slotsAt,
  tabRoom,
  tabsIn,
} from '../../lib/joints/raked-slot.js';

const BAR: RakedBar = { inner: 350, outer: 450, rake: 0, thickness: 12, depth: 100, clearance: 0.2, wall: 6 };

test('upright, a slot keeps its wall at its middle on the inside and at its corners on the outside', () => {
  const { from, to } = tabRoom(BAR);
  // on the inside u = -50 + 6 + 0.1, as the slot's middle comes nearest, and the wall is kept by its clearance too
  expect(from).toBeCloseTo(-43.9, 9);
  // on the outside the corner at half the slot's width lies on the circle of 444 mm: sqrt(444² - 6.1²) - 400 - 0.1
  expect(to).toBeCloseTo(Math.sqrt(444 * 444 - 6.1 * 6.1) - 400 - 0.1, 9);
});

test('tabs and gaps of one width; one alone in the middle', () => {
  expect(tabsIn({ from: -30, to: 30 }, { count: 2 }, BAR)).toEqual([
    { from: -30, to: -10 },
    { from: 10, to: 30 },
  ]);
  expect(tabsIn({ from: -30, to: 30 }, { count: 1, width: 20 }, BAR)).toEqual([{ from: -10, to: 10 }]);
  expect(tabsIn({ from: -30, to: 30 }, { count: 3, width: 19 }, BAR)).toBeUndefined();
  expect(tabsIn({ from: 5, to: -5 }, { count: 1 }, BAR)).toBeUndefined();
});

const bars = fc.record({
  inner: fc.double({ min: 60, max: 400, noNaN: true }),
  band: fc.double({ min: 40, max: 200, noNaN: true }),
  rake: fc.double({ min: -0.78, max: 0.78, noNaN: true }),
  thickness: fc.double({ min: 2, max: 20, noNaN: true }),
  depth: fc.double({ min: 10, max: 300, noNaN: true }),
  clearance: fc.double({ min: 0, max: 0.5, noNaN: true }),
  wall: fc.double({ min: 2, max: 6, noNaN: true }),
  angle: fc.double({ min: -3, max: 3, noNaN: true }),
});

test('every slot keeps its wall to both edges of the band, whatever the rake', () =>
  fc.assert(
    fc.property(bars, ({ band, angle, ...b }) => {
      const bar: RakedBar = { ...b, outer: b.inner + band };
      const tabs = tabsIn(tabRoom(bar), { count: 2 }, bar) ?? [];
      for (const [i, slot] of slotsAt(bar, tabs, angle).entries()) {
        const tab = tabs[i]!;
        const { clearance: c } = bar;
        expect(area(solid(slot))).toBeCloseTo((tab.to - tab.from + c) * (bar.thickness + c), 6);
        // points all along its edges
        slot.forEach((p, k) => {
          const q = slot[(k + 1) % slot.length]!;
          for (const u of [0, 0.25, 0.5, 0.75]) {
            const r = Math.hypot(p.x + u * (q.x - p.x), p.y + u * (q.y - p.y));
            expect(r).toBeGreaterThanOrEqual(bar.inner + bar.wall - 1e-9);
            expect(r).toBeLessThanOrEqual(bar.outer - bar.wall + 1e-9);
          }
        });
      }
    }),
  ));

test('distance to a line from the centre, to a strip along it, to a point', () => {
  const [slot] = slotsAt(BAR, [{ from: -20, to: 20 }], 0);
  // a ray 10 degrees off: the slot's nearest corner (6.1, 379.9) lies 379.9 sin 10° - 6.1 cos 10° from it
  const ten = Math.PI / 18;
  expect(fromRay(slot!, -ten)).toBeCloseTo(379.9 * Math.sin(ten) - 6.1 * Math.cos(ten), 9);
  expect(fromRay(slot!, -ten, 25)).toBeCloseTo(379.9 * Math.sin(ten) - 6.1 * Math.cos(ten) - 25, 9);
  expect(fromRay(slot!, 0)).toBe(0);
  expect(fromRay(slot!, Math.PI)).toBe(Infinity);
  expect(fromSlot(slot!, polar(400, Math.PI / 2))).toBe(0);
  expect(fromSlot(slot!, { x: 16.1, y: 400 })).toBeCloseTo(10, 9);
});

test('bars come as near to the centre as their inner ends do, and to each other', () => {
  expect(barReach({ ...BAR, depth: 300 })).toBeCloseTo(250, 9);
  // six bars reaching to r have inner ends 2 r sin 30° = r apart, less their thickness across
  const close = (depth: number): boolean => barsApart({ ...BAR, depth }, 0, Math.PI / 3, 1);
  expect(close(2 * (400 - 13))).toBe(true);
  expect(close(2 * (400 - 10))).toBe(false);
});
