import { type Issue, Unusable } from '../findings/unusable.js';
import type { CouponOptions } from '../models/coupon-options.js';
import type { CouponRead, FitRead } from '../models/read-coupon.js';
import type { Cutter } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { editPlan, type PlanChange } from './edit-plan.js';
import type { Plan } from './plan.js';
import { planSchema } from './plan-schema.js';
import { readPlan } from './read-plan.js';

const mm = (value: Mm): string => `${value}mm`;

/** Names plans of other models have for the same kind of joint, the first that a model knows counts. */
const ALSO: Readonly<Record<FitRead['fit'], readonly string[]>> = {
  lap: ['lap', 'slot', 'mortise'],
  wedge: ['wedge'],
  bore: ['bore'],
  plug: ['plug', 'peg', 'rod'],
};

/** The keys of a cutter that say what was read. */
const cutterKeys = (cutter: Cutter): readonly (readonly [string, string])[] => [
  ['kind', cutter.kind],
  cutter.kind === 'router' ? ['diameter', mm(cutter.diameter)] : ['kerf', mm(cutter.kerf)],
];

/** The lines of a plan that say what a coupon tells, to be pasted: `cutter: { kind: laser, kerf: 0.21mm }`. */
export function couponLines({ cutter, fits }: CouponRead): string[] {
  const braces = (pairs: readonly (readonly [string, string])[]): string =>
    `{ ${pairs.map(([key, value]) => `${key}: ${value}`).join(', ')} }`;
  return [
    ...(cutter ? [`cutter: ${braces(cutterKeys(cutter))}`] : []),
    ...(fits.length > 0 ? [`fit: ${braces(fits.map(f => [f.fit, mm(f.value)]))}`] : []),
  ];
}

interface Schema {
  readonly title?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
}

/** The fits a plan's model has. */
function fitsOf({ model }: Plan): string[] {
  const { anyOf } = planSchema() as { readonly anyOf: readonly Schema[] };
  return Object.keys(anyOf.find(s => s.title === model)?.properties?.['fit']?.properties ?? {});
}

/** The cutter a plan cuts a stock with, or all but those that have their own. */
const cutterOf = (plan: Plan, stock: string | undefined): Cutter =>
  plan.stock.find(s => s.name === stock)?.cutter ?? plan.cutter;

function refusals(plan: Plan, { cutter, fits }: CouponRead, stock: string | undefined): Issue[] {
  const known = fitsOf(plan);
  const names = plan.stock.map(s => s.name);
  return [
    ...(stock !== undefined && !names.includes(stock)
      ? [{ field: 'stock', value: stock, allowed: names.join(', ') }]
      : []),
    ...(cutter && cutter.kind !== cutterOf(plan, stock).kind
      ? [
          {
            field: 'cutter.kind',
            value: cutterOf(plan, stock).kind,
            allowed: `${cutter.kind}: what the coupon was cut with`,
          },
        ]
      : []),
    ...fits
      .filter(f => !ALSO[f.fit].some(name => known.includes(name)))
      .map(f => ({
        field: `fit.${f.fit}`,
        value: mm(f.value),
        allowed: `in a ${plan.model}: ${known.map(k => `fit.${k}`).join(', ')}`,
      })),
  ];
}

/** What a coupon tells, written into a plan: its cutter, or a stock's own, and its fits, under the name its model has for that kind of joint.
 * Remarks and layout stay. @param stock whose cutter it is; the plan's unless given
 * @returns the plan's text, and the fields that were written
 * @throws Unusable for a plan that cannot be used, is cut by another kind of cutter, or has no such fit */
export function intoPlan(
  text: string,
  read: CouponRead,
  stock?: string,
): { readonly text: string; readonly fields: readonly PlanChange[] } {
  const plan = readPlan(text);
  const issues = refusals(plan, read, stock);
  if (issues.length > 0) throw new Unusable(issues);
  const known = fitsOf(plan);
  const under: readonly string[] = stock === undefined ? ['cutter'] : ['stock', stock, 'cutter'];
  const cutters = read.cutter ? cutterKeys(read.cutter) : [];
  const fields: PlanChange[] = [
    ...cutters.map(([key, value]): PlanChange => ({ path: [...under, key] as unknown as PlanChange['path'], value })),
    ...read.fits.map(
      (f): PlanChange => ({ path: ['fit', ALSO[f.fit].find(name => known.includes(name))!], value: mm(f.value) }),
    ),
  ];
  return { text: editPlan(text, fields), fields };
}

/** What of a coupon's options a plan says. */
export const optionsOf = (plan: Plan, stock?: string): Pick<CouponOptions, 'method' | 'cutter'> | undefined =>
  plan.method === 'hand' ? undefined : { method: plan.method, cutter: cutterOf(plan, stock) };
