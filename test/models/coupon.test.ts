import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { bounds } from '../../lib/geometry/measure.js';
import { makeModel } from '../../lib/make.js';
import { coupon } from '../../lib/models/coupon.js';
import type { CouponOptions } from '../../lib/models/coupon-options.js';
import { handCoupon } from '../../lib/models/hand-coupon.js';
import { readCoupon } from '../../lib/models/read-coupon.js';
import { readHandCoupon } from '../../lib/models/read-hand-coupon.js';
import { letteringWidth } from '../../lib/parts/lettering/lettering.js';

const ROUTER: CouponOptions = { method: 'router', cutter: { kind: 'router', diameter: 6.35 }, thickness: 19.05 };
const LASER: CouponOptions = { method: 'laser', cutter: { kind: 'laser', kerf: 0.2 }, thickness: 6 };

const issues = (work: () => unknown): readonly string[] => {
  try {
    work();
  } catch (error) {
    if (error instanceof Unusable) return error.issues.map(i => `${i.field} is ${i.value}; allowed: ${i.allowed}`);
    throw error;
  }
  return [];
};

const anyCoupon = fc.record(
  {
    laser: fc.boolean(),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    pieces: fc.integer({ min: 5, max: 20 }),
    half: fc.integer({ min: 1, max: 5 }),
    bearing: fc.constantFrom('608', '6202', '6204'),
    plug: fc.constantFrom(9.525, 16, 25),
  },
  { requiredKeys: ['laser', 'share', 'pieces', 'half'] },
);

const optionsFor = (a: typeof anyCoupon extends fc.Arbitrary<infer T> ? T : never): CouponOptions => ({
  ...(a.laser
    ? { method: 'laser', cutter: { kind: 'laser', kerf: 0.08 + 0.4 * a.share } }
    : { method: 'router', cutter: { kind: 'router', diameter: 3 + 5 * a.share } }),
  thickness: 12,
  pieces: a.pieces,
  steps: 2 * a.half + 1,
  ...(a.bearing !== undefined && { bearing: a.bearing }),
  ...(a.plug !== undefined && { plug: a.plug }),
});

describe('what is on a coupon', () => {
  test('the arm is as many cut line spacings as there are pieces: that makes the gap n kerfs', () => {
    const { ladder } = coupon(ROUTER).sizes;
    expect(ladder.spacing).toBe(15 + 6.35);
    expect(ladder.arm).toBeCloseTo(10 * 21.35, 9);
  });

  test('every step is labelled once, and so is what it is for', () => {
    const texts = coupon({ ...LASER, bearing: '608' }).model.parts.flatMap(p =>
      p.features.flatMap(f => (f.kind === 'label' ? [f.text] : [])),
    );
    for (const name of ['S1', 'S4', 'S7', 'B1', 'B4', 'B7', 'KERF = GAP / 10', 'laser 0.2 mm'])
      expect(texts.filter(t => t === name)).toHaveLength(1);
    expect(texts).toContain('bearing 22 mm, clearance in mm');
  });

  test('any coupon is cut from one offcut without a stop or a piece missing', async () => {
    await fc.assert(
      fc.asyncProperty(anyCoupon, async a => {
        const options = optionsFor(a);
        const { model, stock } = coupon(options);
        const { method, cutter } = options;
        const shop = { units: 'mm', method, cutter, stock: [stock], copies: 1 } as const;
        const made = await makeModel({ value: model, findings: [] }, shop, {}, { only: 'cut' });
        expect(made.findings.filter(f => f.level === 'stop')).toEqual([]);
        expect(made.report?.sheets).toHaveLength(1);
        const pieces = model.parts.reduce((sum, p) => sum + p.quantity, 0);
        expect(made.report?.sheets[0]?.parts).toHaveLength(pieces);
      }),
      { numRuns: 8 },
    );
  }, 120_000);

  test('lettering stays on its part', () => {
    fc.assert(
      fc.property(anyCoupon, a => {
        for (const { region, features } of coupon(optionsFor(a)).model.parts) {
          const box = bounds(region.outer);
          for (const f of features) {
            if (f.kind !== 'label') continue;
            const half = letteringWidth(f.text, f.height) / 2;
            expect(f.at.x - half).toBeGreaterThan(box.minX);
            expect(f.at.x + half).toBeLessThan(box.maxX);
          }
        }
      }),
    );
  });

  test('options out of their range are refused by name', () => {
    expect(issues(() => coupon({ ...ROUTER, cutter: { kind: 'laser', kerf: 0.2 } }))).toEqual([
      'cutter.kind is laser; allowed: router, as the method',
    ]);
    expect(issues(() => coupon({ ...ROUTER, steps: 4, pieces: 2 }))).toEqual([
      'pieces is 2; allowed: a whole number, 5 to 20',
      'steps is 4; allowed: an odd number, 3 to 15',
    ]);
    expect(issues(() => coupon({ ...ROUTER, step: 3, thickness: Number.NaN }))).toHaveLength(2);
    expect(issues(() => coupon({ ...ROUTER, bearing: '9999' }))[0]).toContain('bearing is 9999');
  });
});

