import type { SeamOptions } from '../joints/seam-joint.js';
import type { Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import type { AxleBore } from './axle.js';

/** The two flanges, alike. Lengths mm. */
export interface FlangeOptions {
  readonly diameter: Mm;
  /** parallel planks held by battens, or a ring of segments round the bore; planks unless given */
  readonly build?: 'planks' | 'segments';
  /** planks of one width, 2 to 24 (6 unless given); or segments, 3 to 24 (8 unless given) */
  readonly pieces?: number;
  /** segments only: 2 or more thinner rings glued up, seams staggered; 1 unless given */
  readonly layers?: number;
  /** segments only: how they are joined; butt unless given */
  readonly seam?: SeamOptions;
  /** of the whole flange; the stock's, times the layers, if left out */
  readonly thickness?: Mm;
  /** name of a stock */
  readonly stock: string;
}

/** Bars across the planks on the outer face of each flange. Lengths mm. */
export interface BattenOptions {
  /** 2 to 6 on each flange, 2 unless given */
  readonly count?: number;
  /** an eighth of the flange's diameter unless given */
  readonly width?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  /** the flange's if left out */
  readonly stock?: string;
}

/** The core between the flanges: staves with bevelled edges, glued up to a regular polygon. Lengths mm. */
export interface CoreOptions {
  /** across the flats, outside */
  readonly diameter: Mm;
  /** 4 to 48 */
  readonly staves: number;
  /** between the flanges */
  readonly length: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** Threaded rods through both flanges, inside the core. Lengths mm. */
export interface RodOptions {
  /** 2 to 16 */
  readonly count: number;
  readonly diameter: Mm;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface CableReelFit {
  /** round the axle; 0.5 unless given */
  readonly bore?: Mm;
  /** round each rod; 0.5 unless given */
  readonly rod?: Mm;
  /** in the seams of segments; the joint's unless given */
  readonly seam?: Mm;
}

/** What a cable reel is made from: the plan's keys, in millimetres. */
export interface CableReelOptions {
  readonly flange: FlangeOptions;
  /** for planks only */
  readonly battens?: BattenOptions;
  readonly core: CoreOptions;
  readonly rods: RodOptions;
  /** none unless given */
  readonly bore?: AxleBore;
  /** see accents-options.ts */
  readonly accents?: AccentOptions;
  readonly method: Method;
  readonly fit?: CableReelFit;
}
