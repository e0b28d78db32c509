import { printMm } from '../../units/print-length.js';
import type { Hardware, Setting } from '../model.js';
import type { CouponRow, CouponSizes } from './sizes.js';

const mm = (value: number): string => printMm(value, 3);

/** What is bought to be tried. */
export const couponHardware = (s: CouponSizes): Hardware[] =>
  s.rows.flatMap(row =>
    row.against === 'cut'
      ? []
      : [
          {
            name: row.letter === 'B' ? `${row.tries.replace('a ', '')}` : `plug or dowel, ${mm(row.nominal)}`,
            quantity: 1,
            use: `to try in ${row.steps[0]!.name} to ${row.steps.at(-1)!.name}`,
          },
        ],
  );

/** What the ladder is measured by. */
export const couponSettings = (s: CouponSizes): Setting[] => [
  { name: "between the cut lines at a ladder piece's ends", value: s.ladder.spacing, unit: 'mm' },
  { name: "the ladder's arm, wall to end", value: s.ladder.arm, unit: 'mm' },
];

const HOLD = {
  router:
    'Small pieces come loose: hold the whole offcut down with double-sided tape or a skin left at the bottom, keep hands away, wear eye and hearing protection; run it in scrap first.',
  laser:
    'Small pieces drop: stay with the machine, extinguisher at hand, extraction on; never cut PVC, ABS or polystyrene foam.',
} as const;

function ladderSteps({ ladder, kerf }: CouponSizes): string[] {
  const { pieces, spacing, arm } = ladder;
  return [
    `Push the ${pieces} ladder pieces together along the bed's arm, against its wall. They were cut on lines ${mm(spacing)} apart and the arm is ${pieces} times that, ${mm(arm)}, whatever the kerf.`,
    `Measure the gap from the last piece to the end of the arm, with the depth rod of a caliper standing on the arm's end: it is ${pieces} kerfs, about ${mm(pieces * kerf)}. Kerf = gap / ${pieces}. Turn a piece round and measure again; two or three readings are better than one.`,
  ];
}

function rowStep({ tries, steps, letter, against }: CouponRow): string {
  const [first, last] = [steps[0]!.name, steps.at(-1)!.name];
  const into = letter === 'S' ? 'slots' : 'bores';
  const names = letter === 'B' ? 'Press' : 'Try';
  const own = against === 'cut' ? '; both were cut here' : '';
  return `${names} ${tries} in the ${into} ${first} to ${last}${own}: note the one that feels right, from either end of the row. Under each name stands the clearance it is drawn with, in mm.`;
}

const example = ({ letter, steps }: CouponRow): string =>
  `${letter === 'S' ? '--slot' : '--bore'} ${steps[(steps.length - 1) / 2]!.name}`;

/** What to do with a coupon, in order, and what keeps people safe. */
export const couponSteps = (s: CouponSizes): string[] => [
  'Cut the coupon from the very material, with the cutter, feed and power the prop will be cut with.',
  HOLD[s.options.method],
  'Break off bridges and sand off fuzz, but leave the edges as they were cut.',
  ...ladderSteps(s),
  ...s.rows.map(rowStep),
  `Then: rimwright coupon --read FOLDER --gap MEASURED ${s.rows.map(example).join(' ')} --into PLAN`,
];
