import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acrossIsLong, alongIsLong } from '../../lib/joints/glue.js';
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
  const felloes = fc.record({
    sweep: fc.integer({ min: 4, max: 16 }).map(n => (2 * Math.PI) / n),
    inner: fc.double({ min: 250, max: 800, noNaN: true }),
    band: fc.double({ min: 90, max: 160, noNaN: true }),
    thickness: fc.double({ min: 12, max: 30, noNaN: true }),
  });

  test('area, long-grain share and their product: scarf over finger over biscuit over butt, in any felloe of a quarter turn or less', () => {
    fc.assert(
      fc.property(felloes, ({ sweep, inner, band, thickness }) => {
        const own = site({ sweep, inner, outer: inner + band, thickness });
        const by = (['scarf', 'finger', 'biscuit', 'butt'] as const).map(joint => glue(joint, own));
        for (const measure of [by.map(g => g.area), by.map(g => g.longGrain), by.map(g => g.area * g.longGrain)])
          expect([...measure].sort((a, b) => b - a)).toEqual(measure);
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
  });

  test('faces count as long grain within 45 degrees of it: seams in three felloes, fingers in four and more', () => {
    const of = (n: number) => site({ sweep: (2 * Math.PI) / n });
    expect([3, 4, 5, 12].map(n => [acrossIsLong(of(n)), alongIsLong(of(n))])).toEqual([
      [true, false],
      [false, true],
      [false, true],
      [false, true],
    ]);
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
