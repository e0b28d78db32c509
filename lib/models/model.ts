import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

/** Where one physical piece sits in the assembled prop: its part's frame turned anticlockwise, then moved; front is +z. */
export interface Piece {
  /** id of its part */
  readonly part: string;
  readonly turn: Radians;
  readonly x: Mm;
  readonly y: Mm;
  /** height of its lower (back) face */
  readonly z: Mm;
}

/** A bought thing. */
export interface Hardware {
  readonly name: string;
  readonly quantity: number;
  /** what it is for */
  readonly use: string;
}

/** A setting to dial in on a machine: an angle or a depth, for a maker without a router table or a laser. */
export interface Setting {
  readonly name: string;
  readonly value: number;
  readonly unit: 'deg' | 'mm';
}

/** A prop: its parts, where each piece goes, what to buy, what to set, what to do. Wheel centre at the origin. */
export interface Model {
  readonly title: string;
  readonly parts: readonly Part[];
  readonly pieces: readonly Piece[];
  readonly hardware: readonly Hardware[];
  readonly settings: readonly Setting[];
  readonly steps: readonly string[];
}
