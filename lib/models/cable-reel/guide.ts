import { traitsOf } from '../../stock/traits.js';
import type { Mm } from '../../units/length.js';
import { toDegrees } from '../../units/length.js';
import { printAngle, printMm } from '../../units/print-length.js';
import { accentSteps } from '../accents.js';
import type { AccentOptions } from '../accents-options.js';
import { gluesFor } from '../glues.js';
import type { Figure, Hardware, Setting } from '../model.js';
import { type OneThick, planingSteps } from '../named-stock.js';
import type { Ring } from '../ring.js';
import { type BattenScrew, battenScrew, type Fixings, rodHole } from './fixings.js';
import { boreRadius, coreReach, type ReelSizes, reelHeight, staveWidth } from './sizes.js';

/** Every part that is as thick as its stock, by the plan's field. Segments see to themselves. */
export const oneThick = ({ flange, battens, core }: ReelSizes): OneThick[] => [
  ...(flange.build === 'planks' ? [{ where: 'flange.thickness', ...flange }] : []),
  ...(battens ? [{ where: 'battens.thickness', ...battens }] : []),
  { where: 'core.thickness', ...core },
];

/** A rod past each flange, in rod diameters: a large washer, a nut and some thread; ISO 7093 and ISO 4032 (from memory), rounded up. */
const PAST = 1.6;
/** The axle past each flange, for what carries it; common practice, no source. */
const AXLE_PAST: Mm = 80;
/** Rods are sawn to whole steps of this. */
const SAWN: Mm = 5;

const rodLength = (s: ReelSizes): Mm => Math.ceil((reelHeight(s) + 2 * PAST * s.rods.diameter) / SAWN) * SAWN;

function screwsBought(screw: BattenScrew | undefined, count: number): Hardware[] {
  if (!screw || count === 0) return [];
  const name = `wood screw, ${screw.screw.name}, ${printMm(screw.length)} long`;
  return [{ name, quantity: count, use: 'battens to planks' }];
}

/** Whether nuts drawn up would sink in; and a plate's side that spreads what they press with, in rod diameters; common practice, no source. */
const crushes = ({ flange, core }: ReelSizes): boolean =>
  [flange.stock, core.stock].some(stock => traitsOf(stock).family === 'foam');
const PLATE = 6;

/** Everything bought for one reel. @param screws in all battens together @param ring one flange of segments */
export function reelHardware(s: ReelSizes, screws: number, ring: Ring | undefined): Hardware[] {
  const { count, diameter } = s.rods;
  const size = printMm(diameter);
  return [
    { name: `threaded rod, ${size}, ${printMm(rodLength(s))} long`, quantity: count, use: 'through both flanges' },
    { name: `nut, ${size}, self-locking`, quantity: 2 * count, use: 'on the rods' },
    { name: `large washer, ${size}`, quantity: 2 * count, use: 'under the nuts' },
    ...(crushes(s)
      ? [
          {
            name: `plywood plate, ${printMm(PLATE * diameter)} square`,
            quantity: 2 * count,
            use: 'under the washers: foam crushes',
          },
        ]
      : []),
    ...(ring?.hardware ?? []).map(h => ({ ...h, quantity: 2 * h.quantity })),
    ...screwsBought(battenScrew(s), screws),
    ...(s.axle > 0
      ? [
          {
            name: `axle, ${printMm(s.axle)}, ${printMm(AXLE_PAST * 2 + reelHeight(s) + 2 * (s.battens?.thickness ?? 0))} long`,
            quantity: 1,
            use: 'through the bore',
          },
        ]
      : []),
    ...gluesFor([s.flange.stock, s.core.stock, ...(s.battens ? [s.battens.stock] : [])]),
  ];
}

/** What to dial in: angles in degrees, widths and distances in mm. */
export function reelSettings(s: ReelSizes, fixed: Fixings): Setting[] {
  const { core } = s;
  const bevels: Setting[] = core.bevelled
    ? [
        { name: 'bevel, each long edge of a stave', value: toDegrees(core.stave.bevel), unit: 'deg' },
        { name: 'stave width, outer face', value: core.stave.outer, unit: 'mm' },
      ]
    : [];
  return [
    ...bevels,
    { name: 'stave width, inner face', value: core.stave.inner, unit: 'mm' },
    { name: 'radius of the rods, from the middle', value: fixed.rods.radius, unit: 'mm' },
    ...(boreRadius(s) > 0 ? [{ name: 'bore', value: 2 * boreRadius(s), unit: 'mm' } as const] : []),
  ];
}

/** Numbers of the finished reel. */
export function reelFigures(s: ReelSizes): Figure[] {
  const { core, flange } = s;
  return [
    { name: 'core, round its flats', value: core.staves * core.stave.outer, unit: 'mm' },
    { name: 'core, over its corners', value: 2 * coreReach(s), unit: 'mm' },
    { name: 'winding width', value: core.length, unit: 'mm' },
    { name: 'winding depth', value: flange.radius - coreReach(s), unit: 'mm' },
    { name: 'overall width, battens included', value: reelHeight(s) + 2 * (s.battens?.thickness ?? 0), unit: 'mm' },
  ];
}

function flangeSteps(s: ReelSizes): string[] {
  const { battens } = s;
  if (!battens) return [];
  const screwed = battenScrew(s) ? 'glue and screw' : 'glue';
  return [
    `Lay the ${s.flange.pieces} planks of each flange edge to edge, best face down; ${screwed} its ${battens.count} battens across them on the outer face.`,
  ];
}

function coreSteps(s: ReelSizes): string[] {
  const { core } = s;
  const width = printMm(staveWidth(s));
  const cut = core.bevelled
    ? `Rip the ${core.staves} staves ${width} wide, then tilt the blade to ${printAngle(core.stave.bevel)} and bevel both long edges, the wide face up: the inner face is left ${printMm(core.stave.inner)} wide. Try a dry ring before any glue: what the blade is off adds up over ${2 * core.staves} edges.`
    : `Cut the ${core.staves} staves square, ${width} wide; they touch along their inner corners.`;
  return [cut, `Glue the staves edge to edge into a ring under band clamps, ends flush on a flat board.`];
}

/** How the reel goes together, in order, and what to mind. */
export function reelSteps(s: ReelSizes, more: readonly string[], accents?: AccentOptions): string[] {
  const parts = oneThick(s);
  return [
    ...planingSteps(parts),
    'Cut every piece and letter it.',
    ...flangeSteps(s),
    ...more,
    s.method === 'hand'
      ? `Drill the ${s.rods.count} rod holes, ${printMm(rodHole(s))}, through both flanges laid on each other, so that they line up.`
      : `Lay the flanges on each other and try a rod in each of the ${s.rods.count} holes, ${printMm(rodHole(s))}: all must line up.`,
    ...coreSteps(s),
    `Stand the core on one flange, centred on its bore or its rods; lower the other onto it. Put the rods through, a ${crushes(s) ? 'plywood plate, a ' : ''}large washer and a self-locking nut on either end, and draw them up by turns, crosswise${crushes(s) ? ', no more than snug' : ''}. Glue under the ends of the staves keeps the core from turning.`,
    ...(s.battens ? [] : ['Round the outer edges of the flanges over.']),
    'Saw rod ends off behind the nuts and cap them. Sand rims and edges: hands run along them.',
    ...accentSteps(accents),
    'A full reel is heavy and rolls: chock it on stage, keep feet and fingers from under the flanges, and let nobody ride on it. For lifting or loads, ask whoever is licensed to say; local codes come first.',
  ];
}
