import { type Arch, archOverall, archSize } from '../../parts/arch.js';
import { mullionLength } from '../../parts/mullion.js';
import { screwLength, screws } from '../../stock/screws.js';
import { type Mm, type Radians, toDegrees } from '../../units/length.js';
import { printAngle, printMm } from '../../units/print-length.js';
import { accentSteps } from '../accents.js';
import type { AccentOptions } from '../accents-options.js';
import { takesScrews } from '../glues.js';
import type { Figure, Hardware, Setting } from '../model.js';
import { planingSteps } from '../named-stock.js';
import { felloeBoards } from '../ring/boards.js';
import type { Ring } from '../ring.js';
import { barNotch, bars } from './bars.js';
import { type FrameSizes, mullionReach, notchDepth, paneRadius } from './sizes.js';

/** From one panel pin along a pane's edge to the next; common practice, no source. */
const PIN_PITCH: Mm = 100;
/** Brackets to a foot: one to each side. */
const BRACKETS = 2;
/** The thickest screw of a bracket, and how long it is at most. */
const BRACKET_GAUGE = 8;
const BRACKET_BITE: Mm = 25;

const archOf = ({ inner, outer, sweep, legs }: FrameSizes): Arch => ({ inner, outer, sweep, legs });

/** Length of the edge a pane is held along. */
const rebateLength = (s: FrameSizes): Mm => s.inner * s.sweep + (s.legs > 0 ? 2 * s.legs : 0);

function paneHardware(s: FrameSizes): Hardware[] {
  if (s.rebate.width === 0) return [];
  const radius = paneRadius(s);
  const { width, height } = archSize(archOf(s), radius);
  const name = s.full
    ? `pane, round, ${printMm(2 * radius)}`
    : `pane, arched, ${printMm(width)} wide, ${printMm(height)} high, radius ${printMm(radius)}`;
  const held = Math.max(3, Math.ceil(rebateLength(s) / PIN_PITCH));
  return [
    { name, quantity: 1, use: 'acrylic, mirror or card in the rebate; no thicker than the rebate is deep' },
    takesScrews(s.ring.stock)
      ? { name: 'panel pin', quantity: held, use: `holds the pane, about every ${printMm(PIN_PITCH)}` }
      : {
          name: `mounting tape, double-sided, ${printMm(Math.ceil(rebateLength(s)))} long`,
          quantity: 1,
          use: 'holds the pane',
        },
  ];
}

/** Two screws to a bracket, as long as they stay in the foot. */
function bracketScrews(thickness: Mm): Hardware[] {
  const used = screws.filter(x => x.gauge <= BRACKET_GAUGE && screwLength(x, thickness) !== undefined).at(-1);
  if (!used) return [];
  const name = `wood screw, ${used.name}, ${printMm(screwLength(used, Math.min(thickness, BRACKET_BITE))!)} long`;
  return [{ name, quantity: 4 * BRACKETS, use: 'two to a bracket, into the foot' }];
}

/** What holds an arch's feet. */
const footHardware = (s: FrameSizes): Hardware[] =>
  takesScrews(s.ring.stock)
    ? [
        { name: 'angle bracket', quantity: 2 * BRACKETS, use: 'fixes the feet to the floor, two to a foot' },
        ...bracketScrews(s.ring.thickness),
      ]
    : [{ name: 'plywood board', quantity: 2, use: 'one glued behind each leg, fixed to the floor with brackets' }];

/** Everything bought for one frame. */
export const frameHardware = (s: FrameSizes, ring: Ring): Hardware[] => [
  ...ring.hardware,
  ...paneHardware(s),
  ...(s.legs > 0 ? footHardware(s) : []),
];

/** How far a level foot lies off square to its leg. */
const footOff = ({ sweep }: FrameSizes): Radians => Math.abs(sweep - Math.PI) / 2;

/** What to dial in: angles in degrees, widths and depths in mm. */
export function frameSettings(s: FrameSizes, ring: Ring): Setting[] {
  const { mullions, rebate } = s;
  const crossing = mullions && mullions.upright > 0 && mullions.level > 0 && s.method !== 'laser';
  const foot = toDegrees(footOff(s));
  return [
    ...ring.settings,
    ...(rebate.width > 0
      ? ([
          { name: 'width of the rebate', value: rebate.width, unit: 'mm' },
          { name: 'depth of the rebate, from the back', value: rebate.depth, unit: 'mm' },
        ] as const)
      : []),
    ...(mullions
      ? ([
          { name: 'width of a notch for a mullion', value: barNotch(s).width, unit: 'mm' },
          { name: 'depth of a notch, from the back', value: notchDepth(s), unit: 'mm' },
        ] as const)
      : []),
    ...(crossing
      ? ([
          { name: 'width of a lap where mullions cross', value: mullions.width + s.fit.lap, unit: 'mm' },
          { name: 'depth of a lap where mullions cross', value: mullions.thickness / 2, unit: 'mm' },
        ] as const)
      : []),
    ...(s.legs > 0 ? [{ name: 'foot, off square to the leg', value: foot, unit: 'deg' } as const] : []),
  ];
}

