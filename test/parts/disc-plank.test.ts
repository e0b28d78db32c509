import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { discPlank, plankEdges } from '../../lib/parts/disc-plank.js';

const base = { thickness: 18, stock: 'plank' };

test("a strip of a circle is what its segments leave: r² (θ - sin θ) / 2 each, Machinery's Handbook, circular segment", () => {
  const [plank] = discPlank({ ...base, radius: 100, from: -100, to: -50, bore: 0 });
  // height 50 of a circle of 100: θ = 2 acos(1/2) = 120°
  const theta = (2 * Math.PI) / 3;
  expect(area(plank!.region)).toBeCloseTo((100 * 100 * (theta - Math.sin(theta))) / 2, 8);
});

test('planks of any number are the circle less its bore, whatever the bore cuts', () =>
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 24 }),
      fc.double({ min: 20, max: 1500, noNaN: true }),
      fc.double({ min: 0, max: 0.8, noNaN: true }),
      (count, radius, share) => {
        const bore = share < 0.05 ? 0 : share * radius;
        const levels = plankEdges(radius, count);
        // a bore that all but touches a seam is refused by the model
        if (levels.some(y => Math.abs(Math.abs(y) - bore) < 1e-3)) return;
        const planks = levels.slice(1).flatMap((to, i) => discPlank({ ...base, radius, from: levels[i]!, to, bore }));
        const total = planks.reduce((sum, p) => sum + area(p.region), 0);
        const disc = Math.PI * (radius * radius - bore * bore);
        expect(Math.abs(total / disc - 1)).toBeLessThan(1e-9);
        for (const p of planks) expect(p.region.outer.some(v => v.mate === 'seam')).toBe(true);
      },
    ),
  ));

test('a plank outside its circle is refused', () => {
  expect(() => discPlank({ ...base, radius: 100, from: 50, to: 120, bore: 0 })).toThrow('to is 120 mm');
  expect(() => discPlank({ ...base, radius: 100, from: 50, to: 40, bore: 0 })).toThrow('from is 50 mm');
});
