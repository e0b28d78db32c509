import type { SeamOptions } from '../joints/seam-joint.js';
import type { Method } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import type { EdgeProfile } from './helm-wheel-options.js';

/** The ring, or an arc of it, symmetric about straight up. Lengths mm. */
export interface FrameRingOptions {
  /** diameter */
  readonly outside: Mm;
  /** radial width */
  readonly band: Mm;
  /** 20 to 360 degrees; a full ring unless given */
  readonly sweep?: Radians;
  /** felloes of each layer, 1 to 24; none sweeps more than half a turn */
  readonly segments: number;
  /** 2 or more: thinner rings glued up, seams staggered */
  readonly layers?: number;
  /** of all layers; if left out, the stock's times the layers */
  readonly thickness?: Mm;
  /** butt unless given; `at` is the angle of a full ring's first seam from straight up, as far from mullions as it can be unless given */
  readonly seam?: SeamOptions;
  /** name of a stock */
  readonly stock: string;
}

/** A step along the inner edge, from the back, for a pane. Lengths mm. */
export interface RebateOptions {
  /** radial */
  readonly width: Mm;
  readonly depth: Mm;
}

/** Bars across the opening, evenly spaced, let into the ring from behind, in front of the pane. Lengths mm. */
export interface MullionOptions {
  /** 0 to 5; none unless given */
  readonly upright?: number;
  /** 0 to 5; none unless given */
  readonly level?: number;
  readonly width: Mm;
  /** the stock's if left out; by laser a whole number of its sheets */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** Straight legs that carry an arch's ends on, their feet cut level. */
export interface LegOptions {
  /** along the middle of the band, mm */
  readonly height: Mm;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface RingFrameFit {
  /** where mullions cross; 0.15 unless given */
  readonly lap?: Mm;
  /** round the pane; 2 unless given */
  readonly pane?: Mm;
  /** in the ring's seams; the joint's unless given */
  readonly seam?: Mm;
  /** of mullions in the ring; 0.2 unless given */
  readonly mullion?: Mm;
}

/** What a ring frame is made from: the plan's keys, in millimetres and radians. */
export interface RingFrameOptions {
  readonly ring: FrameRingOptions;
  readonly rebate?: RebateOptions;
  readonly mullions?: MullionOptions;
  readonly legs?: LegOptions;
  readonly edges?: { readonly ring?: EdgeProfile };
  /** see accents-options.ts */
  readonly accents?: AccentOptions;
  readonly method: Method;
  readonly fit?: RingFrameFit;
}
