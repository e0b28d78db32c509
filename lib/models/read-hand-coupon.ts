import type { Finding, Outcome } from '../findings/finding.js';
import { type Issue, Unusable } from '../findings/unusable.js';
import type { Mm, Radians } from '../units/length.js';
import { type HandCouponOptions, type HandSizes, handSizes } from './hand-coupon.js';
import type { CouponRead, FitRead } from './read-coupon.js';

/** How a joint goes together, in words. */
export const FEELS = ['tight', 'snug', 'loose'] as const;
export type Feel = (typeof FEELS)[number];

/** What was found with a hand coupon: a word, or the play or gap that was measured, mm. */
export interface HandMeasured {
  readonly lap?: Feel | Mm;
  readonly wedge?: Feel | Mm;
  /** how far the seam is open at its outer edge, mm; below zero at its inner edge */
  readonly seam?: Mm;
}

/** What a hand coupon tells: fits, and how far the ends of felloes were cut off their angle. */
export interface HandRead extends CouponRead {
  /** to lean the ends more than before, radians; below zero less */
  readonly lean?: Radians;
}

/** What a word is worth: a sheet of paper, mm; common practice, no source. */
const PAPER: Mm = 0.1;
/** Largest play and gap worth reading, mm. */
const MOST: Mm = 3;

const round = (value: Mm): Mm => Number(value.toFixed(2)) + 0;

/** What was cut more or less than drawn, so that the next one can be drawn the other way. */
function fitOf(fit: 'lap' | 'wedge', drawn: Mm, found: Feel | Mm | undefined): FitRead[] {
  if (found === undefined) return [];
  const over = typeof found === 'number' ? found - drawn : PAPER * (FEELS.indexOf(found) - 1);
  const step = typeof found === 'number' ? `${found} mm of play` : found;
  return [{ fit, value: round(drawn - over), step, clearance: drawn }];
}

function requireUsable(m: HandMeasured): void {
  const plays = (['lap', 'wedge'] as const).flatMap((field): Issue[] => {
    const value = m[field];
    if (value === undefined || (typeof value === 'string' ? FEELS.includes(value) : value >= 0 && value <= MOST))
      return [];
    const shown = typeof value === 'number' ? `${value} mm` : value;
    return [{ field, value: shown, allowed: `${FEELS.join(', ')}, or the play measured, 0 to ${MOST} mm` }];
  });
  const seam =
    m.seam === undefined || Math.abs(m.seam) <= MOST
      ? []
      : [{ field: 'seam', value: `${m.seam} mm`, allowed: `-${MOST} to ${MOST} mm, open at the outer edge` }];
  const nothing =
    Object.keys(m).length > 0
      ? []
      : [{ field: 'lap', value: 'missing', allowed: 'lap, wedge or seam as it was found' }];
  const issues = [...plays, ...seam, ...nothing];
  if (issues.length > 0) throw new Unusable(issues);
}

/** Two ends share what is missing. */
const leanFor = (s: HandSizes, open: Mm): Radians => Math.atan(open / s.width) / 2;

/** What the readings of a hand coupon tell. The lap or wedge came out with another clearance than drawn: what was cut too much is drawn too
 * little the next time. A seam is no matter of a fit but of the angle its ends are cut at.
 * @param options those the coupon was made with   @throws Unusable */
export function readHandCoupon(options: HandCouponOptions, measured: HandMeasured): Outcome<HandRead> {
  const s = handSizes(options);
  requireUsable(measured);
  const fits = [...fitOf('lap', s.fit.lap, measured.lap), ...fitOf('wedge', s.fit.wedge, measured.wedge)];
  const findings = fits.flatMap((f): Finding[] => {
    if (f.value >= -1) return [];
    const message = `fit.${f.fit}: ${f.value} mm is less than a plan takes, -1 mm; cut another coupon nearer to the line`;
    return [{ level: 'warn', rule: 'coupon-end', where: `fit.${f.fit}`, message, value: f.value, limit: -1 }];
  });
  const { seam } = measured;
  return { value: { fits, ...(seam !== undefined && { lean: leanFor(s, seam) }) }, findings };
}
