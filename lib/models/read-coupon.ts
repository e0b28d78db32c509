import type { Finding, Outcome } from '../findings/finding.js';
import { type Issue, Unusable } from '../findings/unusable.js';
import { signed } from '../parts/step-labels.js';
import type { Cutter } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { printMm } from '../units/print-length.js';
import { type CouponRow, type CouponSizes, couponSizes } from './coupon/sizes.js';
import type { CouponFit, CouponOptions } from './coupon-options.js';

/** What was found with a coupon; several readings of one thing are weighed together. */
export interface CouponMeasured {
  /** from the last ladder piece to the end of the arm, mm */
  readonly gap?: readonly Mm[];
  /** names of the slots, bores and plug holes that felt right: S5 */
  readonly steps?: readonly string[];
}

/** A kerf read off a ladder. Lengths mm. */
export interface KerfRead {
  readonly value: Mm;
  /** what the coupon was drawn for */
  readonly assumed: Mm;
  /** number of readings of the gap, and how far apart they lie */
  readonly readings: number;
  readonly spread: Mm;
}

/** A fit read off a row. Lengths mm. */
export interface FitRead {
  readonly fit: CouponFit | 'wedge';
  /** what to write in a plan, cut with the kerf that was read */
  readonly value: Mm;
  readonly step: string;
  /** as it was drawn */
  readonly clearance: Mm;
}

/** What a coupon tells. */
export interface CouponRead {
  readonly kerf?: KerfRead;
  /** the cutter as it really cuts, where the gap was measured */
  readonly cutter?: Cutter;
  readonly fits: readonly FitRead[];
}

/** A kerf is told to a thousandth, a clearance to a hundredth of a mm. */
const round = (value: Mm, decimals: number): Mm => Number(value.toFixed(decimals)) + 0;

/** How far a router's cut may be from its nominal width: run-out and wear, no more. As a share of it; common practice, no source. */
const ROUTER_OFF = 0.25;
/** Widest and narrowest kerf of a beam, mm: those of a plan. */
const BEAM = [0.01, 2] as const;
/** Readings of one gap that differ by more are worth another look, mm. */
const SPREAD: Mm = 0.2;

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** The middle of values, in their order; of the two middle ones the mean. */
function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return mean(sorted.slice(Math.ceil(half) - 1, Math.floor(half) + 1));
}

/** Kerfs this cutter can have, mm. */
function kerfRange({ options, kerf }: CouponSizes): readonly [Mm, Mm] {
  return options.method === 'laser' ? BEAM : [kerf * (1 - ROUTER_OFF), kerf * (1 + ROUTER_OFF)];
}

function gapIssues(s: CouponSizes, gaps: readonly Mm[]): Issue[] {
  const { pieces } = s.ladder;
  const [least, most] = kerfRange(s).map(k => round(k * pieces, 3)) as [Mm, Mm];
  const drawn = `the ${pieces} pieces of a coupon drawn for ${printMm(s.kerf, 3)}`;
  return gaps
    .filter(gap => !(gap >= least && gap <= most))
    .map(gap => ({ field: 'gap', value: `${gap} mm`, allowed: `${least} to ${most} mm for ${drawn}` }));
}

function kerfOf(s: CouponSizes, gaps: readonly Mm[]): KerfRead | undefined {
  if (gaps.length === 0) return undefined;
  return {
    value: round(mean(gaps) / s.ladder.pieces, 3),
    assumed: s.kerf,
    readings: gaps.length,
    spread: round(Math.max(...gaps) - Math.min(...gaps), 3),
  };
}

const lettered = (name: string): string => name.trim().toUpperCase();

const rowOf = (s: CouponSizes, name: string): CouponRow | undefined =>
  s.rows.find(row => row.steps.some(step => step.name === lettered(name)));

function stepIssues(s: CouponSizes, names: readonly string[]): Issue[] {
  const rows = s.rows.map(({ steps }) => `${steps[0]!.name} to ${steps.at(-1)!.name}`).join(', ');
  return names
    .filter(name => !rowOf(s, name))
    .map(name => ({ field: 'step', value: name.trim() || 'empty', allowed: `the name of a step: ${rows}` }));
}

