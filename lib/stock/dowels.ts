import { inches, type Mm } from '../units/length.js';
import type { Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A dowel pin as it is sold. Lengths mm. */
export interface Dowel extends Sourced {
  readonly name: string;
  readonly diameter: Mm;
  readonly lengths: readonly Mm[];
}

const source = SOURCES.dowel;
const imperial = (name: string, diameter: number): Dowel => ({
  name,
  diameter: inches(diameter),
  lengths: [inches(1.5), inches(2)],
  source,
});
const metric = (diameter: Mm, lengths: readonly Mm[]): Dowel => ({ name: `${diameter}mm`, diameter, lengths, source });

/** Dowel pins, inch sizes first. */
export const dowels: readonly Dowel[] = [
  imperial('1/4in', 1 / 4),
  imperial('5/16in', 5 / 16),
  imperial('3/8in', 3 / 8),
  imperial('7/16in', 7 / 16),
  imperial('1/2in', 1 / 2),
  metric(6, [30]),
  metric(8, [30, 35, 40]),
  metric(10, [40, 50]),
  metric(12, [50]),
];

/** A distance: sizes nearer than this are one size, so that a third of 19.05 mm takes a 6.35 mm dowel. */
const SAME_SIZE: Mm = 1e-6;

/** Dowels that suit a piece: a third to a half of its thickness, common practice. @param thickness of the thinner piece, mm */
export const dowelsFor = (thickness: Mm): readonly Dowel[] =>
  dowels.filter(d => d.diameter > thickness / 3 - SAME_SIZE && d.diameter < thickness / 2 + SAME_SIZE);

/** A hole is deeper than half its dowel by this, for the glue: 1/16 in, common practice. */
const GLUE_ROOM: Mm = inches(1 / 16);

/** Depth of a dowel's hole in each of the two pieces. */
export const dowelHole = (length: Mm): Mm => length / 2 + GLUE_ROOM;
