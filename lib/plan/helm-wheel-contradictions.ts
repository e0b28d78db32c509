import type { BoreOptions, HelmWheelOptions, HubFaceOptions } from '../models/helm-wheel-options.js';
import { bearing } from '../stock/bearings.js';
import type { Mm, Unit } from '../units/length.js';
import { type Contradiction, say, unless } from './contradiction.js';

type Rule = (wheel: HelmWheelOptions, units: Unit) => readonly Contradiction[];

const bandLeavesMiddle: Rule = ({ rim, spokes }, units) => [
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
const spokesStayApart: Rule = ({ rim, spokes }, units) => {
  const widest = 2 * (rim.outside / 2 - rim.band) * Math.sin(Math.PI / spokes.count);
  const allowed = `less than ${say(Math.max(0, widest), units)}, where ${spokes.count} spokes meet at the inside of the rim`;
  return unless(widest <= 0 || spokes.width < widest, 'spokes.width', say(spokes.width, units), allowed);
};

const boreDiameter = (bore: BoreOptions | undefined): Mm => {
  if (bore === undefined || bore === 'none') return 0;
  return 'axle' in bore ? bore.axle : bearing(bore.bearing).outside;
};

/** The hub's own fields, then what each face has instead. */
function discs({ hub }: HelmWheelOptions): readonly (readonly [field: string, own: HubFaceOptions])[] {
  const faces = [hub.front && (['hub.front', hub.front] as const), hub.back && (['hub.back', hub.back] as const)];
  return [['hub', hub] as const, ...faces.filter(f => f !== undefined)];
}

const hubFits: Rule = (wheel, units) => {
  const inside = wheel.rim.outside - 2 * wheel.rim.band;
  return discs(wheel).flatMap(([field, own]) => {
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

const hubFacesAreThere: Rule = ({ hub }) =>
  (['front', 'back'] as const).flatMap(face => {
    const other = face === 'front' ? 'back' : 'front';
    return unless(
      hub[face] === undefined || hub.faces !== other,
      `hub.${face}`,
      'given',
      `left out, since hub.faces is ${other}`,
    );
  });

const trimFits: Rule = ({ rim, trim, edges }, units) => [
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

const RULES: readonly Rule[] = [bandLeavesMiddle, spokesStayApart, hubFits, hubFacesAreThere, trimFits];

/** What in a helm wheel's options contradicts itself. */
export const helmWheelContradictions = (wheel: HelmWheelOptions, units: Unit): readonly Contradiction[] =>
  RULES.flatMap(rule => rule(wheel, units));
