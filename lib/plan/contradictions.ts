import { bounds } from '../geometry/measure.js';
import { type Cutter, cutWidth } from '../stock/stock.js';
import { printMm } from '../units/print-length.js';
import { type Contradiction, say, unless } from './contradiction.js';
import { helmWheelContradictions } from './helm-wheel-contradictions.js';
import type { Plan } from './plan.js';

type Rule = (plan: Plan) => readonly Contradiction[];

/** Every field of the options that names a stock, with the name: each is called `stock`. */
function stockUses(options: object, above = ''): readonly (readonly [field: string, name: string])[] {
  return Object.entries(options).flatMap(([key, value]: [string, unknown]) => {
    const field = `${above}${key}`;
    if (key === 'stock' && typeof value === 'string') return [[field, value] as const];
    return typeof value === 'object' && value !== null ? stockUses(value, `${field}.`) : [];
  });
}

const stockIsNamed: Rule = plan => {
  const names = plan.stock.map(s => s.name);
  return stockUses(plan.options).flatMap(([field, name]) =>
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

const gapTakesTheCut: Rule = ({ stock, cutter, units }) =>
  stock.flatMap(s => {
    const cut = cutWidth(s.cutter ?? cutter);
    const allowed = `at least the width of the cut, ${say(cut, units)}: parts lie that far apart`;
    return unless(s.gap === undefined || s.gap >= cut - 1e-9, `stock.${s.name}.gap`, say(s.gap ?? 0, units), allowed);
  });

const straightIsSawn: Rule = ({ stock, method }) =>
  stock.flatMap(s => [
    ...unless(
      s.layout !== 'straight' || method === 'hand',
      `stock.${s.name}.layout`,
      'straight',
      `free, since method is ${method}; straight rips are for method hand`,
    ),
    ...unless(
      s.layout !== 'straight' || s.outline === undefined,
      `stock.${s.name}.outline`,
      'given',
      'left out where layout is straight: only boards and sheets are ripped',
    ),
  ]);

/** Knots and splits lie on the piece they are in, if only by a part of them. */
const defectsAreOnIt: Rule = ({ stock }) =>
  stock.flatMap(s =>
    (s.defects ?? []).flatMap((defect, i) => {
      const { minX, minY, maxX, maxY } = bounds(defect.outer);
      const on = maxX > 0 && maxY > 0 && minX < s.length && minY < s.width;
      return unless(
        on,
        `stock.${s.name}.defects[${i}]`,
        'beside the piece',
        `a place on it, measured from its lower left corner: ${printMm(s.length)} along and ${printMm(s.width)} across`,
      );
    }),
  );

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

/** Templates are of a stock that is there, and for what is worked by hand. */
const templateSuits: Rule = ({ template, method, stock }) => {
  if (!template) return [];
  const names = stock.map(s => s.name);
  return [
    ...unless(
      method === 'hand',
      'template',
      'given',
      `left out, since method is ${method}: templates are for method hand`,
    ),
    ...unless(
      names.includes(template.stock),
      'template.stock',
      template.stock,
      `a name under stock: ${names.join(', ')}`,
    ),
  ];
};

/** What only a model can say of its options. */
const ofTheModel: Rule = plan => (plan.model === 'helm-wheel' ? helmWheelContradictions(plan.options, plan.units) : []);

const RULES: readonly Rule[] = [
  stockIsNamed,
  stockNamesDiffer,
  stockIsLeft,
  gapTakesTheCut,
  straightIsSawn,
  defectsAreOnIt,
  cutterSuitsMethod,
  passWithinReach,
  templateSuits,
  ofTheModel,
];

/** What in a plan contradicts itself: sizes that are impossible together, names that are not there, a cutter the method cannot use. */
export const contradictions = (plan: Plan): readonly Contradiction[] => RULES.flatMap(rule => rule(plan));
