import type { SeamOptions } from '../joints/seam-joint.js';
import type { Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';

/** Which faces of the prop something is on. */
export type Faces = 'front' | 'back' | 'both';

/** Turned by a shaft it is fixed to, turning on its own bearing, or hung flat. */
export type Turns = 'shaft' | 'bearing' | 'fixed';

/** The rim: `felloes` sectors of a ring. Lengths mm. */
export interface RimOptions {
  /** diameter */
  readonly outside: Mm;
  /** radial width */
  readonly band: Mm;
  /** 3 to 24 */
  readonly felloes: number;
  /** 2 or more: thinner rings glued up, seams staggered */
  readonly layers?: number;
  /** of the whole rim, all its layers; if left out, the stock's times the layers */
  readonly thickness?: Mm;
  readonly seam?: SeamOptions;
  /** name of a stock */
  readonly stock: string;
}

/** A handle's outline past the rim: a named shape, or points [distance past the rim, half width] in mm; a profile wins over a shape. */
export interface HandleOptions {
  readonly shape?: 'plain' | 'tapered' | 'turned';
  readonly profile?: readonly (readonly [distance: Mm, halfWidth: Mm])[];
  /** sides shaped */
  readonly faces?: 1 | 2;
}

/** The spokes. Lengths mm. */
export interface SpokeOptions {
  /** 3 to 36 */
  readonly count: number;
  readonly width: Mm;
  /** diameter over the tips; not less than the rim's outside diameter */
  readonly overall?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  /** how they cross the rim: by half laps (unless given), by whole layers of both, or bridled: through whole middle layers of the rim */
  readonly lap?: 'half' | 'layered' | 'bridle';
  readonly handle?: HandleOptions;
  readonly stock: string;
}

/** The hole in the middle: none, an axle's diameter (mm), or a bearing by name; a shoulder seat is as deep as the bearing is wide. */
export type BoreOptions =
  | 'none'
  | { readonly axle: Mm }
  | { readonly bearing: string; readonly seat?: 'through' | 'shoulder' };

/** What may differ on one face's hub disc; whatever is left out is the hub's. */
export interface HubFaceOptions {
  readonly diameter?: Mm;
  readonly thickness?: Mm;
  readonly stock?: string;
  readonly bore?: BoreOptions;
}

/** The hub discs. Lengths mm. */
export interface HubOptions {
  readonly diameter: Mm;
  readonly faces?: Faces;
  readonly bore?: BoreOptions;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
  readonly front?: HubFaceOptions;
  readonly back?: HubFaceOptions;
}

/** The trim ring on the rim's face. Lengths mm. */
export interface TrimOptions {
  readonly faces?: Faces;
  readonly band: Mm;
  readonly segments: number;
  readonly thickness?: Mm;
  /** plugs over counterbored screws: diameter in mm, `each` a segment */
  readonly plugs?: { readonly diameter: Mm; readonly each: number };
  readonly stock: string;
}

/** A routed edge: bit radius (round) or leg (chamfer), mm. */
export interface EdgeProfile {
  readonly shape?: 'round' | 'chamfer';
  readonly radius: Mm;
  readonly faces?: Faces;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface FitOptions {
  readonly lap?: Mm;
  readonly wedge?: Mm;
  readonly bore?: Mm;
  readonly plug?: Mm;
  /** between fingers, and round keys */
  readonly seam?: Mm;
}

/** What a helm wheel is made from: the plan's keys, in millimetres and radians. Defaults of what is left out are the builder's. */
export interface HelmWheelOptions {
  readonly rim: RimOptions;
  readonly spokes: SpokeOptions;
  readonly hub: HubOptions;
  readonly trim?: TrimOptions;
  readonly edges?: { readonly rim?: EdgeProfile; readonly trim?: EdgeProfile; readonly hub?: EdgeProfile };
  readonly accents?: AccentOptions;
  readonly turns?: Turns;
  readonly method: Method;
  readonly fit?: FitOptions;
}
