import { describe, expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { keyArea, keyed, keySeam } from '../../lib/joints/key.js';
import type { Pocket } from '../../lib/parts/part.js';
import { near } from '../close.js';
import { plain, sectorArea, site } from './site.js';

const TEN = (10 * Math.PI) / 180;

test('sizes by band and thickness: a third wide, twice as long, a third deep; flanks of ten degrees', () => {
  const key = keySeam(site(), {});
  near(key.width, 70 / 3);
  near(key.length, 140 / 3);
  near(key.depth, 19 / 3);
  near(key.waist, 70 / 3 - (140 / 3) * Math.tan(TEN));
});

describe('a key of 40 x 24 mm', () => {
  const options = { length: 40, width: 24, depth: 6 };
  const joined = keyed(plain(site()), site(), options);
  const pockets = joined.part.features.filter((f): f is Pocket => f.kind === 'pocket');
  // two trapezia back to back: 40 (24 + 24 - 40 tan 10°) / 2
  const whole = (40 * (48 - 40 * Math.tan(TEN))) / 2;

  test('has the area of its two trapezia', () => {
    near(keyArea(keySeam(site(), options)), whole);
    near(area(joined.loose[0]!.part.region), whole);
  });

  test('half its area is let into either felloe, as deep as it is thick', () => {
    expect(pockets).toHaveLength(2);
    for (const p of pockets) {
      near(area(p.area), whole / 2);
      expect([p.depth, p.face]).toEqual([6, 'front']);
    }
    expect(joined.loose[0]!.part.thickness).toBe(6);
    near(joined.loose[0]!.z, 13);
  });

  test('a fit widens the pocket, not the key', () => {
    const loose = keyed(plain(site({ clearance: 0.3 })), site({ clearance: 0.3 }), options);
    near(area(loose.loose[0]!.part.region), whole);
    const pocket = loose.part.features.find((f): f is Pocket => f.kind === 'pocket');
    expect(area(pocket!.area)).toBeGreaterThan(whole / 2 + 0.15 * 60);
  });

  test('its flanks are tagged in felloe and key', () => {
    expect(pockets.map(p => p.area.outer.filter(v => v.mate === 'key').length)).toEqual([3, 3]);
    expect(joined.loose[0]!.part.region.outer.every(v => v.mate === 'key')).toBe(true);
  });

  test('on the back it lies at the back', () => {
    const back = keyed(plain(site()), site(), { ...options, face: 'back' });
    expect(back.loose[0]!.z).toBe(0);
    expect(back.part.features.map(f => f.kind === 'pocket' && f.face)).toEqual(['back', 'back']);
  });
});

test('by laser it is cut through its layer of a ring of several; felloes and keys fill the ring', () => {
  const laser = site({ method: 'laser', layers: 2, seamed: 2, thickness: 6 });
  const { part, loose, findings } = keyed(plain(laser), laser, {});
  expect(findings).toEqual([]);
  expect(part.features).toEqual([]);
  near(area(part.region) + area(loose[0]!.part.region), sectorArea(laser));
  expect(loose[0]!.part.thickness).toBe(6);
});

test.each([
  [{}, site({ method: 'laser' }), 'rim.seam.joint', /no floor .* a rim of 2 layers or more, joint: finger/],
  [{ depth: 17 }, site(), 'rim.seam.depth', /leaves 3 mm of wood under it/],
  [{ width: 60 }, site(), 'rim.seam.width', /keeps 10 mm from the band's edges; allowed: at most 50 mm/],
  [
    {},
    site({ laps: [{ apart: 0.1, width: 30, depth: 9.5, face: 'front' }] }),
    'rim.seam.length',
    /before it meets a lap/,
  ],
])('%j is refused', (options, own, where, message) => {
  const { findings, loose, part } = keyed(plain(own), own, options);
  expect(findings.some(f => f.level === 'stop' && f.where === where && message.test(f.message))).toBe(true);
  expect([loose, part.features]).toEqual([[], []]);
});
