import { describe, expect, test } from 'vitest';
import { dowelled, dowelSeam } from '../../lib/joints/dowel.js';
import { dowelHole } from '../../lib/stock/dowels.js';
import { inches } from '../../lib/units/length.js';
import { near } from '../close.js';
import { plain, site } from './site.js';

const seamOf = (thickness: number) => dowelSeam(site({ thickness }), {}).seam!;

// common practice as printed by several joinery pages: a third to a half of the thinner piece, half a common pick (3/8 in in 3/4 in, 1/4 in in
// 1/2 in); a hole 1/16 in deeper than half the dowel
test.each([
  [3 / 4, 3 / 8],
  [1 / 2, 1 / 4],
  [1, 1 / 2],
])('in %s in of wood a dowel of %s in', (thickness, diameter) => {
  const { dowel, depth, length } = seamOf(inches(thickness));
  near(dowel.diameter, inches(diameter));
  near(depth, length / 2 + inches(1 / 16));
});

test.each([12, 16, 19, 25])('in %s mm it is a third to a half as thick', thickness => {
  const { dowel } = seamOf(thickness);
  expect(dowel.diameter).toBeGreaterThanOrEqual(thickness / 3 - 1e-6);
  expect(dowel.diameter).toBeLessThanOrEqual(thickness / 2 + 1e-6);
});

describe('the template of the end', () => {
  const { part, findings } = dowelled(plain(site()), site(), { count: 2, diameter: 8 });

  test('is the seam face, with a circle at (j + 1/2) / n of the band and half the thickness for each dowel', () => {
    expect(findings).toEqual([]);
    expect(part.end?.outline.map(p => [p.x, p.y])).toEqual([
      [0, 0],
      [70, 0],
      [70, 19],
      [0, 19],
    ]);
    expect(part.end?.holes.map(h => [h.at.x, h.at.y, h.diameter])).toEqual([
      [17.5, 9.5, 8],
      [52.5, 9.5, 8],
    ]);
  });

  test('a mark over every hole of both ends', () => {
    expect(part.features.filter(f => f.kind === 'score')).toHaveLength(4);
  });
});

test('a narrow inner edge is left alone: fewer dowels lie farther out', () => {
  // eight segments from a bore of 20 mm: the holes of a felloe's two ends meet 50 mm from the middle
  const narrow = site({ inner: 20, outer: 360 });
  const { seam, findings } = dowelSeam(narrow, {});
  expect(findings).toEqual([]);
  expect(seam!.count).toBeGreaterThanOrEqual(2);
  for (const u of seam!.at)
    expect(seam!.depth + 6).toBeLessThanOrEqual((u - seam!.dowel.diameter / 2) * Math.tan(Math.PI / 8));
});

test('where there is little room they are shorter, cut from longer ones if need be, but 1.5 diameters deep', () => {
  const depths = [40, 17, 14, 5].map(room => dowelSeam(site({ room }), {}).seam!);
  expect(depths.map(s => s.depth <= 17)).toEqual([false, true, true, false]);
  for (const s of depths) expect(s.depth).toBeGreaterThanOrEqual(1.5 * s.dowel.diameter);
  const wall = site({ laps: [{ apart: 0.14, width: 30, depth: 9.5, face: 'front' }] });
  const { seam, findings } = dowelSeam(wall, {});
  expect(findings).toEqual([]);
  expect(seam!.depth).toBeLessThan(dowelHole(Math.min(...seam!.dowel.lengths)));
});

test.each([
  [{ diameter: 12 }, site(), 'rim.seam.diameter', /a third to a half as thick, 6.33 mm .*to 9.5 mm .*; allowed: .*8mm/],
  [{ count: 9 }, site(), 'rim.seam.count', /allowed: 1 to 2/],
  [{ depth: 200 }, site(), 'rim.seam.depth', /200 mm .* is 12 mm .* to 48 mm .* deep; allowed: that/],
  [{ depth: 2 }, site(), 'rim.seam.depth', /2 mm .* a hole for a 8mm dowel is 12 mm/],
  [{}, site({ thickness: 6 }), 'rim.seam.joint', /is dowel, its diameter left out; .*joint: finger/],
  [{}, site({ method: 'laser' }), 'rim.seam.joint', /cannot bore into an edge; allowed: finger/],
  [
    {},
    site({ laps: [{ apart: 0.1, width: 30, depth: 9.5, face: 'front' }] }),
    'rim.seam.joint',
    /is dowel, its depth .*another seam place, or joint: butt/,
  ],
])('%j is refused', (options, own, where, message) => {
  const { findings, part, hardware } = dowelled(plain(own), own, options);
  expect(findings.some(f => f.level === 'stop' && f.where === where && message.test(f.message))).toBe(true);
  expect([part.end, hardware]).toEqual([undefined, []]);
});
