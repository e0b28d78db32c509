import { expect, test } from 'vitest';
import { type BattenSite, battenPlaces, battenReach, battenScrews } from '../../lib/joints/battens.js';
import { rodCircles, rodPoints } from '../../lib/joints/through-rods.js';

const SITE: BattenSite = { count: 2, width: 60, radius: 300, outermost: 200, bite: 20, obstacles: [] };

test('the outer pair lies as far out as it holds the outermost planks', () => {
  // corners at (x + 30, 220) on the circle: x = sqrt(300² - 220²) - 30 = 173.96
  const [left, right] = battenPlaces(SITE)!;
  expect(left).toBe(-right!);
  expect(right).toBeLessThanOrEqual(Math.sqrt(300 * 300 - 220 * 220) - 30);
  expect(right).toBeGreaterThan(Math.sqrt(300 * 300 - 220 * 220) - 30 - 300 / 240 - 1e-9);
  expect(battenReach(SITE, right!)).toBeGreaterThanOrEqual(220);
});

test('battens keep off washers and off each other', () => {
  const obstacles = rodPoints(4, 150, 0).map(p => ({ ...p, radius: 20 }));
  const places = battenPlaces({ ...SITE, count: 4, width: 40, obstacles })!;
  expect(places).toHaveLength(4);
  places.forEach((x, i) => {
    for (const o of obstacles) expect(Math.abs(x - o.x)).toBeGreaterThanOrEqual(20 + 20 + 1);
    if (i > 0) expect(x - places[i - 1]!).toBeGreaterThanOrEqual(41 - 1e-9);
  });
  expect(battenPlaces({ ...SITE, count: 3, obstacles: [{ x: 0, y: 0, radius: 25 }] })).toBeUndefined();
  expect(battenPlaces({ ...SITE, width: 500 })).toBeUndefined();
});

test('one screw in a narrow crossing, two in a wide one, none in a sliver', () => {
  expect(battenScrews([-100, -60, 40, 100], 98, 4)).toEqual([-79, -35, 15, 69]);
  expect(battenScrews([-100, 0, 100], 10, 4)).toEqual([]);
});

test('rods keep their wall to everything, the largest circle first', () => {
  const off = (p: { x: number; y: number }): number =>
    Math.min(...[-120, 0, 120].map(y => Math.abs(p.y - y)), Math.hypot(p.x - 150, p.y - 30) - 4);
  const site = { count: 4, hole: 10.5, wall: 3, from: 60, to: 150, clear: off };
  const circles = rodCircles(site);
  expect(circles.length).toBeGreaterThan(0);
  for (const { radius, first, clear } of circles) {
    expect(radius).toBeGreaterThanOrEqual(60);
    expect(radius).toBeLessThanOrEqual(150);
    expect(clear).toBeGreaterThanOrEqual(3);
    for (const p of rodPoints(4, radius, first)) expect(off(p) - 5.25).toBeGreaterThanOrEqual(clear - 1e-5);
  }
  expect(circles[0]!.radius).toBe(150);
  expect(circles.map(c => c.radius)).toEqual(circles.map(c => c.radius).sort((a, b) => b - a));
  expect(rodCircles({ ...site, from: 160 })).toEqual([]);
});
