import { requireRange } from '../findings/unusable.js';
import { polygon, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A board on edge under a stand, from front to back. Lengths mm. */
export interface StandFootOptions extends PieceOptions {
  readonly length: Mm;
  readonly height: Mm;
  /** taken off the upper corners: down the end, and twice as much along the top; 0 to half the height */
  readonly slope: Mm;
}

/** A foot as it is drawn to be stood up and turned a quarter: x up from the floor, y from back to front, the middle of its length at 0;
 * grain along it. @throws Unusable naming the option */
export function standFoot(o: StandFootOptions): Part {
  requireRange('height', o.height, 1, 5000);
  requireRange('slope', o.slope, 0, o.height / 2);
  requireRange('length', o.length, 4 * o.slope + 1, 20_000);
  const { height, slope } = o;
  const half = o.length / 2;
  const corners = [
    { x: 0, y: -half },
    ...(slope > 0 ? [{ x: height - slope, y: -half }] : []),
    { x: height, y: 2 * slope - half },
    { x: height, y: half - 2 * slope },
    ...(slope > 0 ? [{ x: height - slope, y: half }] : []),
    { x: 0, y: half },
  ];
  const part = piece('foot', 'Foot', o, { region: solid(polygon(corners)) });
  return (o.grained ?? true) ? { ...part, grain: Math.PI / 2 } : part;
}
