import { movePoint } from '../geometry/motion.js';
import { bulk } from '../parts/moment.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Piece } from './model.js';

/** What something weighs and where its middle is in the prop: kg and mm, front is +z. */
export interface Mass {
  readonly weight: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
}

/** A piece in its place. @param density of its stock, kg/mm³ */
export function pieceMass(piece: Piece, part: Part, density: number): Mass {
  const { volume, x, y, height } = bulk(part);
  const { x: px, y: py } = movePoint(piece.stands ? { x, y: -height } : { x, y }, piece);
  return { weight: volume * density, x: px, y: py, z: piece.z + (piece.stands ? y : height) };
}

/** Several as one: their weights together, at their common centre of mass. */
export function combined(masses: readonly Mass[]): Mass {
  const weight = masses.reduce((sum, m) => sum + m.weight, 0);
  const mean = (of: (m: Mass) => Mm): Mm => masses.reduce((sum, m) => sum + m.weight * of(m), 0) / weight;
  return weight === 0
    ? { weight, x: 0, y: 0, z: 0 }
    : { weight, x: mean(m => m.x), y: mean(m => m.y), z: mean(m => m.z) };
}
