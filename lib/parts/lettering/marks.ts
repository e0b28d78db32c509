/** An accent, our own: as a glyph is, its middle half its advance from the left. Where it goes on a letter:
 * over it, its y counted from a little above the letter; on the line the letter stands on; at the letter's lower right; after its top. */
export interface Mark {
  readonly place: 'over' | 'under' | 'lower-right' | 'upper-right';
  readonly glyph: string;
}

const over = (glyph: string): Mark => ({ place: 'over', glyph });

/** By their combining characters. Source of the names: the Unicode block "Combining Diacritical Marks". */
export const MARKS: Readonly<Record<string, Mark>> = {
  '\u0300': over('6:15 50'), // grave
  '\u0301': over('6:55 10'), // acute
  '\u0302': over('8:00 44 80'), // circumflex
  '\u0303': over('10:01 13 34 72 93 a5'), // tilde
  '\u0304': over('10:01 a1'), // macron
  '\u0306': over('8:04 11 30 50 71 84'), // breve
  '\u0307': over('2:12 01 10 21 12'), // dot
  '\u0308': over('8:12 01 10 21 12/72 61 70 81 72'), // diaeresis
  '\u0309': over('4:05 26 45 43 22 20'), // hook
  '\u030a': over('6:63L 03L 63'), // ring
  '\u030b': over('10:45 10/95 60'), // double acute
  '\u030c': over('8:04 40 84'), // caron
  '\u0312': over('4:36 24 10'), // comma, turned
  '\u0315': { place: 'upper-right', glyph: '5:4s 3o 1l' }, // comma
  '\u0323': { place: 'under', glyph: '2:15 04 13 24 15' }, // dot
  '\u0326': { place: 'under', glyph: '4:35 24 10' }, // comma
  '\u0327': { place: 'under', glyph: '6:37 35 54 52 30 11' }, // cedilla
  '\u0328': { place: 'lower-right', glyph: '4:37 14 02 10 30' }, // ogonek
};

/** Letters that Unicode writes with one mark and the trade with another: a caron beside a tall letter, a comma for a cedilla.
 * Source: the forms shown in the Unicode chart "Latin Extended-A". */
export const MARKED_OTHERWISE: readonly (readonly [letters: RegExp, from: string, to: string])[] = [
  [/[dtlL]/, '\u030c', '\u0315'],
  [/g/, '\u0327', '\u0312'],
  [/[GKLNRklnr]/, '\u0327', '\u0326'],
];

/** Letters with a bar or a slash, which Unicode does not take apart: the letter without it, and the stroke on the letter's grid. */
export const STROKED: Readonly<Record<string, readonly [letter: string, stroke: string]>> = {
  Ø: ['O', '35 ju'],
  ø: ['o', '35 gn'],
  Đ: ['D', '1i ai'],
  Ð: ['D', '1i ai'],
  đ: ['d', '9p ip'],
  Ħ: ['H', '1n ln'],
  ħ: ['h', '1p ap'],
  Ł: ['L', '1d bl'],
  ł: ['l', '1f 7k'],
  Ŧ: ['T', '3h dh'],
  ŧ: ['t', '2f 9f'],
};
