import type { Finding } from '../findings/finding.js';
import type { Motion } from '../geometry/motion.js';
import type { Outline, Region } from '../geometry/outline.js';
import type { Mm, Radians } from '../units/length.js';

/** How a part may be turned against the frame it is drawn in: freely, by half turns, not at all, or by steps. */
export type Turns = 'free' | 'half' | 'none' | { readonly step: Radians };

/** How a part lies to the grain of the stock. Stock without grain takes it any way. */
export interface GrainRule {
  /** direction in the part's frame that the rule speaks of */
  readonly direction: Radians;
  readonly rule: 'along' | 'across' | 'any';
  /** how far it may stray to either side; 0 unless given */
  readonly within?: Radians;
}

/** A part to lay out. */
export interface NestPart {
  readonly id: string;
  /** finished outline and through openings; other parts may lie in the openings */
  readonly region: Region;
  readonly quantity: number;
  /** 'free' unless given */
  readonly turns?: Turns;
  readonly grain?: GrainRule;
  /** whether it may lie face down: only where both faces are alike */
  readonly mirrored?: boolean;
  /** names of the stock it may be cut from; any unless given */
  readonly stock?: readonly string[];
}

/** What every kind of stock has. Lengths mm. */
interface AnyStock {
  readonly name: string;
  /** which way its grain runs, x being along: 'along' unless given */
  readonly grain?: 'along' | 'across' | 'none';
  /** from its edges (trued ones) to the nearest finished outline; 0 unless given */
  readonly margin?: Mm;
  /** knots, splits, old screws: no part touches them; in the stock's own frame */
  readonly defects?: readonly Region[];
  /** how many there are; as many as are needed unless given */
  readonly count?: number;
  /** of one; by area unless given */
  readonly price?: number;
}

/** A kind of stock: its frame has the origin at the lower left corner, x along its length; an offcut's is the frame of its outline. */
export type NestStock =
  | (AnyStock & { readonly kind: 'sheet'; readonly length: Mm; readonly width: Mm })
  | (AnyStock & {
      readonly kind: 'board';
      readonly length: Mm;
      readonly width: Mm;
      /** taken off each long edge to true it; 0 unless given */
      readonly true?: Mm;
    })
  | (AnyStock & { readonly kind: 'offcut'; readonly outline: Region });

/** A part where it lies: its own frame mirrored, turned and moved into the stock's. */
export interface NestPlacement {
  readonly part: string;
  readonly motion: Motion;
}

/** One piece of stock with what is cut from it. */
export interface NestedPiece {
  readonly stock: string;
  /** 1 for the first of its stock */
  readonly number: number;
  readonly placements: readonly NestPlacement[];
  /** finished area over the piece's area, 0 to 1 */
  readonly utilisation: number;
  /** the largest piece a straight cut leaves whole, in the stock's frame, if it leaves any */
  readonly offcut?: Outline;
}

/** A laid out job. */
export interface NestLayout {
  readonly pieces: readonly NestedPiece[];
  /** parts that found no place on the stock there is */
  readonly unplaced: readonly { readonly part: string; readonly quantity: number }[];
  /** of all pieces that have a price */
  readonly cost: number;
  /** finished area over the area of all pieces, 0 to 1 */
  readonly utilisation: number;
  /** `stop` for what found no place */
  readonly findings: readonly Finding[];
}
