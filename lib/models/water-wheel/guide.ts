import { SCREW_EDGE } from '../../joints/laid-screws.js';
import type { Mm } from '../../units/length.js';
import { toDegrees } from '../../units/length.js';
import { printAngle, printMm } from '../../units/print-length.js';
import { accentSteps } from '../accents.js';
import type { AccentOptions } from '../accents-options.js';
import { gluesFor, takesScrews } from '../glues.js';
import type { Figure, Hardware, Setting } from '../model.js';
import { planingSteps } from '../named-stock.js';
import type { Ring } from '../ring.js';
import { type Driven, drivenScrew, hubCircle } from './hub.js';
import { type PaddlePlaces, paddleBar } from './layout.js';
import { oneThick } from './limits.js';
import { type WaterSizes, wedgeFlat, wheelHeight } from './sizes.js';
import { rimScrew } from './spokes.js';

const screwsBought = (driven: Driven | undefined, quantity: number, use: string): Hardware[] =>
  driven && quantity > 0
    ? [{ name: `wood screw, ${driven.screw.name}, ${printMm(driven.length)} long`, quantity, use }]
    : [];

/** From outer hub disc to outer hub disc. */
const overHubs = (s: WaterSizes): Mm => wheelHeight(s) + 2 * (s.spokes.thickness + s.hub.thickness);

/** The axle past each hub: a collar and its bearing in the stand; common practice, no source. */
const STUB: Mm = 80;

/** Screws to a collar's flange, and the thickness of that, mm; common practice, no source. */
const TO_FLANGE = 3;
const FLANGE: Mm = 3;

/** What locks the axle to the outer hub discs, and what holds it there. */
function collars({ axle, hub }: WaterSizes): Hardware[] {
  const collar = { name: `flanged collar, ${printMm(axle)}`, quantity: 2 };
  const use = 'locks the axle to the outer hub discs';
  if (!takesScrews(hub.stock)) return [{ ...collar, use: `${use}: its flange glued on` }];
  const driven = drivenScrew(hub.radius / (2 * SCREW_EDGE), FLANGE, hub.thickness);
  return [{ ...collar, use }, ...screwsBought(driven, 2 * TO_FLANGE, 'collars to hub discs')];
}

/** Everything bought for one wheel. @param rimScrews in all spokes together */
export function waterHardware(s: WaterSizes, ring: Ring, rimScrews: number): Hardware[] {
  const axle = `${printMm(s.axle)}`;
  return [
    ...ring.hardware.map(h => ({ ...h, quantity: 2 * h.quantity })),
    ...screwsBought(rimScrew(s), rimScrews, 'spokes to rims, from outside'),
    ...screwsBought(hubCircle(s), 2 * s.spokes.count, 'one a spoke, through the outer hub disc into the inner one'),
    ...(s.axle > 0
      ? [
          { name: `axle, ${axle}, ${printMm(overHubs(s) + 2 * STUB)} long`, quantity: 1, use: 'through both hubs' },
          ...collars(s),
        ]
      : []),
    ...gluesFor([s.rim.stock, s.paddles.stock, s.spokes.stock, s.hub.stock]),
  ];
}

/** What to dial in: angles in degrees, lengths in mm. */
export const waterSettings = (s: WaterSizes, ring: Ring, places: PaddlePlaces): Setting[] => [
  ...ring.settings,
  { name: 'wedge angle, each flank of a spoke', value: 180 / s.spokes.count, unit: 'deg' },
  { name: 'flat on the wedge, from the wheel centre', value: wedgeFlat(s), unit: 'mm' },
  { name: 'rake of the paddles, from the radius', value: toDegrees(s.paddles.rake), unit: 'deg' },
  { name: 'first paddle, from the first spoke', value: toDegrees(places.first), unit: 'deg' },
  { name: 'slot width', value: s.paddles.thickness + paddleBar(s).clearance, unit: 'mm' },
];

/** Numbers of the finished wheel. */
export const waterFigures = (s: WaterSizes, ring: Ring): Figure[] => [
  { name: 'paddle pitch at the outside', value: (2 * Math.PI * s.outer) / s.paddles.count, unit: 'mm' },
  { name: 'clear between the rims', value: s.length, unit: 'mm' },
  { name: 'overall width, over the hubs', value: overHubs(s), unit: 'mm' },
  ...ring.figures,
];

function tabSteps(s: WaterSizes): string {
  const squared =
    s.method === 'router'
      ? ' Where a slot has a round corner left, square it with a chisel, or round the tab to match.'
      : '';
  const layered =
    s.rim.stock.thickness < s.rim.thickness - 1e-6
      ? ' Scraps of paddle stock through the slots line the layers up.'
      : '';
  return `Try a tab in every slot before any glue.${squared}${layered}`;
}

/** How the wheel goes together, in order, and what to mind. */
export function waterSteps(s: WaterSizes, ring: Ring, places: PaddlePlaces, accents?: AccentOptions): string[] {
  const { paddles, spokes } = s;
  const raked =
    paddles.rake === 0 ? '' : `, all leaning the same way (${printAngle(Math.abs(paddles.rake))} from the radius)`;
  const held = rimScrew(s) ? 'glue and screw' : 'glue';
  const hub = hubCircle(s) ? ', a screw through each spoke' : '';
  return [
    ...planingSteps(oneThick(s)),
    'Cut every piece and letter it.',
    `Make two rims. ${ring.steps.join(' ')}`,
    tabSteps(s),
    `Lay ${spokes.count} spokes on the outer face of each rim with their wedges together in the middle: seen from the front of the wheel, a paddle's slots lie ${printAngle(places.first, 2)} anticlockwise of a spoke; ${held} them down.`,
    `Glue a hub disc on either side of each set of wedges${hub}; line both up on ${s.axle > 0 ? 'the axle' : 'a nail through their middles'}.`,
    `Lay one rim down, spokes under it. Stand the ${paddles.count} paddles in their slots${raked}; lower the other rim onto the upper tabs, working round. Glue from outside, tabs flush, and check that the rims stand ${printMm(s.length)} apart all round.`,
    s.axle > 0
      ? `Put the axle through, lock the collars to it and ${takesScrews(s.hub.stock) ? 'screw' : 'glue'} their flanges to the outer hub discs; turn the wheel and weight the light side until it stops anywhere.`
      : 'The wheel has no axle: fix it by its hub to something that cannot let it turn or fall.',
    ...accentSteps(accents),
    'A turning wheel takes fingers and hair: a guard or a barrier before it, a brake or a lock when nobody minds it, no child within reach of the paddles. Nobody climbs on it. Whatever carries it is for someone licensed to say; local codes come first.',
  ];
}
