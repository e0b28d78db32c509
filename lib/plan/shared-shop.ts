import { type Issue, Unusable } from '../findings/unusable.js';
import type { Plan, Shop } from './plan.js';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What one shop has one of: said of its machine and of how it is worked. */
const ONE = [
  'method',
  'cutter',
  'bed',
  'relief',
  'clearing',
  'least',
  'feed',
  'leads',
  'tabs',
  'labels',
  'template',
] as const satisfies readonly (keyof Shop)[];

/** What of a plan's shop is not as in the first plan. */
function differences(first: Plan, plan: Plan): Issue[] {
  const whole = ONE.flatMap(field =>
    same(plan[field], first[field])
      ? []
      : [
          {
            field: `${field} (of ${plan.title})`,
            value: JSON.stringify(plan[field]) ?? 'missing',
            allowed: `the same in all plans made together: ${JSON.stringify(first[field]) ?? 'left out'}`,
          },
        ],
  );
  const stocks = plan.stock.flatMap(stock => {
    const other = first.stock.find(s => s.name.toLowerCase() === stock.name.toLowerCase());
    if (!other || same(other, stock)) return [];
    return [
      {
        field: `stock.${stock.name} (of ${plan.title})`,
        value: 'another stock of the same name',
        allowed: `the very stock that ${first.title} has, or another name`,
      },
    ];
  });
  return [...whole, ...stocks];
}

/** The shop of plans that are made together: one method, cutter, bed and way of cutting; stocks of one name are
 * the same boards, counted once. Copies are 1: they are each plan's own. @param plans one or more @throws Unusable naming what differs */
export function sharedShop(plans: readonly [Plan, ...Plan[]]): Shop {
  const [first, ...others] = plans;
  const issues = others.flatMap((plan, i) => plans.slice(0, i + 1).flatMap(before => differences(before, plan)));
  if (issues.length > 0) throw new Unusable(issues);
  const stock = new Map(plans.flatMap(p => p.stock.map(s => [s.name, s] as const)));
  const said = Object.fromEntries(ONE.flatMap(field => (first[field] === undefined ? [] : [[field, first[field]]])));
  const { units, method, cutter } = first;
  return { ...said, units, method, cutter, stock: [...stock.values()], copies: 1 };
}
