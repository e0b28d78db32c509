import type { SeamOptions } from '../joints/seam-joint.js';
import type { Method } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import type { AxleBore } from './axle.js';

/** The two rims, alike. Lengths mm. */
export interface WheelRimOptions {
  /** diameter */
  readonly outside: Mm;
  /** radial width */
  readonly band: Mm;
  /** 3 to 24 */
  readonly felloes: number;
  /** 2 or more: thinner rings glued up, seams staggered */
  readonly layers?: number;
  /** of a whole rim, all its layers; if left out, the stock's times the layers */
  readonly thickness?: Mm;
  /** butt unless given; under the spokes where their number allows it, else between them */
  readonly seam?: SeamOptions;
  /** name of a stock */
  readonly stock: string;
}

/** Tabs on each end of a paddle. */
export interface TabOptions {
  /** 1 to 3; 2 unless given */
  readonly count?: number;
  /** as wide as the gaps between them unless given */
  readonly width?: Mm;
}

/** The paddles, from rim to rim. Lengths mm. */
export interface PaddleOptions {
  /** 3 to 60 */
  readonly count: number;
  /** angle from the radius, outer edge ahead anticlockwise, -45 to 45 degrees; 0 unless given */
  readonly rake?: Radians;
  /** across the paddle, centred on the band; the rim's band unless given */
  readonly depth?: Mm;
  readonly tabs?: TabOptions;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** The spokes: laid on the outer face of each rim, wedged together in the middle. Lengths mm. */
export interface WheelSpokeOptions {
  /** on each rim, 3 to 24 */
  readonly count: number;
  readonly width: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** Two discs on each set of spokes, one outside and one inside. Lengths mm. */
export interface WheelHubOptions {
  readonly diameter: Mm;
  /** none unless given */
  readonly bore?: AxleBore;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface WaterWheelFit {
  /** tab in slot; 0.2 unless given */
  readonly slot?: Mm;
  /** between the wedges of the spokes; 0 unless given */
  readonly wedge?: Mm;
  /** round the axle; 0.2 unless given */
  readonly bore?: Mm;
  /** in the rims' seams; the joint's unless given */
  readonly seam?: Mm;
}

/** What a water wheel is made from: the plan's keys, in millimetres and radians. */
export interface WaterWheelOptions {
  readonly rim: WheelRimOptions;
  readonly paddles: PaddleOptions;
  readonly spokes: WheelSpokeOptions;
  readonly hub: WheelHubOptions;
  /** length: clear between the rims */
  readonly axle: { readonly length: Mm };
  /** see accents-options.ts */
  readonly accents?: AccentOptions;
  readonly method: Method;
  readonly fit?: WaterWheelFit;
}