/** A row's fit. The clearance is what it was drawn with, and what the cutter took more or less than it was drawn for: once where only the
 * hole was cut, twice where what is tried in it was cut too. */
function fitOf(row: CouponRow, names: readonly string[], off: Mm): FitRead[] {
  const found = names.flatMap(name => row.steps.filter(s => s.name === lettered(name)));
  if (found.length === 0) return [];
  const clearance = median(found.map(s => s.clearance));
  const nearest = row.steps.reduce((a, b) =>
    Math.abs(b.clearance - clearance) < Math.abs(a.clearance - clearance) ? b : a,
  );
  const value = round(clearance + (row.against === 'cut' ? 2 : 1) * off, 2);
  return [{ fit: row.fit, value, step: nearest.name, clearance: round(clearance, 3) }];
}

const note = (rule: string, where: string, message: string, level: Finding['level'] = 'note'): Finding => ({
  level,
  rule,
  where,
  message,
});

function findingsOf(s: CouponSizes, read: CouponRead): Finding[] {
  const { kerf, fits } = read;
  const ends = fits.filter(({ step }) => s.rows.some(r => r.steps[0]!.name === step || r.steps.at(-1)!.name === step));
  return [
    ...(kerf && kerf.spread > SPREAD
      ? [
          note(
            'coupon-spread',
            'gap',
            `gap: the readings differ by ${printMm(kerf.spread, 3)}; more than ${printMm(SPREAD)} is worth measuring again`,
            'warn',
          ),
        ]
      : []),
    ...(!kerf && fits.length > 0
      ? [
          note(
            'coupon-kerf',
            'gap',
            `gap: not measured, so the fits hold for a cutter of ${printMm(s.kerf, 3)} as the coupon was drawn`,
          ),
        ]
      : []),
    ...ends.map(({ step, fit, value }) =>
      note(
        'coupon-end',
        step,
        `${step} is at the end of its row: a better one may lie beyond; cut another coupon with fit ${fit}=${value}mm in the middle`,
        'warn',
      ),
    ),
  ];
}

/** What the readings of a coupon tell: kerf = mean gap / pieces, and for each row that was tried the clearance to write in a plan whose cutter
 * has that kerf. Of several names of one row the median counts.
 * @param options those the coupon was made with
 * @returns kerf, cutter and fits; findings where readings disagree or a step is the last of its row
 * @throws Unusable for options or readings that cannot be */
export function readCoupon(options: CouponOptions, measured: CouponMeasured): Outcome<CouponRead> {
  const s = couponSizes(options);
  const [gaps, names] = [measured.gap ?? [], measured.steps ?? []];
  const nothing: Issue[] =
    gaps.length + names.length === 0
      ? [{ field: 'gap', value: 'missing', allowed: 'the gap measured, or the name of a step that felt right' }]
      : [];
  const issues = [...nothing, ...gapIssues(s, gaps), ...stepIssues(s, names)];
  if (issues.length > 0) throw new Unusable(issues);
  const kerf = kerfOf(s, gaps);
  const off = (kerf?.value ?? s.kerf) - s.kerf;
  const value: CouponRead = {
    ...(kerf && { kerf, cutter: withWidth(options.cutter, kerf.value) }),
    fits: s.rows.flatMap(row => fitOf(row, names, off)),
  };
  return { value, findings: findingsOf(s, value) };
}

const withWidth = (cutter: Cutter, width: Mm): Cutter =>
  cutter.kind === 'router' ? { ...cutter, diameter: width } : { ...cutter, kerf: width };

/** One line for each thing a coupon tells, with how it came about. */
export function couponReadText({ kerf, cutter, fits }: CouponRead, pieces: number): string[] {
  const of = cutter?.kind === 'router' ? 'effective cutter diameter' : 'kerf';
  const many = kerf && kerf.readings > 1 ? `mean of ${kerf.readings} gaps` : 'gap';
  return [
    ...(kerf ? [`${of}: ${printMm(kerf.value, 3)} (${many} / ${pieces}; drawn for ${printMm(kerf.assumed, 3)})`] : []),
    ...fits.map(f => `${f.fit}: ${printMm(f.value)} (${f.step}, drawn with ${signed(f.clearance)} mm)`),
  ];
}
