import { requireRange } from '../findings/unusable.js';
import { withMates } from '../geometry/mates.js';
import { circle, rectangle, reverse, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Label, Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';
import { CAPTION_ROOM, rowCaption, STEP_HEIGHT, type Step, stepLabels } from './step-labels.js';

/** Bores in steps, in rows of so many. Lengths mm. */
export interface BoreRowOptions extends PieceOptions {
  /** of what is tried in them */
  readonly diameter: Mm;
  /** wood round each bore */
  readonly wall: Mm;
  /** how wide the board may be; one bore always fits */
  readonly most: Mm;
  readonly steps: readonly Step[];
  /** what it says of itself */
  readonly caption: string;
  /** the name of the joint its edges bear */
  readonly mate: string;
}

/** Room a bore's label takes from left to right at least. */
const LABEL_ROOM: Mm = 16;

/** A board of bores, its lower left corner at the origin, from the upper left on as one reads; each labelled below with its name and its
 * clearance. @throws Unusable naming the option */
export function boreRow(o: BoreRowOptions): Part {
  requireRange('diameter', o.diameter, 1, 500);
  requireRange('wall', o.wall, 1, 500);
  for (const { name, clearance } of o.steps) requireRange(name, clearance, -o.diameter / 2, o.diameter);
  const widest = o.diameter + Math.max(...o.steps.map(s => s.clearance));
  const column = Math.max(widest, LABEL_ROOM) + o.wall;
  const row = widest + STEP_HEIGHT + 1.5 * o.wall;
  const rows = Math.ceil(o.steps.length / Math.max(1, Math.floor((o.most - o.wall) / column)));
  const across = Math.ceil(o.steps.length / rows);
  const placed = o.steps.map((step, i) => ({
    step,
    x: o.wall / 2 + (0.5 + (i % across)) * column,
    y: CAPTION_ROOM + (rows - 1 - Math.floor(i / across)) * row,
  }));
  const openings = placed.map(({ step, x, y }) => {
    const at = { x, y: y + STEP_HEIGHT + o.wall / 2 + widest / 2 };
    return withMates(reverse(circle((o.diameter + step.clearance) / 2, at)), o.mate, [0, 1]);
  });
  const width = across * column + o.wall;
  const region = { outer: rectangle(0, 0, width, CAPTION_ROOM + rows * row), openings };
  const names = placed.flatMap(({ step, x, y }): Label[] => stepLabels(step, x, y + STEP_HEIGHT / 2, column));
  const features = [...names, rowCaption(o.caption, width / 2, width)];
  return piece('bore-row', 'Bore row', o, { region, features });
}

/** A disc to try in bores. Lengths mm. */
export interface PlugOptions extends PieceOptions {
  readonly diameter: Mm;
  readonly mate: string;
}

/** A disc about the origin; its lower half is left to whatever holds it while it is cut. @throws Unusable naming the option */
export function plug(o: PlugOptions): Part {
  requireRange('diameter', o.diameter, 1, 500);
  return piece('plug', 'Plug', o, { region: solid(withMates(circle(o.diameter / 2), o.mate, [0])) });
}
