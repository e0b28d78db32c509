import { beforeAll, describe, expect, test } from 'vitest';
import type { CouponOptions } from '../../lib/models/coupon-options.js';
import { readCoupon } from '../../lib/models/read-coupon.js';
import { random } from './coupon-noise.js';
import { type Cut, measured, type Sheet, written } from './coupon-shop.js';

// The model of noise: a gap is read with an error of sigma 0.02 mm (normal), twice; the clearance of every slot and bore is felt with the
// same error, anew at every try, and the one that feels most like what is wanted is noted: one try where steps are 0.1 mm, seven where they
// are 0.05 mm.

const SIGMA = 0.02;
const TRIALS = 100;
/** True widths of the cut; each is cut once and read several times. */
const WIDTHS = 8;
/** ms, on a busy machine */
const SLOW = 120_000;

const ROUTER: CouponOptions = { method: 'router', cutter: { kind: 'router', diameter: 6.35 }, thickness: 19.05 };
const LASER: CouponOptions = { method: 'laser', cutter: { kind: 'laser', kerf: 0.2 }, thickness: 6, bearing: '608' };

const CASES = [
  { name: 'router, a plug of its own', options: ROUTER, from: 6.2, to: 6.5, tries: 1, step: 0.1 },
  { name: 'laser, bearing seats', options: LASER, from: 0.08, to: 0.45, tries: 1, step: 0.1 },
  { name: 'laser, fine steps', options: { ...LASER, steps: 9, step: 0.05 }, from: 0.1, to: 0.3, tries: 7, step: 0.05 },
];

describe.each(CASES)('a coupon cut and read: $name', ({ options, from, to, tries, step }) => {
  let sheet: Sheet;
  let cuts: { readonly width: number; readonly cut: Cut }[];
  const { uniform, normal } = random(6);

  beforeAll(async () => {
    sheet = await written(options);
    cuts = Array.from({ length: WIDTHS }, () => uniform(from, to)).map(width => ({
      width,
      cut: measured(sheet, width),
    }));
  }, SLOW);

  /** The step that feels most like what is wanted, at one try. */
  const felt = (clearances: readonly number[], wanted: number): number => {
    const off = clearances.map(c => Math.abs(c + SIGMA * normal() - wanted));
    return off.indexOf(Math.min(...off));
  };

  test('the gap of ten equal pieces is ten kerfs, whatever the kerf', () => {
    for (const { width, cut } of cuts) {
      expect(cut.pieces).toHaveLength(10);
      expect(Math.max(...cut.pieces) - Math.min(...cut.pieces)).toBeLessThan(0.001);
      expect(Math.abs(cut.gap - 10 * width)).toBeLessThan(0.005);
    }
  });

  test('kerf within 0.01 mm in 95 of 100', () => {
    const errors = Array.from({ length: TRIALS }, (_, i) => {
      const { width, cut } = cuts[i % WIDTHS]!;
      const gap = [0, 1].map(() => cut.gap + SIGMA * normal());
      return Math.abs(readCoupon(options, { gap }).value.kerf!.value - width);
    });
    expect(errors.filter(e => e <= 0.01).length).toBeGreaterThanOrEqual(95);
    // what is promised of two readings of ten pieces: 0.02 / 10 / sqrt 2
    const spread = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / TRIALS);
    expect(spread).toBeLessThan(0.0025);
  });

  test.each([0, 1])('fit step right in 99 of 100, row %i', row => {
    let [right, close] = [0, 0];
    for (let i = 0; i < TRIALS; i++) {
      const { cut } = cuts[i % WIDTHS]!;
      const clearances = row === 0 ? cut.slots : cut.bores;
      const steps = sheet.coupon.sizes.rows[row]!.steps;
      expect(clearances).toHaveLength(steps.length);
      const best = 1 + Math.floor(uniform(0, steps.length - 2));
      const wanted = clearances[best]!;
      const names = Array.from({ length: tries }, () => steps[felt(clearances, wanted)]!.name);
      const { fits } = readCoupon(options, { gap: [cut.gap + SIGMA * normal()], steps: names }).value;
      if (fits[0]!.step === steps[best]!.name) right++;
      if (Math.abs(fits[0]!.value - wanted) <= step / 2) close++;
    }
    expect(right).toBeGreaterThanOrEqual(99);
    expect(close).toBeGreaterThanOrEqual(99);
  });

  test(
    'cut again with the kerf that was read, the middle slot has the clearance that felt right',
    async () => {
      const { width, cut } = cuts[3]!;
      const steps = sheet.coupon.sizes.rows[0]!.steps;
      const read = readCoupon(options, { gap: [cut.gap], steps: [steps[2]!.name] }).value;
      const again = await written({ ...options, cutter: read.cutter!, fit: { lap: read.fits[0]!.value } });
      const { slots } = measured(again, width);
      // what is rounded: kerf to 0.001, clearance to 0.01
      expect(Math.abs(slots[(slots.length - 1) / 2]! - cut.slots[2]!)).toBeLessThan(0.008);
      expect(Math.abs(cut.slots[2]! - steps[2]!.clearance)).toBeGreaterThan(0.01);
    },
    SLOW,
  );
});
