import { inches, type Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A softwood board by its nominal name, at its least dressed dry size. Lengths mm, exact from inches: "89 mm" is only a label of 3-1/2 in. */
export interface Lumber extends Sourced {
  /** nominal inches: `1x6`, `5/4x4` */
  readonly name: string;
  readonly thickness: Mm;
  readonly width: Mm;
}

/** Dressed width in inches by nominal width. */
const WIDTHS: readonly (readonly [nominal: number, dressed: number])[] = [
  [2, 1.5],
  [3, 2.5],
  [4, 3.5],
  [5, 4.5],
  [6, 5.5],
  [8, 7.25],
  [10, 9.25],
  [12, 11.25],
];

/** Dressed thickness in inches by nominal thickness, and the nominal widths sold in it. */
const THICKNESSES: readonly (readonly [nominal: string, dressed: number, widths: readonly number[]])[] = [
  ['1', 0.75, [2, 3, 4, 5, 6, 8, 10, 12]],
  ['5/4', 1, [4, 6, 8, 10, 12]],
  ['6/4', 1.25, [4, 6, 8, 10, 12]],
  ['2', 1.5, [2, 3, 4, 6, 8, 10, 12]],
  ['3', 2.5, [6]],
  ['4', 3.5, [4, 6]],
];

/** The size that was not found in a reprint. */
const UNCONFIRMED = '2x3';

/** Boards, dimension and small timbers, thin to thick, narrow to wide. */
export const lumber: readonly Lumber[] = THICKNESSES.flatMap(([nominal, thickness, widths]) =>
  WIDTHS.filter(([width]) => widths.includes(width)).map(([width, dressed]) => {
    const name = `${nominal}x${width}`;
    const source = name === UNCONFIRMED ? SOURCES.lumberUnconfirmed : SOURCES.lumber;
    return { name, thickness: inches(thickness), width: inches(dressed), source };
  }),
);

/** Lengths boards are sold in, mm: 8 to 16 ft by 2 ft, and 20 ft; common practice, no source. */
export const boardLengths: readonly Mm[] = [8, 10, 12, 14, 16, 20].map(feet => inches(12 * feet));

/** A board by its nominal name: `1x6`. @throws Unusable naming field, name and the names there are. */
export const lumberNamed = (name: string, field = 'lumber'): Lumber => lookup(lumber, l => l.name, field, name);
