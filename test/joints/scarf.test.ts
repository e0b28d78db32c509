import { describe, expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { scarfed, scarfOverlap } from '../../lib/joints/scarf.js';
import type { Pocket } from '../../lib/parts/part.js';
import { near } from '../close.js';
import { plain, sectorArea, site } from './site.js';

const deg = (d: number): number => (d * Math.PI) / 180;

describe('a felloe with two scarfs', () => {
  const { part, findings } = scarfed(plain(site()), site(), { overlap: deg(10) });
  const pockets = part.features.filter((f): f is Pocket => f.kind === 'pocket');

  test('is longer by half the overlap at each end', () => {
    expect(findings).toEqual([]);
    near(area(part.region), (sectorArea(site()) * 55) / 45);
    near(bounds(part.region.outer).maxX, 300 * Math.sin(deg(27.5)));
  });

  test('keeps the back half at its left end, the front half at its right end, each half as thick', () => {
    expect(pockets.map(p => [p.face, p.depth, Math.sign(bounds(p.area.outer).minX)])).toEqual([
      ['front', 9.5, -1],
      ['back', 9.5, 1],
    ]);
    // annular sector of 10 degrees (Machinery's Handbook): theta (R² - r²) / 2
    for (const p of pockets) near(area(p.area), (deg(10) * (300 * 300 - 230 * 230)) / 2);
  });

  test('eight of them are as much wood as the ring', () => {
    const volume = area(part.region) * 19 - pockets.reduce((sum, p) => sum + area(p.area) * p.depth, 0);
    near(8 * volume, Math.PI * (300 * 300 - 230 * 230) * 19);
  });
});

test('where the plan does not say, four thicknesses along the middle of the band', () => {
  near(scarfOverlap(site(), {}), (4 * 19) / 265);
});

test('a lap shortens it, down to two thicknesses', () => {
  const lap = (apart: number) => site({ laps: [{ apart, width: 30, depth: 9.5, face: 'front' }] });
  near(scarfOverlap(lap(0.2), {}), 2 * (0.2 - Math.asin(15 / 230) - 3 / 230));
  const { findings } = scarfed(plain(lap(0.1)), lap(0.1), {});
  expect(findings.map(f => [f.level, f.where])).toEqual([['stop', 'rim.seam.joint']]);
  expect(findings[0]!.message).toMatch(/is scarf, its overlap .*joint: finger/);
});

test('what stands near shortens it, down to two thicknesses', () => {
  near(scarfed(plain(site({ room: 30 })), site({ room: 30 }), {}).reach, 30);
  near(scarfOverlap(site({ room: 5 }), {}), (2 * 19) / 265);
});

test.each([
  ['router', 1, 1],
  ['router', 40, 1],
  ['laser', 1, 2],
  ['laser', 30, 2],
] as const)('by %s an overlap of %s degrees is refused with the range', (method, overlap, layers) => {
  const own = site({ method, layers, seamed: layers });
  const { findings, part } = scarfed(plain(own), own, { overlap: deg(overlap) });
  expect(findings.map(f => [f.level, f.where])).toEqual([['stop', 'rim.seam.overlap']]);
  // two thicknesses along the middle of the band; 0.8 of a felloe, or half of one between layers
  const [from, to] = [((2 * 19) / 265) * (180 / Math.PI), method === 'laser' ? 22.5 : 36];
  expect(findings[0]!.message).toContain(`is ${overlap} deg; `);
  expect(findings[0]!.message).toContain(`allowed: ${Math.round(from * 100) / 100} to ${to} deg`);
  expect(part).toEqual(plain(own));
});

test('by laser a ring of layers is scarfed by their staggered seams; one layer is refused and offered more', () => {
  const laser = site({ method: 'laser', layers: 3, seamed: 2 });
  const { part, findings } = scarfed(plain(laser), laser, { overlap: deg(12) });
  expect(findings).toEqual([]);
  expect(part).toEqual(plain(laser));
  const alone = site({ method: 'laser' });
  expect(scarfed(plain(alone), alone, {}).findings[0]?.message).toMatch(/allowed: more layers, .* or joint: finger/);
});
