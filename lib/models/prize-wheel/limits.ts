import { type Finding, stops } from '../../findings/finding.js';
import type { Mm } from '../../units/length.js';
import { stated, stop, upTo } from '../helm-wheel/limit.js';
import { type OneThick, thicknessFindings } from '../named-stock.js';
import { layersFindings } from '../stock-layers.js';
import { plateInset } from './fixture.js';
import { flapperLimits } from './flapper-limits.js';
import { type PrizeSizes, seatRadius, shaftOf } from './sizes.js';

type Limit = (s: PrizeSizes) => Finding[];

// Common practice, no source.
/** Wood round a seat, over its radius and at least; under a blind one. */
const WALL_SHARE = 0.3;
const LEAST_WALL: Mm = 2;
const UNDER_SEAT: Mm = 1;
/** The hub past the hole of the face. */
const COVER: Mm = 5;
/** Between a peg and the face's routed edge, and between the middles of two pegs, in peg diameters. */
const PEG_EDGE = 0.5;
const PEG_APART = 2;
/** Between hub and pegs: room for the numbers, over the face's radius. */
const NUMBERS = 0.15;

/** A stop where a length is under its least. */
const atLeast = (rule: string, where: string, value: Mm, least: Mm, why: string): Finding[] =>
  value >= least - 1e-9 ? [] : [stop(rule, where, value, least, `${why}; allowed: ${stated(least)} mm or more`)];

/** A stop where a length is over its most. @param instead what else to change */
const atMost = (rule: string, where: string, value: Mm, most: Mm, why: string, instead: string): Finding[] =>
  value <= most + 1e-9 ? [] : [stop(rule, where, value, most, `${why}; allowed: ${upTo(most, instead)}`)];

/** Every part that is one thickness of its stock. */
export const oneThick = (s: PrizeSizes): OneThick[] =>
  (['flapper', 'hub', 'plate'] as const).map(part => ({ where: `${part}.thickness`, ...s[part] }));

const thickness: Limit = s => {
  const { thickness, layers, stock } = s.face;
  const face = { field: 'face', thickness, layers, stock };
  const one = oneThick(s).flatMap(b => thicknessFindings(b, s.method));
  return [...layersFindings(face, Number.isInteger(layers) ? 'router' : s.method), ...one];
};

/** The board a bearing is seated in: the hub turns on it, or the shaft turns in the plate. */
const seat: Limit = s => {
  const { axis } = s.hub;
  if (axis.kind === 'axle' || axis.seat === 'through' || s.turns === 'fixed') return [];
  if (s.method === 'laser') {
    const message = 'hub.bore.seat is shoulder: a laser cuts no pocket; allowed: seat: through';
    return [
      { level: 'stop', rule: 'laser-pocket', where: 'hub.bore.seat', message, value: 'shoulder', limit: 'through' },
    ];
  }
  const part = s.turns === 'bearing' ? 'hub' : 'plate';
  const least = axis.bearing.width + UNDER_SEAT;
  return atLeast(
    'bearing-seat',
    `${part}.thickness`,
    s[part].thickness,
    least,
    `a shoulder seat is ${axis.bearing.width} mm deep, or choose seat: through`,
  );
};

/** The hub holds its bore and covers the hole of the face; what runs through the face goes through its hole. */
const hub: Limit = s => {
  const { axis, radius } = s.hub;
  const bore = seatRadius(axis);
  const proud =
    axis.kind === 'bearing' && s.turns === 'bearing' && axis.seat === 'through' && axis.bearing.width > s.hub.thickness;
  const through = proud ? 2 * bore + 1 : shaftOf(axis);
  return [
    ...atLeast(
      'face-hole',
      'face.hole',
      2 * s.face.hole,
      through,
      'the axle, or the bearing where it is wider than the hub, goes through it',
    ),
    ...atLeast(
      'hub-bore',
      'hub.diameter',
      2 * radius,
      2 * (bore + Math.max(LEAST_WALL, WALL_SHARE * bore)),
      'too little wood round its bore',
    ),
    ...atLeast(
      'hub-cover',
      'hub.diameter',
      2 * radius,
      2 * (s.face.hole + COVER),
      `the hub covers the hole of the face, ${stated(2 * s.face.hole)} mm`,
    ),
  ];
};

