import { traitsOf } from '../../stock/traits.js';
import { toDegrees } from '../../units/length.js';
import { printMm } from '../../units/print-length.js';
import { accentSteps } from '../accents.js';
import type { AccentOptions } from '../accents-options.js';
import { isFlanged, shaftLock } from '../glues.js';
import type { Setting } from '../model.js';
import { planingSteps } from '../named-stock.js';
import { type Balance, cure, WORTH } from './balance.js';
import type { HubScrews } from './hub.js';
import { oneThick } from './limits.js';
import { sectorLines } from './sectors.js';
import type { PrizeSizes } from './sizes.js';
import { letGo, pegReach } from './swing.js';

const round = (n: number): number => Math.round(n * 1000) / 1000;

/** What to dial in, and what to mark by hand: every line from the one before it. */
export function prizeSettings(s: PrizeSizes): Setting[] {
  const equal = s.sectors.every(a => Math.abs(a - s.sectors[0]!) < 1e-9);
  const marks: Setting[] = equal
    ? [
        { name: 'sector', value: toDegrees(s.sectors[0]!), unit: 'deg' },
        { name: 'between pegs, straight across', value: 2 * s.pegs.radius * Math.sin(s.sectors[0]! / 2), unit: 'mm' },
      ]
    : s.sectors.map((a, i) => ({ name: `sector ${i + 1}`, value: toDegrees(a), unit: 'deg' }));
  const seat = s.hub.axis.kind === 'bearing' && s.hub.axis.seat === 'shoulder' && s.turns !== 'fixed';
  return [
    ...marks,
    { name: 'radius of the peg circle', value: s.pegs.radius, unit: 'mm' },
    { name: 'flapper pivot over the axle', value: s.flapper.pivot, unit: 'mm' },
    {
      name: 'pegs let the flapper go, past the top',
      value: toDegrees(letGo(pegReach(s.pegs), s.flapper.length, s.flapper.reach)),
      unit: 'deg',
    },
    ...(seat && s.hub.axis.kind === 'bearing'
      ? [{ name: 'depth of the bearing seats', value: s.hub.axis.bearing.width, unit: 'mm' } as const]
      : []),
  ];
}

function hub(s: PrizeSizes, screws: HubScrews | undefined): string[] {
  const held = screws ? 'glue and screw' : 'glue';
  const front = s.hub.faces === 'both' ? ' and the front one over it' : '';
  const on =
    s.turns === 'bearing'
      ? `press the ${s.hub.axis.kind === 'bearing' ? 'bearings into their seats' : 'axle into the plate'}`
      : isFlanged(shaftLock('', s.hub.stock))
        ? "glue the shaft collar's flange to the back hub disc and lock the collar to the shaft"
        : 'lock the hub to its shaft';
  return [
    `${held[0]!.toUpperCase()}${held.slice(1)} the back hub disc behind the face${front}, on a rod through both bores so that they are in line; ${on}.`,
  ];
}

/** How a prize wheel goes together, in order, and what keeps people safe. @param seams steps of the segments' seams */
export function prizeSteps(
  s: PrizeSizes,
  b: Balance,
  screws: HubScrews | undefined,
  seams: readonly string[],
  accents?: AccentOptions,
): string[] {
  const lines = sectorLines(s.sectors).length;
  return [
    ...planingSteps(oneThick(s)),
    'Cut every piece and letter it; score the lines, cut or paint the numbers.',
    ...seams,
    ...(s.face.layers > 1
      ? ['Stack the layers of the face on a few of the pegs, dry, and glue them on each other.']
      : []),
    ...(s.edge ? [`Rout the edge of the face, ${printMm(s.edge.radius)}.`] : []),
    'Paint the face before the pegs go in; leave their holes bare.',
    ...hub(s, screws),
    `Glue the ${lines} pegs in flush with the back; they stand ${printMm(round(s.pegs.length - s.face.thickness))} out in front.`,
    ...accentSteps(accents),
    b.counterweight >= WORTH
      ? `Balance it: hang the wheel free without the flapper and let it settle; by these figures ${cure(b, s)} holds it in any place. Spin it twenty times before the fair.`
      : 'Balance it: hang the wheel free without the flapper; it should stay wherever it is put. Sand or weight the side that sinks.',
    `${traitsOf(s.plate.stock).family === 'foam' ? 'Glue the plate to a board all over, and screw that board to its stand or wall' : 'Screw the plate to its stand or wall, at every corner'}; hang the flapper on its bolt, ${printMm(round(s.flapper.pivot))} over the axle, so that it swings by its own weight.`,
    `Mind: the pegs stand out and pass at the speed of the rim. Nobody's fingers, hair or sleeves within reach while it turns; small children spin it by hand with a grown-up beside them, from the rim's side and not over the pegs.`,
    'A stand for it must not tip under a hand at its top; what hangs over people needs a rated anchor. Local codes come first, and a licensed engineer or rigger passes what takes the public.',
  ];
}
