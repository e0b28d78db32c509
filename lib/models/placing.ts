import { movePoint, turning } from '../geometry/motion.js';
import { subtract } from '../geometry/point.js';
import type { Piece } from './model.js';
import type { Placing } from './overlap.js';

/** Where a piece lies as another one sees it from its own frame. */
export function placingFrom(a: Piece, b: Piece): Placing {
  return { ...movePoint(subtract(b, a), turning(-a.turn)), turn: b.turn - a.turn, rise: b.z - a.z };
}

const TENTHS_OF_NM = 1e7;
const digits = (n: number): number => Math.round(n * TENTHS_OF_NM) + 0;

/** The same words for pairs that are the same but for where they are in the prop: to 1e-7 mm and 1e-9 of a turn. */
export const placingKey = ({ x, y, turn, rise }: Placing): string =>
  [digits(x), digits(y), digits(rise), digits(100 * Math.cos(turn)), digits(100 * Math.sin(turn))].join();
