import type { Cutter } from '../stock/stock.js';
import type { Mm } from '../units/length.js';

/** Fits a coupon tells, by their name in a plan. */
export const COUPON_FITS = ['lap', 'bore', 'plug'] as const;
export type CouponFit = (typeof COUPON_FITS)[number];

/** A test piece for one cutter in one material. Lengths mm. */
export interface CouponOptions {
  readonly method: 'router' | 'laser';
  /** as wide as it is thought to cut; a router with `router`, a laser with `laser` */
  readonly cutter: Cutter;
  /** of the offcut, 0.2 to 100 */
  readonly thickness: Mm;
  /** of the kerf ladder, 5 to 20; 10 unless given */
  readonly pieces?: number;
  /** of each row of fits, an odd number from 3 to 15; 7 unless given */
  readonly steps?: number;
  /** from one step to the next, 0.01 to 0.5; 0.1 unless given */
  readonly step?: Mm;
  /** the clearance of the middle step of each row, -1 to 3; lap 0.15, bore -0.05, plug 0 unless given */
  readonly fit?: { readonly [F in CouponFit]?: Mm };
  /** name of a bearing to try in bores of its own */
  readonly bearing?: string;
  /** diameter of bought plugs or dowels to try in bores of their own, 2 to 60; with neither these nor a bearing, the coupon cuts a plug itself */
  readonly plug?: Mm;
}
