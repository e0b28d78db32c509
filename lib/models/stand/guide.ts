import { traitsOf } from '../../stock/traits.js';
import { printMm } from '../../units/print-length.js';
import type { Setting } from '../model.js';
import { planingSteps } from '../named-stock.js';
import { baseScrews } from './hardware.js';
import { footPlaces } from './layout.js';
import { boards, halfGap, type StandSizes } from './sizes.js';

/** What to dial in on saws and drills. */
export const standSettings = (s: StandSizes): Setting[] => [
  { name: 'notches in feet and uprights, depth', value: s.foot.height / 2, unit: 'mm' },
  { name: 'notches for the uprights, width', value: s.upright.thickness + s.fit.slot, unit: 'mm' },
  { name: 'notches for the feet, width', value: s.foot.thickness + s.fit.slot, unit: 'mm' },
  { name: 'middle of each foot from the axle, sideways', value: footPlaces(s)[1], unit: 'mm' },
  ...(s.axis.kind === 'bearing' && s.axis.seat === 'shoulder'
    ? [{ name: 'depth of the bearing seats', value: s.axis.bearing.width, unit: 'mm' } as const]
    : []),
];

function together(s: StandSizes): string[] {
  if (s.kind === 'cheeks')
    return [
      'Glue the feet into the notches of one cheek, square to it; lay the shelf on the feet with its tabs through the cheek.',
      `Put the wheel and its shaft in place, then the other cheek, ${printMm(2 * halfGap(s))} from the first; glue its notches and tabs.`,
    ];
  return [
    'Glue the axle block behind the post with the shaft in both holes, so that they are in line.',
    'Glue the feet into the notches of the post and the cross rail over their back ends; glue the rib in between with its tabs through the post.',
    `Slide the wheel on the shaft, ${printMm(s.clearance)} off the post, and lock it with its collars.`,
  ];
}

/** A prize wheel brings a plate that carries its flapper and stands still behind its hub. */
const fixture = (s: StandSizes): string[] =>
  s.wheel.kind === 'prize'
    ? [
        `The prize wheel's own plate stands between its hub and the ${s.kind === 'cheeks' ? 'back cheek' : 'post'}, in the ${printMm(s.clearance)} there: pack it out and ${traitsOf(s.upright.stock).screws ? 'screw it down' : 'glue it down, on a board,'} at its corners, so that the flapper does not follow the wheel.`,
      ]
    : [];

/** How a stand goes together, in order, and what keeps people safe. @param ballast kg */
export function standSteps(s: StandSizes, ballast: number): string[] {
  const held = s.anchored
    ? 'Bolt the feet to the floor with anchors rated for it.'
    : ballast > 0
      ? `Tie ${ballast} kg of ballast down on the ${s.kind === 'cheeks' ? 'shelf' : 'feet'} before anybody touches the wheel.`
      : 'Set it on level ground.';
  return [
    ...planingSteps(boards(s)),
    'Cut every piece, letter it, and put the stand together dry.',
    'Round every edge that a hand can reach.',
    ...(s.axis.kind === 'bearing'
      ? [
          `Press a bearing into its seat in ${s.kind === 'cheeks' ? 'each cheek' : 'the post and in its axle block'}, square, by its outer ring.`,
        ]
      : []),
    ...together(s),
    ...fixture(s),
    ...(s.base
      ? [`${baseScrews(s) ? 'Glue and screw' : 'Glue'} the base plate under feet and uprights, from below.`]
      : []),
    held,
    `Push at the top of the wheel with ${Math.round(s.push)} N, front, back and sideways, and watch the feet: none may lift. A child can pull harder than it looks.`,
    'A spinning wheel catches fingers, hair and scarves: keep an arm’s length of clear floor round it, let nobody spin it alone, and lock it when nobody is there.',
    'These figures are estimates. Local codes come first; what hangs, stands over people or takes the public has to be passed by a licensed engineer or rigger.',
  ];
}
