import { screwLength } from '../../stock/screws.js';
import { traitsOf } from '../../stock/traits.js';
import { printMm } from '../../units/print-length.js';
import { shaftLock, takesScrews } from '../glues.js';
import type { Hardware } from '../model.js';
import { PLATE_SCREW, spacerLength } from './fixture.js';
import type { HubScrews } from './hub.js';
import { AIR, type PrizeSizes, shaftOf } from './sizes.js';

/** Past the nut of a bolt, and past a collar on the axle; mm; common practice, no source. */
const PAST_NUT = 12;
const PAST_COLLAR = 20;

/** From behind the plate to the front of the hub, and past both. */
const axleLength = (s: PrizeSizes): number =>
  s.plate.thickness + AIR + (s.hub.faces === 'both' ? 2 : 1) * s.hub.thickness + s.face.thickness + 2 * PAST_COLLAR;

function axle(s: PrizeSizes): Hardware[] {
  const { axis, faces } = s.hub;
  const inHub = s.turns === 'bearing';
  const bearings =
    axis.kind === 'bearing' && s.turns !== 'fixed'
      ? [
          {
            name: `bearing ${axis.bearing.name}`,
            quantity: inHub && faces === 'both' ? 2 : 1,
            use: inHub ? 'in the hub' : 'in the stand plate',
          },
        ]
      : [];
  const name = `${s.turns === 'shaft' ? 'shaft' : 'axle'}, ${printMm(shaftOf(axis))}, ${printMm(axleLength(s))} long`;
  return [
    ...bearings,
    { name, quantity: 1, use: 'through hub and stand plate' },
    { name: 'shaft collar', quantity: 2, use: 'keeps the wheel on its axle' },
    { name: `washer, ${AIR} mm`, quantity: 1, use: 'between hub and stand plate' },
    ...(s.turns === 'bearing' ? [] : [shaftLock('locks the hub to what it sits on', s.hub.stock)]),
  ];
}

/** Wood that a screw through the plate bites into, mm; common practice, no source. */
const INTO_STAND = 30;

/** What holds the plate to its stand: screws; where it would crack under their heads, with large washers, and where they would pull
 * through, glue alone. */
function plateFixing(s: PrizeSizes): Hardware[] {
  const { family } = traitsOf(s.plate.stock);
  if (family === 'foam') return [];
  const length = screwLength(PLATE_SCREW, s.plate.thickness + INTO_STAND)!;
  const washer = takesScrews(s.plate.stock) ? '' : ', with a large washer';
  return [
    {
      name: `${washer === '' ? 'wood' : 'pan-head'} screw, ${PLATE_SCREW.name}, ${printMm(length)} long${washer}`,
      quantity: 4,
      use: 'the plate to its stand',
    },
  ];
}

/** Everything bought for one wheel. */
export function prizeHardware(s: PrizeSizes, screws: HubScrews | undefined): Hardware[] {
  const { bolt, thickness } = s.flapper;
  const long = s.plate.thickness + spacerLength(s) + thickness + PAST_NUT;
  return [
    {
      name: `peg, ${printMm(s.pegs.diameter)}, ${printMm(s.pegs.length)} long`,
      quantity: s.sectors.length,
      use: 'one on every line',
    },
    ...(screws
      ? [
          {
            name: `wood screw, ${screws.screw.name}, ${printMm(screws.length)} long`,
            quantity: screws.count,
            use: 'from behind through the hub into the face',
          },
        ]
      : []),
    ...axle(s),
    { name: `bolt, ${printMm(bolt)}, ${printMm(long)} long`, quantity: 1, use: 'carries the flapper' },
    {
      name: `spacer tube, ${printMm(spacerLength(s))} long`,
      quantity: 1,
      use: 'on the bolt, from the plate to the flapper',
    },
    { name: `lock nut and two washers, ${printMm(bolt)}`, quantity: 1, use: 'on the bolt: the flapper swings freely' },
    ...plateFixing(s),
  ];
}
