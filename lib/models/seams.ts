import type { Radians } from '../units/length.js';

const TURN = 2 * Math.PI;

/** Greatest common divisor of two whole numbers above 0. */
export const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Least common multiple of two whole numbers above 0. */
export const lcm = (a: number, b: number): number => (a / gcd(a, b)) * b;

/** Offset of one ring of evenly spaced lines against another at which the least angle between them is largest: pi / lcm.
 * The differences of the two rings are all multiples of 2 pi / lcm; half a multiple lies farthest from them. */
export const staggered = (a: number, b: number): Radians => Math.PI / lcm(a, b);

/** A stretch between two lines of a ring. */
export interface Gap {
  readonly middle: Radians;
  readonly half: Radians;
}

/** Where one seam of a ring of pieces may lie so that none of its seams meets a line given: the stretches between all lines as seen
 * modulo one piece, the widest first. Its middle is the farthest from any line that a seam can be; against one ring of evenly spaced
 * lines that is pi / lcm. @param lines angles, at least one */
export function gapsFor(pieces: number, lines: readonly Radians[]): Gap[] {
  const piece = TURN / pieces;
  const folded = lines.map(a => wrap(a) % piece).map(a => (piece - a < 1e-9 ? 0 : Math.round(a * 1e9) / 1e9));
  const sorted = [...new Set(folded)].sort((a, b) => a - b);
  const gaps = sorted.map((from, i): Gap => {
    const half = ((sorted[i + 1] ?? sorted[0]! + piece) - from) / 2;
    return { middle: from + half, half };
  });
  return gaps.sort((a, b) => (Math.abs(a.half - b.half) < 1e-6 ? a.middle - b.middle : b.half - a.half));
}

/** An angle brought into 0 to 2 pi, with the last rounding before a full turn counted as 0. */
export function wrap(angle: Radians): Radians {
  const a = ((angle % TURN) + TURN) % TURN;
  return TURN - a < 1e-12 ? 0 : a;
}

/** An angle seen from another, -pi to pi. */
export const relative = (angle: Radians, from: Radians): Radians => wrap(angle - from + Math.PI) - Math.PI;

/** Seam angles of a ring of pieces. @param first of one seam */
export const ringOfSeams = (pieces: number, first: Radians): Radians[] =>
  Array.from({ length: pieces }, (_, k) => first + (k * TURN) / pieces);

/** Seam offsets of the layers of a glued-up ring, so that no seam lies over another of the next layer: whole spoke steps where
 * the felloes allow it, so that each layer keeps its seams' distance to the spokes; even steps otherwise.
 * @param first seam angle of the lowest layer */
export function layerSeams(layers: number, felloes: number, spokes: number, first: Radians): Radians[] {
  const steps = lcm(felloes, spokes) / felloes;
  const by = (j: number): Radians =>
    steps >= 2
      ? ((j * Math.max(1, Math.floor(steps / layers))) % steps) * (TURN / lcm(felloes, spokes))
      : (j * TURN) / (felloes * layers);
  return Array.from({ length: layers }, (_, j) => first + by(j));
}
