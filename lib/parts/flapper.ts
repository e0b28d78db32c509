import { requireRange } from '../findings/unusable.js';
import { arcVertices, type Outline, solid, vertex } from '../geometry/outline.js';
import { ORIGIN, polar } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import type { Drill, Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** The tongue that hangs over a prize wheel and clicks from peg to peg. Lengths mm. */
export interface FlapperOptions extends PieceOptions {
  /** from its pivot to its tip */
  readonly length: Mm;
  /** radius of the round end about the pivot */
  readonly head: Mm;
  /** radius of the round tip, at most that of the head */
  readonly tip: Mm;
  /** of the pivot's hole, with its fit */
  readonly bore: Mm;
}

/** Two circles and the tangents they share: the flank leaves either circle at acos((R - r) / d) from the axis. Source: plane geometry,
 * external tangents of two circles. */
function outline({ length, head, tip }: FlapperOptions): Outline {
  const far = { x: 0, y: tip - length };
  const flank = Math.acos((head - tip) / (length - tip));
  const down = -Math.PI / 2;
  const top = 2 * (Math.PI - flank);
  const side = down - flank;
  return [
    ...arcVertices(ORIGIN, head, down + flank, top),
    vertex(polar(head, side)),
    ...arcVertices(far, tip, side, 2 * flank),
    vertex(polar(tip, down + flank, far)),
  ];
}

/** A flapper about its pivot at the origin, hanging down; grain along it.
 * @throws Unusable naming the option; also when the tip lies within the head, or the hole leaves no wood */
export function flapper(o: FlapperOptions): Part {
  requireRange('head', o.head, 0.5, 1000);
  requireRange('tip', o.tip, 0.1, o.head);
  requireRange('length', o.length, o.head + o.tip, 5000);
  requireRange('bore', o.bore, 0.1, 2 * o.head - 0.5);
  const pivot: Drill = { kind: 'drill', at: ORIGIN, diameter: o.bore, from: 'through', depth: o.thickness };
  const part = piece('flapper', 'Flapper', o, { region: solid(outline(o)), features: [pivot] });
  return (o.grained ?? true) ? { ...part, grain: Math.PI / 2 } : part;
}
