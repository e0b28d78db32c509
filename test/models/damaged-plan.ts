import type { Method } from '../../lib/stock/stock.js';
import { randomModels } from './random-models.js';
import { type Draw, drawer, seeded } from './random-plan.js';

/** Anything a plan may hold; NUMBERS below stand for what JSON has no words for. */
type Value = null | boolean | number | string | readonly Value[] | { readonly [key: string]: Value };

const METHODS: readonly Method[] = ['router', 'laser', 'hand'];

/** Written as YAML's own words, without quotation marks. */
const NUMBERS: Readonly<Record<string, string>> = {
  '@nan': '.nan',
  '@inf': '.inf',
  '@-inf': '-.inf',
  '@huge': '1e400',
};

const SCRAPS: readonly Value[] = [
  null,
  true,
  false,
  '',
  ' ',
  'none',
  'laser',
  'router',
  'hand',
  'in',
  '18deg',
  '-90deg',
  '1e3deg',
  '4-1/4in',
  '1/0',
  '-3mm',
  '__proto__',
  'é',
  [],
  {},
  [[]],
  [1, 2, 3],
  -1,
  0,
  0.5,
  1,
  2,
  3,
  1e-12,
  1e6,
  1e9,
  1e300,
  Number.MAX_SAFE_INTEGER,
  ...Object.keys(NUMBERS),
];

/** Joints with whatever may be said about them, right or wrong together. */
function joint(d: Draw): Value {
  const kind = d.one('butt', 'biscuit', 'dowel', 'finger', 'key', 'scarf', 'lap', 'dovetail');
  const extras: readonly (readonly [string, Value])[] = [
    ['size', d.one<Value>('0', '10', '20', '99', 20)],
    ['count', d.one<Value>(0, 1, 2, 5, 100, 2.5)],
    ['diameter', d.one<Value>(-1, 6, 8, 60)],
    ['depth', d.one<Value>(0, 5, 25, 1e4)],
    ['overlap', d.one<Value>('0deg', '12deg', '200deg', 5)],
    ['at', d.one<Value>('between-spokes', 'under-spokes', '7deg', '400deg', 'nowhere')],
  ];
  return Object.fromEntries([['joint', kind], ...extras.filter(() => d.chance(0.3))]);
}

const isTree = (v: Value | undefined): v is { readonly [key: string]: Value } =>
  typeof v === 'object' && v !== null && !Array.isArray(v);

type Path = readonly string[];

function paths(value: Value, above: Path = []): Path[] {
  if (!isTree(value)) return [];
  return Object.entries(value).flatMap(([key, v]) => [[...above, key], ...paths(v, [...above, key])]);
}

const at = (value: Value, path: Path): Value | undefined =>
  path.reduce<Value | undefined>((v, key) => (isTree(v) ? v[key] : undefined), value);

/** A value with what lies at a path replaced; left out for undefined. */
function put(value: Value, [key, ...rest]: Path, by: Value | undefined): Value {
  if (key === undefined || !isTree(value)) return by ?? null;
  const inner = rest.length > 0 ? put(value[key] ?? {}, rest, by) : by;
  const { [key]: _, ...others } = value;
  return inner === undefined ? others : { ...others, [key]: inner };
}

function worse(d: Draw, old: Value): Value {
  if (typeof old === 'number' && d.chance(0.6)) {
    if (d.chance(0.3)) return d.one(-old, 0, old + 0.5, Math.round(old), d.whole(0, 80));
    return old * d.one(1e-6, 0.01, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 2, 10, 1000);
  }
  return d.one(...SCRAPS);
}

const WILD = ['worse', 'worse', 'out', 'swap', 'joint', 'graft', 'method', 'unit'] as const;
/** what a reader of plans most often lets pass */
const MILD = ['number', 'number', 'number', 'number', 'joint', 'method'] as const;

/** One place of a plan damaged. */
function damaged(d: Draw, plan: Value, other: Value, how: (typeof WILD | typeof MILD)[number]): Value {
  const all = paths(plan);
  const one = d.one(...all);
  switch (how) {
    case 'number': {
      const number = d.one(...all.filter(path => typeof at(plan, path) === 'number'));
      const old = Number(at(plan, number));
      const whole = Number.isInteger(old) && old < 100;
      return put(plan, number, whole ? d.whole(0, 40) : old * d.one(0.05, 0.3, 0.7, 0.9, 1.1, 1.5, 3, 20));
    }
    case 'worse':
      return put(plan, one, worse(d, at(plan, one)!));
    case 'out':
      return put(plan, one, undefined);
    case 'swap': {
      const two = d.one(...all);
      const nested = one.every((k, i) => two[i] === k) || two.every((k, i) => one[i] === k);
      return nested ? plan : put(put(plan, one, at(plan, two)), two, at(plan, one));
    }
    case 'joint':
      return put(plan, d.one<Path>(['rim', 'seam'], ['seam'], ['ring', 'seam'], one), joint(d));
    case 'graft': {
      const from = d.one(...paths(other));
      return put(plan, d.chance(0.5) ? from : one, at(other, from));
    }
    case 'method':
      return put(plan, ['method'], d.one(...METHODS));
    case 'unit':
      return put(plan, ['units'], d.one('in', 'mm'));
  }
}

/** A plan of a model damaged in one to four places, as YAML: values of the wrong kind, not numbers, below nothing, beyond anything, left
 * out, changed for each other, joints and whole branches of other models' plans put in. The same text for a seed every time. */
export function damagedPlan(model: string, seed: number): string {
  const d = drawer(seeded(seed ^ 0x5eed));
  const names = Object.keys(randomModels);
  const plan = randomModels[model]!(seed, METHODS[seed % 3]!) as Value;
  const other = randomModels[d.one(...names)]!(seed, d.one(...METHODS)) as Value;
  const mild = d.chance(0.6);
  const spoil = (now: Value): Value => damaged(d, now, other, mild ? d.one(...MILD) : d.one(...WILD));
  const spoilt = Array.from({ length: d.whole(1, 4) }).reduce<Value>(spoil, plan);
  return JSON.stringify(spoilt).replace(/"(@-?\w+)"/g, (quoted, name: string) => NUMBERS[name] ?? quoted);
}
