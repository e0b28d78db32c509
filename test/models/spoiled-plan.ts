import { type Draw, drawer, seeded } from './random-plan.js';

type Plain = Record<string, unknown>;

/** What a value is replaced with: wrong types, extremes, other words, or one that was right a little larger or smaller. */
const SCRAPS: readonly unknown[] = [
  null,
  true,
  '',
  'x',
  'none',
  '18deg',
  '-44deg',
  '1/0',
  [],
  {},
  -1,
  0,
  0.2,
  1,
  2,
  3,
  7,
  24,
  59,
  1e-9,
  1e9,
  1999,
  2999,
  5999,
  '3in',
  'planks',
  'segments',
  'laser',
  'router',
  { axle: 1 },
  { axle: 299 },
  { joint: 'finger' },
  { joint: 'key' },
  { joint: 'scarf', overlap: '20deg' },
  { joint: 'dowel' },
];

const isPlain = (v: unknown): v is Plain => typeof v === 'object' && v !== null && !Array.isArray(v);

/** Paths of everything in a plan but its stock, whose sizes only decide how it is cut. */
function paths(plan: Plain, above: readonly string[] = []): string[][] {
  return Object.entries(plan).flatMap(([key, value]) => {
    const path = [...above, key];
    if (path[0] === 'stock' && path.length > 2) return [];
    return isPlain(value) ? [path, ...paths(value, path)] : [path];
  });
}

function changed(plan: Plain, [key, ...rest]: readonly string[], to: (old: unknown) => unknown): Plain {
  const old = plan[key!];
  const value = rest.length > 0 && isPlain(old) ? changed(old, rest, to) : to(old);
  const { [key!]: _, ...others } = plan;
  return value === undefined ? others : { ...others, [key!]: value };
}

function spoil(d: Draw, plan: Plain): Plain {
  const all = paths(plan);
  return changed(plan, d.one(...all), old => {
    if (typeof old === 'number' && d.chance(0.6))
      return Number.isInteger(old) && d.chance(0.5) ? d.whole(0, 60) : old * d.one(0.01, 0.2, 0.5, 0.9, 1.1, 2, 5, 100);
    return d.chance(0.1) ? undefined : d.one(...SCRAPS);
  });
}

/** A plan with one to three of its values replaced or left out; the same for a seed every time. */
export function spoiled(plan: Plain, seed: number): Plain {
  const d = drawer(seeded(seed));
  return Array.from({ length: d.whole(1, 3) }).reduce<Plain>(now => spoil(d, now), plan);
}
