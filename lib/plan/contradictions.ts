import type { BoreOptions, HubFaceOptions } from '../models/helm-wheel-options.js';
import { bearing } from '../stock/bearings.js';
import type { Cutter } from '../stock/stock.js';
import { type Mm, toInches, type Unit } from '../units/length.js';
import { printInches, printMm } from '../units/print-length.js';
import type { Plan } from './plan.js';

/** Two fields that cannot both hold: the one to change, its value, and what the others leave. */
export interface Contradiction {
  readonly field: string;
  readonly value: string;
  readonly allowed: string;
}

type Rule = (plan: Plan) => readonly Contradiction[];

/** A length as the maker of the plan reads it: whole 64ths of an inch where it is, thousandths where it is not. */
function say(length: Mm, unit: Unit): string {
  if (unit === 'mm') return printMm(length);
  const inches = toInches(length);
  const exact = Math.abs(inches * 64 - Math.round(inches * 64)) < 1e-9;
  return `${exact ? printInches(length) : `${Math.round(inches * 1000) / 1000} in`} (${printMm(length)})`;
}

const unless = (holds: boolean, field: string, value: string, allowed: string): readonly Contradiction[] =>
  holds ? [] : [{ field, value, allowed }];

/** Every field that names a stock, with the name. */
function stockUses({ wheel }: Plan): readonly (readonly [field: string, name: string])[] {
  const { rim, spokes, hub, trim } = wheel;
  const uses: [string, string | undefined][] = [
    ['rim.stock', rim.stock],
    ['spokes.stock', spokes.stock],
    ['hub.stock', hub.stock],
    ['hub.front.stock', hub.front?.stock],
    ['hub.back.stock', hub.back?.stock],
    ['trim.stock', trim?.stock],
  ];
  return uses.flatMap(([field, name]) => (name === undefined ? [] : [[field, name] as const]));
}

const stockIsNamed: Rule = plan => {
  const names = plan.stock.map(s => s.name);
  return stockUses(plan).flatMap(([field, name]) =>
    unless(names.includes(name), field, name, `a name under stock: ${names.join(', ')}`),
  );
};

/** Two names that one file system holds for one. */
const stockNamesDiffer: Rule = ({ stock }) =>
  stock.flatMap((s, i) => {
    const twin = stock.slice(0, i).find(other => other.name.toLowerCase() === s.name.toLowerCase());
    return unless(
      !twin,
      `stock.${s.name}`,
      `named ${s.name}`,
      `a name that differs from ${twin?.name} by more than case`,
    );
  });

const stockIsLeft: Rule = ({ stock, units }) =>
  stock.flatMap(s => [
    ...unless(
      s.kind === 'board' || s.true === 0,
      `stock.${s.name}.true`,
      say(s.true, units),
      'left out of a sheet, which has no edges to true',
    ),
    ...unless(
      s.width > 2 * (s.true + s.margin) && s.length > 2 * s.margin,
      `stock.${s.name}.width`,
      say(s.width, units),
      `more than what true and margin take from both edges, ${say(2 * (s.true + s.margin), units)}; length more than twice the margin`,
    ),
  ]);

const KIND_OF = { hand: 'saw', router: 'router', laser: 'laser' } as const satisfies Readonly<
  Record<Plan['method'], Cutter['kind']>
>;

const cutterSuitsMethod: Rule = ({ method, cutter, stock }) => {
  const kind = KIND_OF[method];
  const cutters: [string, Cutter | undefined][] = [
    ['cutter', cutter],
    ...stock.map(s => [`stock.${s.name}.cutter`, s.cutter] as [string, Cutter | undefined]),
  ];
  return cutters.flatMap(([field, c]) =>
    unless(!c || c.kind === kind, `${field}.kind`, c?.kind ?? '', `${kind}, since method is ${method}`),
  );
};

const passWithinReach: Rule = ({ cutter, units }) => {
  if (cutter.kind !== 'router' || cutter.reach === undefined || cutter.pass === undefined) return [];
  return unless(
    cutter.pass <= cutter.reach,
    'cutter.pass',
    say(cutter.pass, units),
    `at most cutter.reach, ${say(cutter.reach, units)}`,
  );
};

