/** Random plans of stands, inside inequalities that a shop would keep:
 *
 * - uprights and feet of 12 to 25 mm (laser: sheets of 4 to 9 mm), boards and sheets; the axle of 4 to 25 mm, or a bearing
 * - the axle at least the wheel's radius, the clearance, a foot and its shelf over the floor, and 20 mm more
 * - heads with a wall of at least half the hole's radius; seats with a shoulder only where 2 mm are left under them, never by laser
 * - feet and widths either left out or at least what uprights and notches take; ballast left out, or the stand anchored
 */
import type { Method } from '../../lib/stock/stock.js';
import { type Draw, drawer, seeded } from './random-plan.js';

type Plain = Record<string, unknown>;

const BEARINGS: Readonly<Record<string, readonly [outside: number, width: number]>> = {
  '608': [22, 7],
  '6001': [28, 8],
  '6202': [35, 11],
  '6204': [47, 14],
};

const CUTTERS: Readonly<Record<Method, Plain>> = {
  laser: { kind: 'laser', kerf: 0.2 },
  hand: { kind: 'saw', kerf: 1.5 },
  router: { kind: 'router', diameter: 3, reach: 40, pass: 3 },
};

function hole(d: Draw, method: Method, upright: number): { readonly bore: Plain; readonly radius: number } {
  if (d.chance(0.5)) {
    const axle = d.between(4, 25);
    return { bore: { axle }, radius: axle / 2 };
  }
  const name = d.one(...Object.keys(BEARINGS));
  const [outside, width] = BEARINGS[name]!;
  const seat = method !== 'laser' && upright >= width + 2 ? d.one('through', 'shoulder') : 'through';
  return { bore: { bearing: name, seat }, radius: outside / 2 };
}

const wood = (thickness: number, kind: string): Plain => ({
  kind,
  width: 4000,
  length: 9000,
  thickness,
  ...(kind === 'board' && { true: 3 }),
});

/** Bolted down, on as much ballast as a light push takes, or on more than any of these stands needs. */
function support(d: Draw): Plain {
  const push = d.between(1, 30);
  return d.one({ anchored: true }, { push }, { push, ballast: d.between(400, 1500) });
}

function attempt(d: Draw, method: Method): Plain {
  const thick = (): number => (method === 'laser' ? d.one(4, 5, 6, 9) : d.one(12, 15, 18, 25));
  const [upright, lower] = [thick(), thick()];
  const kind = d.one('cheeks', 'post');
  const { bore, radius } = hole(d, method, upright);
  const diameter = d.between(80, 1600);
  const [clearance, depth] = [d.between(5, 60), d.between(10, 120)];
  const base = d.chance(0.3) ? thick() : 0;
  const head = Math.max(radius * 1.5 + 2, lower * 1.1);
  const foot = Math.round(Math.max(1.2 * lower, d.between(15, 90)));
  const under = base + foot + lower + clearance + diameter / 2;
  const stub = base + foot + lower + Math.max(upright, foot / 2) + 2 * head + 6 * lower;
  const height = Math.ceil(Math.max(under, stub) + d.between(20, 600));
  const reach = depth / 2 + clearance + upright;
  const span = kind === 'cheeks' ? 2 * (reach + foot + lower) : reach + 2 * foot + 7 * lower;
  return {
    rimwright: 1,
    title: 'Random stand',
    units: 'mm',
    model: 'stand',
    carries: { wheel: d.one('helm', 'prize'), diameter, weight: d.between(0.5, 60), depth },
    kind,
    axle: { height, bore },
    uprights: { stock: 'upright', ...(d.chance(0.5) && { head: 2 * Math.ceil(head + d.between(0, 30)) }) },
    foot: {
      stock: 'foot',
      height: foot,
      ...(d.chance(0.3) && { length: Math.ceil(span + d.between(1, 500)) }),
      ...(d.chance(0.3) && { width: Math.ceil(Math.max(2 * head + 70, 10 * lower) + d.between(1, 500)) }),
    },
    ...(base > 0 && { base: { stock: 'base' } }),
    clearance,
    ...support(d),
    method,
    cutter: CUTTERS[method],
    fit: { slot: d.between(0, 0.5) },
    stock: {
      upright: wood(upright, method === 'laser' ? 'sheet' : d.one('board', 'sheet')),
      foot: wood(lower, method === 'laser' ? 'sheet' : d.one('board', 'sheet')),
      base: wood(base || 6, 'sheet'),
    },
  };
}

/** A plan of a stand for a seed and a method; the same one every time. */
export const randomStand = (seed: number, method: Method): Plain => attempt(drawer(seeded(seed)), method);
