import { requireRange } from '../findings/unusable.js';
import { polygon, solid, type Vertex, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Label, Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';
import { CAPTION_ROOM, rowCaption, STEP_HEIGHT, type Step, stepLabels } from './step-labels.js';

const MATE = 'lap';

/** A comb of slots, each a step wider than the one before it. Lengths mm. */
export interface CombOptions extends PieceOptions {
  /** of the tongue that is tried in them */
  readonly tongue: Mm;
  /** of the straight walls, from the open end to the round bottom */
  readonly depth: Mm;
  /** width of the teeth */
  readonly tooth: Mm;
  /** what it says of itself */
  readonly caption: string;
  readonly steps: readonly Step[];
}

/** Wood under the widest slot's bottom, with its label and the caption, mm. */
const FOOT: Mm = CAPTION_ROOM + STEP_HEIGHT + 2;

interface Slot extends Step {
  readonly middle: Mm;
  readonly half: Mm;
}

function slots(o: CombOptions): Slot[] {
  let x = o.tooth;
  return o.steps.map(step => {
    const half = (o.tongue + step.clearance) / 2;
    const slot = { ...step, half, middle: x + half };
    x += 2 * half + o.tooth;
    return slot;
  });
}

/** One slot from its right to its left: open above, its bottom round, so that no cutter leaves wood in a corner. */
const walls = ({ middle, half }: Slot, top: Mm, bottom: Mm): Vertex[] => [
  vertex({ x: middle + half, y: top }, 0, MATE),
  vertex({ x: middle + half, y: bottom }, -1),
  vertex({ x: middle - half, y: bottom }, 0, MATE),
  vertex({ x: middle - half, y: top }),
];

/** A comb that lies with its lower left corner at the origin, slots open upwards, the narrowest on the left; each labelled under its bottom
 * with its name and its clearance. @throws Unusable naming the option */
export function comb(o: CombOptions): Part {
  requireRange('tongue', o.tongue, 1, 1000);
  requireRange('tooth', o.tooth, 1, 1000);
  requireRange('depth', o.depth, 1, 1000);
  for (const { name, clearance } of o.steps) requireRange(name, clearance, -o.tongue / 2, o.tongue);
  const all = slots(o);
  const last = all.at(-1)!;
  const width = last.middle + last.half + o.tooth;
  const bottom = FOOT + Math.max(...all.map(s => s.half));
  const top = bottom + o.depth;
  const outer = [
    ...polygon([
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: top },
    ]),
    ...all.toReversed().flatMap(s => walls(s, top, bottom)),
    vertex({ x: 0, y: top }),
  ];
  const names = all.flatMap((s): Label[] =>
    stepLabels(s, s.middle, CAPTION_ROOM + STEP_HEIGHT / 2, o.tongue + o.tooth),
  );
  const features = [...names, rowCaption(o.caption, width / 2, width)];
  return piece('comb', 'Fit comb', o, { region: solid(outer), features });
}

/** What is tried in a comb's slots. Lengths mm. */
export interface TongueOptions extends PieceOptions {
  readonly width: Mm;
  readonly length: Mm;
}

/** A strip upright on the x axis, its upper end round, so that it never meets the bottom of a slot first; labelled T.
 * @throws Unusable naming the option */
export function tongue(o: TongueOptions): Part {
  requireRange('width', o.width, 1, 1000);
  requireRange('length', o.length, o.width, 1000);
  const round = o.length - o.width / 2;
  const outer = [
    vertex({ x: 0, y: 0 }),
    vertex({ x: o.width, y: 0 }, 0, MATE),
    vertex({ x: o.width, y: round }, 1),
    vertex({ x: 0, y: round }, 0, MATE),
  ];
  const label: Label = { kind: 'label', text: 'T', at: { x: o.width / 2, y: 6 }, height: 5, turn: 0, shows: true };
  return piece('tongue', 'Tongue', o, { region: solid(outer), features: [label] });
}
