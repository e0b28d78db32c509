import type { SeamOptions } from '../joints/seam-joint.js';
import type { Method } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import type { BoreOptions, EdgeProfile, Turns } from './helm-wheel-options.js';

/** The face that turns: one sheet, or several segments round a hole in the middle. Lengths mm. */
export interface PrizeFaceOptions {
  readonly diameter: Mm;
  /** 1 to 24; 1 unless given */
  readonly segments?: number;
  /** 2 or more thinner faces glued up, their seams apart; 1 unless given */
  readonly layers?: number;
  /** of all layers; the stock's, times the layers, if left out */
  readonly thickness?: Mm;
  /** between segments; butt unless given */
  readonly seam?: SeamOptions;
  /** diameter of the hole in the middle: clear of the bearing or the axle, and with several segments a third of the hub, unless given */
  readonly hole?: Mm;
  /** name of a stock */
  readonly stock: string;
}

/** Sectors, clockwise from the one at the top: a number of equal ones, 2 to 72, or the angle of each, a full turn in all. */
export type SectorOptions = { readonly count: number } | { readonly angles: readonly Radians[] };

/** A peg on every line between two sectors. Lengths mm. */
export interface PegOptions {
  /** diameter of the circle they stand on; near the edge unless given */
  readonly circle?: Mm;
  /** 10 unless given, or what a small wheel takes */
  readonly diameter?: Mm;
  /** through the face and past it; long enough for the flapper unless given */
  readonly length?: Mm;
  /** what they are made of, for the balance; sugar maple unless given */
  readonly species?: string;
}

/** The tongue that clicks from peg to peg. Lengths mm. */
export interface FlapperOptions {
  /** from its pivot to its tip */
  readonly length?: Mm;
  /** how far its tip reaches past the pegs' outer side, towards the centre */
  readonly reach?: Mm;
  /** diameter of the bolt it hangs on; 6 unless given, or what a small wheel takes */
  readonly bolt?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** The discs that carry the face on its axle. Lengths mm. */
export interface PrizeHubOptions {
  readonly diameter: Mm;
  /** behind the face, or on both sides of it; back unless given */
  readonly faces?: 'back' | 'both';
  readonly bore: Exclude<BoreOptions, 'none'>;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** The plate behind the wheel that carries axle and flapper. Lengths mm. */
export interface PlateOptions {
  readonly width?: Mm;
  readonly height?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface PrizeFit {
  /** round a peg; -0.05 unless given */
  readonly peg?: Mm;
  /** a bearing's seat and a shaft that is locked, -0.05 unless given; what turns on an axle has 0.2 more */
  readonly bore?: Mm;
  /** in the seams; the joint's unless given */
  readonly seam?: Mm;
}

/** What a prize wheel is made from: the plan's keys, in millimetres and radians. */
export interface PrizeWheelOptions {
  readonly face: PrizeFaceOptions;
  readonly sectors: SectorOptions;
  readonly pegs?: PegOptions;
  readonly flapper: FlapperOptions;
  readonly hub: PrizeHubOptions;
  readonly plate: PlateOptions;
  /** a routed edge round the face */
  readonly edges?: { readonly face?: EdgeProfile };
  /** see accents-options.ts */
  readonly accents?: AccentOptions;
  /** bearing where the hub has one, else shaft */
  readonly turns?: Turns;
  readonly method: Method;
  readonly fit?: PrizeFit;
}
