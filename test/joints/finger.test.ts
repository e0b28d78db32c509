import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intersection } from '../../lib/geometry/boolean.js';
import { area } from '../../lib/geometry/measure.js';
import { moveRegion, turning } from '../../lib/geometry/motion.js';
import { fingered, fingerRun } from '../../lib/joints/finger.js';
import { fingerPitch, fingerSeam } from '../../lib/joints/finger-sizes.js';
import { near } from '../close.js';
import { plain, sectorArea, site } from './site.js';

const sites = fc.record({
  felloes: fc.integer({ min: 4, max: 12 }),
  inner: fc.double({ min: 200, max: 600, noNaN: true }),
  band: fc.double({ min: 40, max: 120, noNaN: true }),
  count: fc.integer({ min: 2, max: 6 }),
});
const siteOf = ({ felloes, inner, band }: { felloes: number; inner: number; band: number }, clearance = 0) =>
  site({ inner, outer: inner + band, sweep: (2 * Math.PI) / felloes, clearance });

describe('pitch', () => {
  // sqrt(300² - 30²/4) = 299.62476533...; (299.62476533 - 230) / 5
  test('by hand: five fingers of 30 mm between radii of 230 and 300 mm', () => {
    near(fingerPitch(230, 300, 5, 30), (Math.sqrt(90000 - 225) - 230) / 5);
    near(fingerPitch(230, 300, 5, 30), 13.924953066315, 1e-12);
  });

  test('fingers and pitch fill the band up to where the rim is over their tips', () => {
    fc.assert(
      fc.property(sites, s => {
        const own = siteOf(s);
        const f = fingerSeam(own, { count: s.count });
        near(own.inner + f.count * f.pitch, Math.sqrt(own.outer * own.outer - (f.length * f.length) / 4));
      }),
    );
  });

  test('no finger is narrower than the pitch, the outermost ones included', () => {
    fc.assert(
      fc.property(sites, s => {
        const own = siteOf(s);
        const f = fingerSeam(own, { count: s.count });
        const run = fingerRun(own, f, -1);
        // the run's corners come two by two at the flanks: along u from outside in
        const [outermost, innermost] = [run[0]!.u - run[1]!.u, run.at(-2)!.u - run.at(-1)!.u];
        expect(outermost).toBeGreaterThanOrEqual(f.pitch - 1e-9);
        expect(innermost).toBeGreaterThanOrEqual(f.pitch - 1e-9);
      }),
    );
  });

  test('counts by band: about as wide as the felloe is thick, an odd number', () => {
    expect([70, 108, 200].map(band => fingerSeam(site({ inner: 300, outer: 300 + band }), {}).count)).toEqual([
      3, 5, 9,
    ]);
  });
});

describe('where there is little room', () => {
  // a flange of eight segments from a bore of 20 mm to 360 mm: an inner edge 8 mm wide to either side of a felloe's middle
  const narrow = site({ inner: 20, outer: 360 });

  test('there are more, narrower fingers, which hang by 3 mm to either side of the middle at the least', () => {
    const f = fingerSeam(narrow, {});
    expect(fingered(plain(narrow), narrow, {}).findings).toEqual([]);
    expect(f.length).toBeGreaterThanOrEqual(0.75 * f.pitch);
    expect(f.length / 2 + 3).toBeLessThanOrEqual((20 + f.pitch) * Math.tan(Math.PI / 8) + 1e-9);
  });

  test('they are shorter beside what stands near, as long as they are worth cutting', () => {
    expect(fingerSeam(site({ room: 8 }), {}).length).toBeCloseTo(16, 9);
    const least = fingerSeam(site({ room: 1 }), {});
    expect(least.length).toBeGreaterThanOrEqual(0.75 * least.pitch);
  });

  test('in a narrow band there are fewer', () => {
    expect(fingerSeam(site({ inner: 230, outer: 244 }), {}).count).toBe(2);
  });
});

describe('shape', () => {
  test('felloes are alike: together they fill the ring', () => {
    fc.assert(
      fc.property(sites, s => {
        const own = siteOf(s);
        const { part, findings } = fingered(plain(own), own, { count: s.count });
        expect(findings).toEqual([]);
        near(area(part.region), sectorArea(own));
        const next = moveRegion(part.region, turning(own.sweep));
        expect(intersection([part.region], [next]).reduce((sum, r) => sum + area(r), 0)).toBeLessThan(1e-6);
      }),
      { numRuns: 30 },
    );
  });

  test('a fit takes its width off along the whole run', () => {
    const tight = site();
    const loose = site({ clearance: 0.2 });
    const at = (s: typeof tight): number => area(fingered(plain(s), s, { count: 5, length: 20 }).part.region);
    // four flanks of 20 mm, less 0.2 of each where the tips draw back, and tips across the band
    const f = fingerSeam(tight, { count: 5, length: 20 });
    const along = 4 * f.length + (tight.outer - tight.inner);
    near(at(tight) - at(loose), 0.2 * along, 5e-3);
  });

  test('every edge of the seam is tagged', () => {
    const { part } = fingered(plain(site()), site(), { count: 5 });
    expect(part.region.outer.filter(v => v.mate === 'finger')).toHaveLength(2 * 9);
    expect(part.region.outer.filter(v => v.mate === undefined)).toHaveLength(2);
  });
});

test.each([
  [{ count: 20 }, {}, 'rim.seam.count', /20; .* these would be 3.5 mm .*; allowed: 2 to 11/],
  [{ length: 200 }, {}, 'rim.seam.length', /200 mm .*; fingers .* wide may be .* to .* long; allowed: that/],
  [{ length: 1 }, {}, 'rim.seam.length', /1 mm .*; fingers .* wide may be 17.5 mm .* to 93.33 mm/],
  [{ count: 3, length: 17 }, {}, 'rim.seam.length', /17 mm .* may be 17.47 mm .* to 93.17 mm/],
  [
    {},
    { laps: [{ apart: 0.05, width: 20, depth: 9, face: 'front' as const }] },
    'rim.seam.joint',
    /is finger, its length .* before they meet a lap/,
  ],
])('%j is refused', (options, change, where, message) => {
  const { findings, part } = fingered(plain(site(change)), site(change), options);
  expect(findings.map(f => [f.level, f.where])).toEqual([['stop', where]]);
  expect(findings[0]!.message).toMatch(message);
  expect(part.region.outer).toHaveLength(4);
});

test('in three felloes the grain runs short across the fingers; not in plywood', () => {
  const three = site({ sweep: (2 * Math.PI) / 3 });
  const rules = (s: typeof three): string[] => fingered(plain(s), s, {}).findings.map(f => `${f.level} ${f.rule}`);
  expect(rules(three)).toEqual(['warn short-grain']);
  expect(rules({ ...three, grained: false })).toEqual([]);
});