const pegs: Limit = s => {
  const { radius, diameter } = s.pegs;
  const { face } = s;
  const most = face.radius - (s.edge?.radius ?? 0) - (0.5 + PEG_EDGE) * diameter;
  const least = Math.min(...s.sectors);
  const apart = 2 * radius * Math.sin(Math.min(least, Math.PI) / 2);
  const inside = radius - diameter / 2 - NUMBERS * face.radius;
  return [
    ...atMost(
      'peg-edge',
      'pegs.circle',
      2 * radius,
      2 * most,
      'the pegs come too near to the edge of the face',
      'a larger face',
    ),
    ...atMost(
      'peg-hub',
      'hub.diameter',
      2 * s.hub.radius,
      2 * inside,
      'the numbers stand between hub and pegs',
      'a larger pegs.circle',
    ),
    ...atMost(
      'peg-spacing',
      'pegs.diameter',
      diameter,
      apart / PEG_APART,
      `the nearest two pegs stand ${stated(apart)} mm apart`,
      'a larger pegs.circle, or fewer sectors',
    ),
  ];
};

const plate: Limit = s => {
  const { width, above, below } = s.plate;
  const bore = seatRadius(s.hub.axis) * (1 + WALL_SHARE) + LEAST_WALL;
  const inset = plateInset(s);
  const least = 2 * Math.max(bore, s.flapper.head + 2 * inset);
  const height = above + bore + 2 * inset;
  return [
    ...atLeast('plate-width', 'plate.width', width, least, 'it holds the axle, the flapper and its own screws'),
    ...atLeast(
      'plate-height',
      'plate.height',
      above + below,
      height,
      `it reaches ${stated(above)} mm over the axle, to the flapper, and past its bore below`,
    ),
  ];
};

const edge: Limit = s => {
  if (!s.edge) return [];
  const most = s.face.thickness / ((s.edge.faces ?? 'both') === 'both' ? 2 : 1);
  return atMost(
    'edge-radius',
    'edges.face.radius',
    s.edge.radius,
    most,
    `the face is ${stated(s.face.thickness)} mm thick`,
    'a thicker face',
  );
};

/** What is worth knowing of a wheel that can be built. */
const advice: Limit = s => {
  const { hub, face } = s;
  const rocks = s.turns === 'bearing' && hub.axis.kind === 'bearing' && hub.faces === 'back';
  const weak = face.segments > 1 && hub.radius < face.radius / 4;
  return [
    ...(rocks
      ? [
          {
            level: 'note',
            rule: 'one-bearing',
            where: 'hub.faces',
            message: 'a wheel on one bearing rocks on its axle; hub.faces: both gives it two',
            value: 'back',
            limit: 'both',
          } as const,
        ]
      : []),
    ...(weak
      ? [
          {
            level: 'warn',
            rule: 'hub-small',
            where: 'hub.diameter',
            message: `hub.diameter is ${stated(2 * hub.radius)} mm; ${face.segments} segments hang together by it: a quarter of the face, ${stated(face.radius / 2)} mm, or more`,
            value: 2 * hub.radius,
            limit: face.radius / 2,
          } as const,
        ]
      : []),
  ];
};

/** What is said of a wheel's sizes; a stop leaves it without a shape. The flapper goes by the pegs, the plate by the flapper. */
export function prizeLimits(s: PrizeSizes): Finding[] {
  const run = (...limits: readonly Limit[]): Finding[] => limits.flatMap(limit => limit(s));
  const first = run(thickness, seat, hub, pegs);
  const flapper = stops(first) ? [] : flapperLimits(s);
  const after = stops([...first, ...flapper]) ? run(edge) : run(plate, edge, advice);
  return [...first, ...flapper, ...after];
}
