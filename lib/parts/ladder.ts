import { requireRange } from '../findings/unusable.js';
import { withMates } from '../geometry/mates.js';
import { polygon, rectangle, solid, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

const MATE = 'ladder';

/** The bed of a kerf ladder: a wall to push the pieces against and an arm they lie along. Lengths mm. */
export interface LadderBedOptions extends PieceOptions {
  /** of the arm, from the wall to its end */
  readonly length: Mm;
  /** of the wall over the arm */
  readonly height: Mm;
  /** width of wall and arm */
  readonly band: Mm;
  /** width of the round hollow where wall and arm meet, so that a round cutter leaves no wood before a piece's corner */
  readonly hollow: Mm;
}

/** An L: the wall's face is x = 0, the arm's upper edge y = 0. Wall and arm's end look the same way, so the arm is as long as it is drawn
 * whatever the cutter takes. @throws Unusable naming the option */
export function ladderBed(o: LadderBedOptions): Part {
  requireRange('hollow', o.hollow, 0.1, o.length / 2);
  requireRange('band', o.band, o.hollow, 1000);
  requireRange('height', o.height, 1, 1000);
  const { length, height, band, hollow } = o;
  const outer = [
    ...polygon([
      { x: -band, y: -band },
      { x: length, y: -band },
      { x: length, y: 0 },
    ]),
    vertex({ x: hollow, y: 0 }, -1),
    ...polygon([
      { x: 0, y: 0 },
      { x: 0, y: height },
      { x: -band, y: height },
    ]),
  ];
  return piece('ladder-bed', 'Bed of the kerf ladder', o, { region: solid(withMates(outer, MATE, [1, 2, 4])) });
}

/** One piece of a kerf ladder. Lengths mm. */
export interface LadderPieceOptions extends PieceOptions {
  /** along the ladder */
  readonly width: Mm;
  readonly height: Mm;
}

/** A rectangle, its lower left corner at the origin. @throws Unusable naming the option */
export function ladderPiece(o: LadderPieceOptions): Part {
  requireRange('width', o.width, 1, 1000);
  requireRange('height', o.height, 1, 1000);
  const outer = withMates(rectangle(0, 0, o.width, o.height), MATE, [1, 3]);
  return piece('ladder-piece', 'Piece of the kerf ladder', o, { region: solid(outer) });
}