const bandLeavesMiddle: Rule = ({ wheel: { rim, spokes }, units }) => [
  ...unless(
    rim.band < rim.outside / 2,
    'rim.band',
    say(rim.band, units),
    `less than half of rim.outside, ${say(rim.outside / 2, units)}`,
  ),
  ...unless(
    spokes.overall === undefined || spokes.overall >= rim.outside,
    'spokes.overall',
    say(spokes.overall ?? 0, units),
    `at least rim.outside, ${say(rim.outside, units)}`,
  ),
];

/** Spokes side by side meet where their corners touch: width = 2 r sin(180°/N); they must not, inside the rim. */
const spokesStayApart: Rule = ({ wheel: { rim, spokes }, units }) => {
  const widest = 2 * (rim.outside / 2 - rim.band) * Math.sin(Math.PI / spokes.count);
  const allowed = `less than ${say(Math.max(0, widest), units)}, where ${spokes.count} spokes meet at the inside of the rim`;
  return unless(widest <= 0 || spokes.width < widest, 'spokes.width', say(spokes.width, units), allowed);
};

const boreDiameter = (bore: BoreOptions | undefined): Mm => {
  if (bore === undefined || bore === 'none') return 0;
  return 'axle' in bore ? bore.axle : bearing(bore.bearing).outside;
};

/** The hub's own fields, then what each face has instead. */
function discs({ wheel: { hub } }: Plan): readonly (readonly [field: string, own: HubFaceOptions])[] {
  const faces = [hub.front && (['hub.front', hub.front] as const), hub.back && (['hub.back', hub.back] as const)];
  return [['hub', hub] as const, ...faces.filter(f => f !== undefined)];
}

const hubFits: Rule = plan => {
  const { wheel, units } = plan;
  const inside = wheel.rim.outside - 2 * wheel.rim.band;
  return discs(plan).flatMap(([field, own]) => {
    const diameter = own.diameter ?? wheel.hub.diameter;
    const hole = boreDiameter(own.bore ?? wheel.hub.bore);
    return [
      ...unless(
        inside <= 0 || diameter < inside,
        `${field}.diameter`,
        say(diameter, units),
        `less than the rim's inside diameter, ${say(inside, units)}`,
      ),
      ...unless(diameter > hole, `${field}.diameter`, say(diameter, units), `more than its bore, ${say(hole, units)}`),
    ];
  });
};

const hubFacesAreThere: Rule = ({ wheel: { hub } }) =>
  (['front', 'back'] as const).flatMap(face => {
    const other = face === 'front' ? 'back' : 'front';
    return unless(
      hub[face] === undefined || hub.faces !== other,
      `hub.${face}`,
      'given',
      `left out, since hub.faces is ${other}`,
    );
  });

const trimFits: Rule = ({ wheel: { rim, trim, edges }, units }) => [
  ...unless(
    !trim || trim.band <= rim.band,
    'trim.band',
    say(trim?.band ?? 0, units),
    `at most rim.band, ${say(rim.band, units)}`,
  ),
  ...unless(
    !trim?.plugs || trim.plugs.diameter < trim.band,
    'trim.plugs.diameter',
    say(trim?.plugs?.diameter ?? 0, units),
    `less than trim.band, ${say(trim?.band ?? 0, units)}`,
  ),
  ...unless(trim !== undefined || edges?.trim === undefined, 'edges.trim', 'given', 'left out, since there is no trim'),
];

const RULES: readonly Rule[] = [
  stockIsNamed,
  stockNamesDiffer,
  stockIsLeft,
  cutterSuitsMethod,
  passWithinReach,
  bandLeavesMiddle,
  spokesStayApart,
  hubFits,
  hubFacesAreThere,
  trimFits,
];

/** What in a plan contradicts itself: sizes that are impossible together, names that are not there, a cutter the method cannot use. */
export const contradictions = (plan: Plan): readonly Contradiction[] => RULES.flatMap(rule => rule(plan));
