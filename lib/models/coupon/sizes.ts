import { type Issue, Unusable } from '../../findings/unusable.js';
import type { Step } from '../../parts/step-labels.js';
import { bearing } from '../../stock/bearings.js';
import { cutWidth } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';
import { requireBounds, size } from '../bounds.js';
import type { CouponFit, CouponOptions } from '../coupon-options.js';

/** A row of places to try one fit in. Lengths mm. */
export interface CouponRow {
  /** the name of the fit in a plan */
  readonly fit: CouponFit;
  /** the letter its steps' names begin with: slots, bores, plug holes */
  readonly letter: 'S' | 'B' | 'P';
  /** what is tried in it */
  readonly tries: string;
  /** width or diameter of that */
  readonly nominal: Mm;
  /** whether the cutter cuts that too: then an error of the kerf shows on both sides of the joint */
  readonly against: 'cut' | 'bought';
  readonly steps: readonly Step[];
}

/** The ladder's pieces. Lengths mm. */
export interface LadderSizes {
  readonly pieces: number;
  /** of one as drawn, along the ladder and across */
  readonly width: Mm;
  readonly height: Mm;
  /** between the two lines the cutter's middle runs on at a piece's ends: its width and the cutter's */
  readonly spacing: Mm;
  /** of the bed's arm: as many times the spacing as there are pieces */
  readonly arm: Mm;
}

/** All sizes of a coupon, worked out once. Lengths mm. */
export interface CouponSizes {
  readonly options: CouponOptions;
  /** what the cutter is thought to cut */
  readonly kerf: Mm;
  readonly ladder: LadderSizes;
  readonly rows: readonly CouponRow[];
  /** width of the bed, of teeth, wood round bores, depth of slots */
  readonly band: Mm;
  readonly tooth: Mm;
  readonly wall: Mm;
  readonly depth: Mm;
}

/** Sizes that can be held and measured, by method; common practice, no source. */
const BY_METHOD = {
  router: { piece: [15, 40], band: 25, tooth: 12, wall: 10, depth: 25, tongue: 12, plug: 20 },
  laser: { piece: [8, 16], band: 12, tooth: 8, wall: 6, depth: 12, tongue: 10, plug: 12 },
} as const;

const PIECES = 10;
/** Far enough apart to be told at one try by somebody who feels 0.02 mm; see coupon.md. */
const STEPS = 7;
const STEP: Mm = 0.1;
/** The middle steps unless given: the fits that helm wheels are built with, and a plug as large as its hole. */
const MIDDLE = { lap: 0.15, bore: -0.05, plug: 0 } as const satisfies Record<CouponFit, Mm>;

const whole = (field: string, value: number | undefined, min: number, max: number, odd: boolean): Issue[] => {
  if (value === undefined || (Number.isInteger(value) && value >= min && value <= max && (!odd || value % 2 === 1)))
    return [];
  return [{ field, value: `${value}`, allowed: `${odd ? 'an odd' : 'a whole'} number, ${min} to ${max}` }];
};

function requireUsable(o: CouponOptions): void {
  const issues: Issue[] = [
    ...(o.cutter.kind === o.method
      ? []
      : [{ field: 'cutter.kind', value: o.cutter.kind, allowed: `${o.method}, as the method` }]),
    ...whole('pieces', o.pieces, 5, 20, false),
    ...whole('steps', o.steps, 3, 15, true),
  ];
  if (issues.length > 0) throw new Unusable(issues);
  const widest = o.method === 'laser' ? 2 : 20;
  requireBounds([
    size('cutter', cutWidth(o.cutter), o.method === 'laser' ? 0.01 : 0.2, widest),
    size('thickness', o.thickness, 0.2, 100),
    size('step', o.step, 0.01, 0.5),
    size('fit.lap', o.fit?.lap, -1, 3),
    size('fit.bore', o.fit?.bore, -1, 3),
    size('fit.plug', o.fit?.plug, -1, 3),
    size('plug', o.plug, 2, 60),
  ]);
}

function stepsOf(o: CouponOptions, fit: CouponFit, letter: string): Step[] {
  const steps = o.steps ?? STEPS;
  const step = o.step ?? STEP;
  const middle = o.fit?.[fit] ?? MIDDLE[fit];
  return Array.from({ length: steps }, (_, i) => ({
    name: `${letter}${i + 1}`,
    clearance: Math.round((middle + (i - (steps - 1) / 2) * step) * 1e6) / 1e6,
  }));
}

function rowsOf(o: CouponOptions, kerf: Mm): CouponRow[] {
  const own = BY_METHOD[o.method];
  const row = (
    fit: CouponFit,
    letter: CouponRow['letter'],
    tries: string,
    nominal: Mm,
    against: CouponRow['against'],
  ): CouponRow => ({ fit, letter, tries, nominal, against, steps: stepsOf(o, fit, letter) });
  const seats = o.bearing === undefined ? [] : [bearing(o.bearing)];
  const bought = o.plug === undefined ? [] : [o.plug];
  const none = seats.length + bought.length === 0;
  return [
    row('lap', 'S', 'the tongue', Math.max(own.tongue, 2 * kerf), 'cut'),
    ...seats.map(b => row('bore', 'B', `a ${b.name} bearing`, b.outside, 'bought')),
    ...bought.map(d => row('plug', 'P', 'a bought plug', d, 'bought')),
    ...(none ? [row('plug', 'P', 'the plug', Math.max(own.plug, 2 * kerf), 'cut')] : []),
  ];
}

/** The sizes of a coupon, with what its options leave out. @throws Unusable naming the option */
export function couponSizes(options: CouponOptions): CouponSizes {
  requireUsable(options);
  const kerf = cutWidth(options.cutter);
  const { piece, band, tooth, wall, depth } = BY_METHOD[options.method];
  const [width, height] = piece;
  const pieces = options.pieces ?? PIECES;
  const spacing = width + kerf;
  return {
    options,
    kerf,
    ladder: { pieces, width, height, spacing, arm: pieces * spacing },
    rows: rowsOf(options, kerf),
    band,
    tooth,
    wall,
    depth,
  };
}