/** Lengths of the mullions, each once: those upright, those level. */
function barFigures(s: FrameSizes): Figure[] {
  const all = bars(s).map(({ way, off }): Figure => {
    const length = mullionLength({ width: s.mullions!.width, reach: mullionReach(s), off });
    return { name: `mullion, ${way}, ${printMm(off)} from the middle, long`, value: length, unit: 'mm' };
  });
  return all.filter((f, i) => all.findIndex(g => g.name === f.name) === i);
}

/** Numbers of the finished frame. */
export function frameFigures(s: FrameSizes, ring: Ring): Figure[] {
  const board = felloeBoards(ring.drafts);
  const [over, open] = [archOverall(archOf(s)), archSize(archOf(s), s.inner)];
  const pane = archSize(archOf(s), paneRadius(s));
  return [
    { name: 'overall width', value: over.width, unit: 'mm' },
    { name: 'overall height', value: over.height, unit: 'mm' },
    { name: 'opening, wide', value: open.width, unit: 'mm' },
    { name: 'opening, high', value: open.height, unit: 'mm' },
    { name: 'board of a felloe, wide', value: board.width, unit: 'mm' },
    { name: 'board of a felloe, long', value: board.length, unit: 'mm' },
    ...(s.rebate.width > 0
      ? ([
          { name: 'pane, wide', value: pane.width, unit: 'mm' },
          { name: 'pane, high', value: pane.height, unit: 'mm' },
        ] as const)
      : []),
    ...barFigures(s),
    ...ring.figures,
  ];
}

function rebateStep(s: FrameSizes): string[] {
  if (s.rebate.width === 0) return [];
  const { width, depth } = s.rebate;
  if (s.method === 'laser')
    return [
      `The back layers are ${printMm(width)} narrower inside: they leave the rebate, ${printMm(depth)} deep. Lay them on the others by their outer edges and pins.`,
    ];
  const size = `${printMm(width)} wide, ${printMm(depth)} deep from the back`;
  if (s.method === 'router') return [`Level the rebate, ${size}, where the felloes meet.`];
  return [`Cut the rebate with a rebate cutter once the ring is glued, or with plane and chisel before: ${size}.`];
}

function mullionSteps(s: FrameSizes): string[] {
  const { mullions } = s;
  if (!mullions) return [];
  const crossing = mullions.upright > 0 && mullions.level > 0;
  const lapped =
    s.method === 'laser'
      ? 'Glue the mullions up layer by layer, face down on a flat board: in the front layers the uprights run through, behind them the level bars; the pieces go between.'
      : 'Mullions are halved where they cross, uprights from the back, level ones from the front: try each lap, then glue them into a grid on a flat board, square.';
  return [
    ...(crossing ? [lapped] : []),
    `Lay the ring face down and glue the mullions into their notches, ${printMm(notchDepth(s))} deep from the back.`,
  ];
}

const paneStep = (s: FrameSizes): string[] =>
  s.rebate.width > 0
    ? [
        `Paint first, then lay the pane into the rebate from behind and hold it with ${takesScrews(s.ring.stock) ? 'panel pins or beads' : 'mounting tape'}. On stage use acrylic, film mirror or card, not glass; where glass is asked for, safety glass, fitted by a glazier.`,
      ]
    : [];

/** How it is put up, and what to mind. */
function standing(s: FrameSizes): string {
  const rules =
    'What carries it, and anything hung over people, is for someone licensed to say; local codes come first.';
  if (!takesScrews(s.ring.stock))
    return `Glue a plywood board behind it${s.legs > 0 ? ', down both legs,' : ''} and hang, stand or fix it by that: nothing holds in the frame itself. Keep it out of reach of hands, and off what people walk under. ${rules}`;
  if (s.legs > 0)
    return `Stand the arch on its feet and fix it before anyone walks through: brackets to the floor at both feet, and a brace or a wall behind it at the top. An arch on two feet tips over at a push. ${rules}`;
  if (!s.full)
    return `The arc stands on nothing by itself: screw both its ends, and its crown, to something that carries it, through pilot holes. ${rules}`;
  return `Hang the frame by two fixings, a third of its width apart, into something that carries several times its weight, or screw it down all round; a mirror gets a safety wire besides. ${rules}`;
}

/** How the frame goes together, in order, and what to mind. */
export const frameSteps = (s: FrameSizes, ring: Ring, accents?: AccentOptions): string[] => [
  ...planingSteps(s.mullions ? [{ where: 'mullions.thickness', ...s.mullions }] : []),
  'Cut every piece and letter it.',
  ...(s.legs > 0
    ? [
        `The end felloes run on into the legs, one piece each: lay them out along the grain of the leg. Their feet are cut ${footOff(s) < 1e-9 ? 'square' : `level, ${printAngle(footOff(s))} off square`}.`,
      ]
    : []),
  ...ring.steps,
  ...rebateStep(s),
  ...mullionSteps(s),
  ...(s.edge
    ? [
        `Rout the edges ${printMm(s.edge.radius)}, ${s.edge.shape === 'chamfer' ? 'chamfered' : 'round'}; leave the inner edge at the back square${s.mullions ? ', and start after the mullions are in' : ''}.`,
      ]
    : []),
  'Sand with a mask on: dust of MDF and plywood harms lungs.',
  ...accentSteps(accents),
  ...paneStep(s),
  standing(s),
];