describe('reading', () => {
  test('kerf is the mean gap over the pieces; what was cut on both sides of a joint counts twice', () => {
    const { value, findings } = readCoupon({ ...LASER, bearing: '608' }, { gap: [2.12, 2.14], steps: ['S4', 'b3'] });
    expect(value.kerf).toEqual({ value: 0.213, assumed: 0.2, readings: 2, spread: 0.02 });
    expect(value.cutter).toEqual({ kind: 'laser', kerf: 0.213 });
    // 0.15 + 2 x 0.013, -0.15 + 0.013
    expect(value.fits.map(f => [f.fit, f.value])).toEqual([
      ['lap', 0.18],
      ['bore', -0.14],
    ]);
    expect(findings).toEqual([]);
  });

  test("a router's kerf is its effective diameter; the rest of the cutter stays", () => {
    const cutter = { kind: 'router', diameter: 6.35, reach: 25 } as const;
    expect(readCoupon({ ...ROUTER, cutter }, { gap: [63.9] }).value.cutter).toEqual({ ...cutter, diameter: 6.39 });
  });

  test('of several tries the middle one counts', () => {
    const read = readCoupon(ROUTER, { steps: ['S4', 'S4', 'S7'] });
    expect(read.value.fits[0]).toMatchObject({ step: 'S4', value: 0.15 });
    expect(read.findings.map(f => f.rule)).toEqual(['coupon-kerf']);
  });

  test('readings that disagree, and the last step of a row, are told', () => {
    const { findings } = readCoupon(ROUTER, { gap: [63, 64], steps: ['S1'] });
    expect(findings.map(f => f.rule)).toEqual(['coupon-spread', 'coupon-end']);
  });

  test.each([
    [{ gap: [-2] }, 'gap is -2 mm; allowed: 0.1 to 20 mm for the 10 pieces of a coupon drawn for 0.2 mm'],
    [{ gap: [200] }, 'gap is 200 mm; allowed: 0.1 to 20 mm for the 10 pieces of a coupon drawn for 0.2 mm'],
    [{ gap: [Number.NaN] }, 'gap is NaN mm; allowed: 0.1 to 20 mm for the 10 pieces of a coupon drawn for 0.2 mm'],
    [{ steps: ['S9'] }, 'step is S9; allowed: the name of a step: S1 to S7, P1 to P7'],
    [{}, 'gap is missing; allowed: the gap measured, or the name of a step that felt right'],
  ])('%j is refused', (measured, said) => {
    expect(issues(() => readCoupon(LASER, measured))).toEqual([said]);
  });
});

describe('by hand', () => {
  test('two strips each: a half lap, a wedge, the ends of felloes', () => {
    const { model, stock } = handCoupon({ thickness: 19 });
    expect(model.parts.map(p => [p.id, p.quantity])).toEqual([
      ['lap', 2],
      ['wedge', 2],
      ['seam', 2],
    ]);
    // ends lean by 180 / 5 degrees: the lower edge is shorter by 2 x 32 tan 36
    const [lower] = model.parts[2]!.region.outer;
    expect(-2 * lower!.x).toBeCloseTo(bounds(model.parts[2]!.region.outer).maxX * 2 - 64 * Math.tan(Math.PI / 5), 9);
    expect(stock.length).toBeGreaterThan(100);
  });

  test('what was cut too much is drawn too little the next time', () => {
    const { value } = readHandCoupon({ thickness: 19 }, { lap: 0.4, wedge: 'tight', seam: 0.3 });
    expect(value.fits.map(f => [f.fit, f.value])).toEqual([
      ['lap', -0.1],
      ['wedge', 0.1],
    ]);
    // half of 0.3 in 32, a small angle
    expect(value.lean).toBeCloseTo(0.3 / 32 / 2, 6);
    expect(readHandCoupon({ thickness: 19 }, { lap: 'snug' }).value.fits[0]!.value).toBe(0.15);
  });

  test('nonsense is refused', () => {
    expect(issues(() => readHandCoupon({ thickness: 19 }, { lap: -1, seam: 9 }))).toEqual([
      'lap is -1 mm; allowed: tight, snug, loose, or the play measured, 0 to 3 mm',
      'seam is 9 mm; allowed: -3 to 3 mm, open at the outer edge',
    ]);
    expect(issues(() => readHandCoupon({ thickness: 19 }, {}))).toHaveLength(1);
  });
});
