import { describe, expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { keyed } from '../../lib/joints/key.js';
import { keyArea, keySeam } from '../../lib/joints/key-sizes.js';
import type { Pocket } from '../../lib/parts/part.js';
import { traitsOf } from '../../lib/stock/traits.js';
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

describe('where there is little room', () => {
  const wall = (apart: number) => site({ laps: [{ apart, width: 30, depth: 9.5, face: 'front' }] });

  test('it gets shorter, then narrower', () => {
    const [wide, short, narrow] = [0.3, 0.16, 0.125].map(apart => keySeam(wall(apart), {}));
    near(wide!.length, 140 / 3);
    near(short!.width, 70 / 3);
    expect(short!.length).toBeLessThan(140 / 3);
    expect(narrow!.width).toBeLessThan(70 / 3);
    expect(narrow!.length).toBeGreaterThanOrEqual(narrow!.width);
    for (const apart of [0.3, 0.16, 0.125]) expect(keyed(plain(wall(apart)), wall(apart), {}).findings).toEqual([]);
  });

  test('it keeps within the room beside it', () => {
    const own = site({ room: 9, clearance: 0.2 });
    expect(keyed(plain(own), own, {}).reach).toBeLessThanOrEqual(9 + 1e-9);
  });
});

test('by laser a stated depth is told to be of no use', () => {
  const laser = site({ method: 'laser', layers: 2, seamed: 2, thickness: 6 });
  const said = (depth: number) =>
    keyed(plain(laser), laser, { depth }).findings.map(f => [f.level, f.where, f.message]);
  expect(said(3)).toEqual([
    ['note', 'rim.seam.depth', expect.stringMatching(/3 mm .*through their whole layer, 6 mm/)],
  ]);
  expect(said(6)).toEqual([]);
});

test.each([
  [{}, site({ method: 'laser' }), 'rim.seam.joint', /no floor .* a rim of 2 layers or more, or joint: finger/],
  [{ depth: 17 }, site(), 'rim.seam.depth', /17 mm .*leaves 3 mm .*of wood under it; allowed: 2 mm .* to 16 mm/],
  [{ depth: 1 }, site(), 'rim.seam.depth', /allowed: 2 mm .* to 16 mm/],
  [{ width: 60 }, site(), 'rim.seam.width', /keeps 10 mm .*from the band's edges .*allowed: 5 mm .* to 50 mm/],
  [{ width: 2 }, site(), 'rim.seam.width', /allowed: 5 mm .* to 50 mm/],
  [{ length: 1 }, site(), 'rim.seam.length', /1 mm .* no shorter than that .*allowed: 23.33 mm .* to 109.64 mm/],
  [
    {},
    site({ laps: [{ apart: 0.1, width: 30, depth: 9.5, face: 'front' }] }),
    'rim.seam.joint',
    /is key, its length .*before it meets a lap/,
  ],
])('%j is refused', (options, own, where, message) => {
  const { findings, loose, part } = keyed(plain(own), own, options);
  expect(findings.some(f => f.level === 'stop' && f.where === where && message.test(f.message))).toBe(true);
  expect([loose, part.features]).toEqual([[], []]);
});

// waist W - K tan 10° of 4 mm: K = 2 / tan 10° = 11.34 mm for a width of 6
test('a narrow key is no longer than its waist allows', () => {
  const narrow = keyed(plain(site()), site(), { width: 6 });
  expect(narrow.findings.filter(f => f.level === 'stop')).toEqual([]);
  near(keySeam(site(), { width: 6 }).length, 2 / Math.tan(TEN));
  near(keySeam(site(), { width: 6 }).waist, 4);
  near(keySeam(site(), { width: 24 }).length, 48);
});

test('in foam it is 12 mm deep, or half of what is thinner than two of those', () => {
  const traits = traitsOf({
    name: 'f',
    kind: 'sheet',
    width: 1,
    length: 1,
    thickness: 1,
    true: 0,
    margin: 0,
    species: 'foam',
  });
  const deep = (thickness: number) => keySeam(site({ thickness, traits }), {}).depth;
  expect([20, 24, 30, 36].map(deep)).toEqual([10, 12, 12, 12]);
  near(deep(60), 20);
});
