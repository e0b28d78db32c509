import { refuse } from '../../lib/findings/unusable.js';
import { type Asked, type Command, options } from '../command.js';
import { fileOptionsBesideUnits } from '../file-options.js';

/** Options that only mean something where a coupon is read, or where it is cut. */
const READING = ['gap', 'slot', 'bore', 'lap', 'wedge', 'seam', 'into', 'stock'];

function refuseReading(asked: Asked): void {
  const option = READING.find(name => asked.texts(name).length > 0);
  if (option !== undefined) refuse(`--${option}`, 'given', 'with --read only');
  const [word] = asked.words;
  if (word !== undefined)
    refuse('a word after coupon', word, "none; the coupon's folder goes with --read, or with --out");
}

/** Test pieces: what a cutter really takes, and which fit feels right. */
export const coupon: Command = {
  name: 'coupon',
  operands: '[FOLDER]',
  most: 1,
  summary:
    'Make a test piece that tells kerf and fits, or with --read turn what was measured on it into lines of a plan. Lengths without a unit: fractions are inches, decimals mm.',
  options: {
    cutter: options.value(
      "the router bit's diameter, the laser's kerf as it is thought to be, or a name of the tables (1/4)",
    ),
    thickness: options.value('of the offcut'),
    method: options.value('router or laser; by the width of the cutter unless given'),
    units: options.value('of lengths without a unit: mm or in'),
    pieces: options.value('of the kerf ladder (10)'),
    steps: options.value('of each row of fits, an odd number (7)'),
    step: options.value('from one step to the next (0.1mm)'),
    fit: options.value('clearances of the middle steps: lap=0.15mm,bore=-0.05mm,plug=0'),
    bearing: options.value('a bearing to try in bores of its own, such as 6202'),
    plug: options.value('diameter of bought plugs or dowels to try in bores of their own'),
    out: options.value('the folder to write: new, empty, or written by an earlier run', { alias: 'o' }),
    ...fileOptionsBesideUnits,
    hand: options.flag('one lap, one wedge and one seam for hand tools instead'),
    width: options.value('of the strips of --hand (32mm)'),
    spokes: options.value('of the wheel that --hand is for (10)'),
    felloes: options.value('of the wheel that --hand is for (5)'),
    read: options.flag('read a coupon: the one in FOLDER, or one made with the same options'),
    gap: options.value('measured on the ladder; several: 2.1mm,2.12mm'),
    slot: options.value('the slot that felt right: S5; several: S5,S4,S5'),
    bore: options.value('the bore that felt right: B3, or P3 of the plugs'),
    lap: options.value('of --hand: tight, snug, loose or the play measured'),
    wedge: options.value('of --hand: tight, snug, loose or the gap measured'),
    seam: options.value('of --hand: how far it is open at the outer edge; below zero at the inner'),
    into: options.value('a plan to write cutter and fits into; its remarks and layout stay'),
    stock: options.value("with --into: the stock whose own cutter it is, instead of the plan's"),
    quiet: options.quiet,
    json: options.json,
  },
  examples: [
    ['$0 coupon --cutter 1/4 --thickness 3/4 --out coupon', 'a router bit in 3/4 in board'],
    ['$0 coupon --cutter 0.2mm --thickness 6mm --bearing 608 --out coupon', "a laser, and a bearing's seat"],
    ['$0 coupon --read coupon --gap 2.13mm,2.11mm --slot S5 --bore B4', 'what it tells, and the lines to paste'],
    ['$0 coupon --read coupon --gap 63.9mm --slot S4 --into helm.yaml', 'the same, written into the plan'],
    ['$0 coupon --hand --thickness 3/4 --out coupon', 'for hand tools'],
    ['$0 coupon --read coupon --lap loose --wedge 0.2mm --seam 0.3mm', 'what that one tells'],
  ],
  run: async (asked, io) => {
    // loaded once the command line is known to be sound
    if (asked.flag('read')) return (await import('../coupon/read.js')).readFrom(asked, io);
    refuseReading(asked);
    return (await import('../coupon/cut.js')).cutCoupon(asked, io);
  },
};
