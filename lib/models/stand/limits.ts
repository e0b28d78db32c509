import type { Finding } from '../../findings/finding.js';
import { traitsOf } from '../../stock/traits.js';
import type { Mm } from '../../units/length.js';
import { stated, stop } from '../helm-wheel/limit.js';
import { thicknessFindings } from '../named-stock.js';
import { boards, holeRadius, leastBase, leastLength, type StandSizes } from './sizes.js';

/** @param at the same stand with its axle at another height, and every default that hangs on it */
type Limit = (s: StandSizes, at: (height: Mm) => StandSizes) => Finding[];

/** Wood round a bearing or an axle, over the hole's radius, and at least; under a blind seat; common practice, no source. */
const WALL_SHARE = 1 / 3;
const LEAST_WALL: Mm = 2;
const UNDER_SEAT: Mm = 1;
/** A gap that a finger does not jam in; EN 1176-1 tests with a rod of 25 mm (from memory). */
const FINGERS: Mm = 25;

/** A stop where a length is under its least. */
const atLeast = (rule: string, where: string, value: Mm, least: Mm, why: string): Finding[] =>
  value >= least - 1e-9 ? [] : [stop(rule, where, value, least, `${why}; allowed: ${stated(least)} mm or more`)];

const thickness: Limit = s => boards(s).flatMap(b => thicknessFindings(b, s.method));

const seat: Limit = s => {
  if (s.axis.kind === 'axle' || s.axis.seat === 'through') return [];
  if (s.method === 'laser') {
    const message = 'axle.bore.seat is shoulder: a laser cuts no pocket; allowed: seat: through';
    return [
      { level: 'stop', rule: 'laser-pocket', where: 'axle.bore.seat', message, value: 'shoulder', limit: 'through' },
    ];
  }
  const { width } = s.axis.bearing;
  const most = s.upright.thickness - UNDER_SEAT;
  const what = `a shoulder seat for it is ${width} mm deep; allowed: ${stated(width + UNDER_SEAT)} mm or more, or seat: through`;
  return width <= most
    ? []
    : [stop('bearing-seat', 'uprights.thickness', s.upright.thickness, width + UNDER_SEAT, what)];
};

const head: Limit = s => {
  const hole = holeRadius(s.axis);
  const least = 2 * Math.max(hole + Math.max(LEAST_WALL, hole * WALL_SHARE), s.kind === 'post' ? s.foot.thickness : 0);
  return atLeast('head', 'uprights.head', 2 * s.upright.head, least, 'too little wood round the axle');
};

/** The lowest axle over feet, shelf, head and rib as these sizes have them. */
function lowest(s: StandSizes): Mm {
  const under = s.foot.height + (s.kind === 'cheeks' ? s.foot.thickness : 0) + (s.height - s.down);
  const least = under + s.wheel.radius + s.clearance;
  const room = s.height - s.down + s.upright.skirt + s.upright.head + LEAST_WALL;
  const rib = s.kind === 'post' ? s.height - s.down + s.upright.head + 5 * s.foot.thickness + s.foot.height : 0;
  return Math.max(least, room, rib);
}

/** More rounds than the steps of 5 mm by which defaults grow with the height could ever take. */
const ROUNDS = 1000;

/** The lowest axle that its own sizes allow: raised until feet that grow with it stay below the wheel. They grow by a fraction of the
 * height, so the least such height is reached from below. */
function lowestAxle(s: StandSizes, at: (height: Mm) => StandSizes): Mm {
  let height = lowest(s);
  for (let i = 0; i < ROUNDS; i++) {
    const next = lowest(at(height));
    if (next <= height + 1e-9) break;
    height = next;
  }
  return Math.ceil(height * 1000 - 1e-6) / 1000;
}

/** The wheel turns clear of feet and shelf. */
const floor: Limit = (s, at) => {
  if (s.height >= lowest(s) - 1e-9) return [];
  const why = `the wheel, ${stated(2 * s.wheel.radius)} mm, turns ${stated(s.clearance)} mm clear of the feet`;
  return atLeast('floor', 'axle.height', s.height, lowestAxle(s, at), why);
};

const feet: Limit = s => [
  ...atLeast('foot-height', 'foot.height', s.foot.height, s.foot.thickness, 'a notch takes half of it'),
  ...atLeast(
    'foot-width',
    'foot.width',
    s.upright.base,
    leastBase(s.upright.head, s.foot.thickness),
    'the uprights hold two feet and the head',
  ),
  ...atLeast('foot-length', 'foot.length', s.foot.length, leastLength(s), 'the feet reach past the uprights'),
];

/** A slot pressed on by more than this share of its board is no slot; common practice, no source. */
const MOST_PRESS = 0.1;

const slotFit: Limit = s => {
  const thinnest = Math.min(s.upright.thickness, s.foot.thickness);
  const why = `a board ${stated(thinnest)} mm thick cannot be pressed so`;
  return atLeast('slot-fit', 'fit.slot', s.fit.slot, -MOST_PRESS * thinnest, why);
};

/** What carries a wheel that people push and spin must not break under it. */
const bearing: Limit = s =>
  (['upright', 'foot'] as const).flatMap(part => {
    const { stock } = s[part];
    if (traitsOf(stock).family !== 'foam') return [];
    const where = `${part}${part === 'upright' ? 's' : ''}.stock`;
    const message = `${where} is ${stock.name}, ${stock.species}: it breaks under a wheel that is pushed or spun; as it is only under a light one that is not touched; allowed: wood, plywood or MDF`;
    return [{ level: 'warn', rule: 'stand-foam', where, message, value: stock.name }];
  });

const fingers: Limit = s => {
  if (s.clearance >= FINGERS) return [];
  const message = `clearance is ${stated(s.clearance)} mm: a finger can jam between the turning wheel and the stand; ${FINGERS} mm or more`;
  return [{ level: 'warn', rule: 'fingers', where: 'clearance', message, value: s.clearance, limit: FINGERS }];
};

/** What is said of a stand's sizes; a stop leaves it without a shape. @param at the same stand with its axle at another height */
export const standLimits = (s: StandSizes, at: (height: Mm) => StandSizes): Finding[] =>
  [thickness, seat, head, floor, feet, slotFit, bearing, fingers].flatMap(limit => limit(s, at));
