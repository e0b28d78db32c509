import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { halfWidthAt, handleEdge, leastHandle } from '../../lib/parts/handle.js';
import { spoke, wedge } from '../../lib/parts/spoke.js';
import { near } from '../close.js';

// Spokes side by side: flat at w / (2 tan(pi/n)), corner at w / (2 sin(pi/n)); worked examples by plane trigonometry
test.each([
  [8, 1.5, 1.81066017, 1.95984445],
  [6, 38, 32.9089653, 38],
  [12, 1.5, 2.79903811, 2.89777748],
])('%s spokes of width %s touch at the worked distances', (count, width, flat, corner) => {
  near(wedge({ count, width }).corner, flat, 1e-8);
  near(wedge({ count, width }).reach, corner, 1e-8);
});

test('half the wedge clearance comes off each flank, at right angles to it', () => {
  const { angle, apex } = wedge({ count: 10, width: 30, clearance: 0.4 });
  near(apex * Math.sin(angle), 0.2);
});

test('a plain spoke is a rectangle and a trapezoid', () => {
  const w = wedge({ count: 8, width: 30 });
  const part = spoke({
    count: 8,
    width: 30,
    flat: 15,
    rim: 300,
    handle: handleEdge({ length: 100, half: 15 }),
    thickness: 19,
    stock: 's',
  });
  const flank = 15 * Math.tan(Math.PI / 8);
  near(area(part.region), (400 - w.corner) * 30 + (w.corner - 15) * (flank + 15));
  expect(part.region.outer).toHaveLength(6);
});

const shapes = ['plain', 'tapered', 'turned'] as const;

test('every handle reaches its length, stays within the spoke and has no corner past its collar', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...shapes),
      fc.double({ min: 5, max: 40, noNaN: true }),
      fc.double({ min: 1.01, max: 12, noNaN: true }),
      (shape, half, times) => {
        const length = 1 + leastHandle(shape, half) * times + (shape === 'plain' ? 5 : 0);
        const edge = handleEdge({ shape, length, half, collar: 1 });
        const part = spoke({
          count: 8,
          width: 2 * half,
          flat: half * 2,
          rim: 300,
          handle: edge,
          thickness: 19,
          stock: 's',
        });
        const box = bounds(part.region.outer);
        near(box.maxX, 300 + length);
        near(box.maxY, half);
        near(box.minY, -half);
        for (let i = 0; i <= 20; i++) expect(halfWidthAt(edge, (length * i) / 20)).toBeLessThanOrEqual(half + 1e-9);
      },
    ),
  );
});

test('an own profile passes through its points', () => {
  const profile = [
    [6, 19],
    [25, 12.7],
    [76, 18],
    [152, 8],
  ] as const;
  const edge = handleEdge({ profile, length: 152, half: 19 });
  for (const [x, y] of profile) near(halfWidthAt(edge, x), y, 1e-6);
});

test.each([
  [[[0, 10]], /handle.profile is 1 points; allowed: two points or more/],
  [
    [
      [0, 10],
      [50, -3],
    ],
    /handle.profile\[1\] half width is -3 mm; allowed: 0 to/,
  ],
  [
    [
      [0, 10],
      [50, 3],
    ],
    /allowed: a last point at the tip, 100 mm past the rim/,
  ],
] as const)('refuses the profile %j', (profile, message) => {
  expect(() => handleEdge({ profile: profile as unknown as [number, number][], length: 100, half: 15 })).toThrow(
    message,
  );
});
