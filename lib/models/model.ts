import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

/** Where one physical piece sits in the assembled prop: its part's frame turned anticlockwise, then moved; front is +z. */
export interface Piece {
  /** id of its part */
  readonly part: string;
  readonly turn: Radians;
  readonly x: Mm;
  readonly y: Mm;
  /** height of its lower (back) face; of its outline's y = 0 where it stands */
  readonly z: Mm;
  /** stood up before it is turned: what was up in its frame (y) points to the front (z), its front looks to -y */
  readonly stands?: true;
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

/** A number of the finished prop worth knowing: the length of a tyre, how far the centre of mass lies off, the glue area of a seam. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  /** 'share' is a fraction, 0 to 1; 'factor' is how many times over */
  readonly unit: 'mm' | 'mm2' | 'deg' | 'kg' | 'share' | 'factor';
}

/** A prop: its parts, where each piece goes, what to buy, what to set, what to do. Wheel centre at the origin. */
export interface Model {
  /** of the model it was built as: helm-wheel, cart-wheel ... */
  readonly name: string;
  readonly title: string;
  readonly parts: readonly Part[];
  readonly pieces: readonly Piece[];
  readonly hardware: readonly Hardware[];
  readonly settings: readonly Setting[];
  readonly figures: readonly Figure[];
  readonly steps: readonly string[];
  /** stands by itself: pictures show it on its feet where they would lay it on its back */
  readonly upright?: true;
  /** clearance across a joint, half of it on each side, by the name its edges bear (Vertex.mate); negative presses; 0 where it is not named */
  readonly fits?: Readonly<Record<string, Mm>>;
  /** between what turns and what stands still: kept by a washer, no gap by mistake */
  readonly air?: Mm;
  /** its pieces lie side by side, to be tried in one another: they are not asked to meet */
  readonly loose?: true;
}
