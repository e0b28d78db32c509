import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alongRing, strengthProxy, woodAtSeam } from '../../lib/joints/glue.js';
import { keyed } from '../../lib/joints/key.js';
import { SEAM_JOINTS, type SeamJointName, type SeamSite } from '../../lib/joints/seam-joint.js';
import { seamJoints } from '../../lib/joints/seam-joints.js';
import { idleOptions } from '../../lib/joints/seam-options.js';
import { near } from '../close.js';
import { plain, site } from './site.js';

const glue = (joint: SeamJointName, own: SeamSite) => {
  const { glue, findings } = seamJoints[joint](plain(own), own, { joint });
  expect(findings.filter(f => f.level === 'stop').map(f => f.message)).toEqual([]);
  return glue;
};

describe('how strongly glue holds', () => {
  const ORDER = ['scarf', 'finger', 'biscuit', 'butt'] as const;
  const falls = (numbers: readonly number[]): boolean => numbers.every((n, i) => i === 0 || n < numbers[i - 1]!);
  const felloeOf = (n: number, inner: number, band: number, thickness: number, grained = true): SeamSite =>
    site({ sweep: (2 * Math.PI) / n, inner, outer: inner + band, thickness, grained });

  test('area, and area by long-grain share: scarf over finger over biscuit over butt, for every number of felloes', () => {
    for (let n = 3; n <= 24; n++)
      for (const [band, thickness] of [
        [76, 10],
        [88, 10],
        [90, 12],
        [100, 19],
        [130, 25],
        [160, 38],
      ] as const)
        for (const grained of [true, false]) {
          const seams = ORDER.map(joint => glue(joint, felloeOf(n, 10 * n + 400, band, thickness, grained)));
          expect(falls(seams.map(g => g.area)), `${n} felloes, ${band} by ${thickness}`).toBe(true);
          expect(falls(seams.map(strengthProxy)), `${n} felloes, ${band} by ${thickness}`).toBe(true);
        }
  });

  test('so does the share alone in stock of 12 mm and more, whatever the felloe', () => {
    const felloes = fc.record({
      n: fc.integer({ min: 3, max: 24 }),
      inner: fc.double({ min: 640, max: 900, noNaN: true }),
      band: fc.double({ min: 90, max: 160, noNaN: true }),
      thickness: fc.double({ min: 12, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(felloes, ({ n, inner, band, thickness }) => {
        const seams = ORDER.map(joint => glue(joint, felloeOf(n, inner, band, thickness)));
        for (const measure of [seams.map(g => g.area), seams.map(g => g.longGrain), seams.map(strengthProxy)])
          expect(falls(measure)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('by hand: a butt is the seam face, all end grain; a scarf adds its floor, all long grain', () => {
    expect(glue('butt', site())).toEqual({ area: 70 * 19, longGrain: 0 });
    const floor = ((4 * 19) / 265) * 0.5 * (300 * 300 - 230 * 230);
    const scarf = glue('scarf', site());
    near(scarf.area, 70 * 19 + floor);
    near(scarf.longGrain, floor / (70 * 19 + floor));
    near(strengthProxy(scarf), floor);
  });

  test('a face counts by sin² of the angle between its normal and the ring: the flanks of a key by cos² 10°', () => {
    near(alongRing(Math.PI / 6), 0.25);
    const own = site();
    const [length, width, depth] = [40, 24, 6];
    const { glue: key } = keyed(plain(own), own, { joint: 'key', length, width, depth });
    const ten = Math.PI / 18;
    const waist = width - length * Math.tan(ten);
    const flanks = (length / Math.cos(ten)) * depth * Math.cos(ten) ** 2;
    near(strengthProxy(key), (length * (width + waist)) / 4 + flanks);
  });

  // Wood Handbook FPL-GTR-282, chapter 5, bending strength by slope of grain (from memory): 1 in 20 93 %, 1 in 10 81 %, 1 in 5 55 %
  test.each([
    [20, 0.93],
    [10, 0.81],
    [5, 0.55],
  ])('grain that leans 1 in %s leaves %s of the strength', (run, share) => {
    expect(Math.abs(woodAtSeam(2 * Math.atan(1 / run)) - share)).toBeLessThan(0.04);
  });
});

describe.each(['router', 'laser', 'hand'] as const)('%s', method => {
  test.each(SEAM_JOINTS)('%s is made, or refused with what to choose instead', joint => {
    for (const layers of [1, 3]) {
      const own = site({ method, layers, seamed: layers, thickness: layers === 1 ? 19 : 6, outer: 340 });
      const made = seamJoints[joint](plain(own), own, { joint });
      const stops = made.findings.filter(f => f.level === 'stop');
      for (const stop of stops) expect(stop.message).toMatch(/allowed: .*joint|allowed: finger/);
      if (stops.length > 0) expect(made.part).toEqual(plain(own));
      expect(made.part.region.outer.length).toBeGreaterThanOrEqual(4);
      expect(made.glue.area).toBeGreaterThan(0);
    }
  });
});

test('an end that meets nothing stays square', () => {
  for (const joint of SEAM_JOINTS) {
    const own = site({ outer: 340, ends: { left: false, right: true } });
    const { part } = seamJoints[joint](plain(own), own, { joint });
    const left = part.region.outer.filter(v => Math.abs(Math.atan2(-v.x, v.y) - own.sweep / 2) < 1e-9);
    expect(left, joint).toHaveLength(2);
  }
});

test('options a joint has no use for are told', () => {
  expect(idleOptions({ joint: 'finger', count: 5, size: '20' }, 'rim.seam').map(f => [f.level, f.where])).toEqual([
    ['note', 'rim.seam.size'],
  ]);
  expect(idleOptions({ at: 'under-spokes', stagger: 0.1 }, 'rim.seam')).toEqual([]);
});
