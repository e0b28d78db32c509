import type { Outline, Polyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';

/** How labels stand in files: as lines any machine follows, or as text for a reader that has a font of its own. */
export type LabelStyle = 'lines' | 'text';

/** A line of text that its reader letters. */
export interface TextLine {
  readonly text: string;
  /** its middle, half way up a capital */
  readonly at: Point;
  /** of a capital, mm */
  readonly height: Mm;
  /** anticlockwise about `at` */
  readonly turn: Radians;
}

/** Lines on one layer, named by the output contract: OUTSIDE, INSIDE, POCKET_<mm>, DRILL_<mm>, SCORE, LABEL, STOCK ... */
export interface Layer {
  readonly name: string;
  readonly closed: readonly Outline[];
  readonly open: readonly Polyline[];
  /** only where labels are asked for as text */
  readonly texts?: readonly TextLine[];
}

/** How much there is on a layer. */
export const entriesOn = ({ closed, open, texts = [] }: Layer): number => closed.length + open.length + texts.length;

/** What a DXF or SVG file holds: millimetres, y up. Layers with nothing on them are left out by whoever makes it. */
export interface Drawing {
  readonly title: string;
  /** in the order the lines are cut: a layer comes again where another is cut in between */
  readonly layers: readonly Layer[];
}
