import type { SeamOptions } from '../joints/seam-joint.js';
import type { Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import type { BoreOptions, EdgeProfile, Turns } from './helm-wheel-options.js';

/** The rim: `felloes` sectors of a ring in one layer or several. Lengths mm. */
export interface CartRimOptions {
  /** diameter, without the tyre */
  readonly outside: Mm;
  /** radial width */
  readonly band: Mm;
  /** 3 to 36, a number that divides the spokes; half the spokes unless given (two spokes a felloe), where that is whole and 3 or more */
  readonly felloes?: number;
  /** with captured tongues 2 or more (3 or more by laser), 2 (3) unless given; with drilled ones 1 or more, 1 unless given */
  readonly layers?: number;
  /** of all layers; the stock's times the layers if left out */
  readonly thickness?: Mm;
  /** butt unless given */
  readonly seam?: SeamOptions;
  /** name of a stock */
  readonly stock: string;
}

/** The foot of a spoke in the nave. Lengths mm. */
export interface TenonOptions {
  /** across the spoke; six tenths of its width unless given */
  readonly width?: Mm;
  /** from the nave's edge inwards; as long as wall and bore leave room for, at most half the nave's radius, unless given */
  readonly length?: Mm;
}

/** The outer end of a spoke in the rim. Lengths mm. */
export interface TongueOptions {
  /** captured: a flat tongue between layers of the rim, or through its middle ones; drilled: a dowel bored into spoke and felloe.
   * Drilled by hand in what dowels hold in, and captured otherwise, unless given */
  readonly joint?: 'captured' | 'drilled';
  /** across the spoke, six tenths of its outer end unless given; a drilled one's diameter, a third to a half of the thinner piece's thickness */
  readonly width?: Mm;
  /** from the rim's inner edge outwards; six tenths of the band, as far as that leaves wood under the tyre, unless given */
  readonly length?: Mm;
  /** of a captured one, the spoke's unless given, as far as that leaves the layers wood */
  readonly thickness?: Mm;
}

/** The spokes. Lengths mm. */
export interface CartSpokeOptions {
  /** 3 to 36 */
  readonly count: number;
  /** at the foot */
  readonly width: Mm;
  /** how much narrower it is at the rim; 0 unless given */
  readonly taper?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly tenon?: TenonOptions;
  readonly tongue?: TongueOptions;
  readonly stock: string;
}

/** The nave: discs glued up along the axle; those in the middle, as thick as the spokes together, carry the mortises. Lengths mm. */
export interface NaveOptions {
  readonly diameter: Mm;
  /** along the axle; the spokes' thickness, and in front and behind whole discs that come to at least as much, and
   * take a bearing's seat, unless given */
  readonly length?: Mm;
  /** none unless given; a bearing's seat is `through` whole discs (by laser, unless given), or with a `shoulder` as deep as the bearing is wide */
  readonly bore?: BoreOptions;
  readonly stock: string;
}

/** A mock iron tyre: a strip bent round the rim. Lengths mm. */
export interface TyreOptions {
  readonly thickness: Mm;
  /** the rim's thickness unless given */
  readonly width?: Mm;
}

/** A disc over the nave's end. Lengths mm. */
export interface CapOptions {
  /** front unless given */
  readonly faces?: 'front' | 'back' | 'both' | 'none';
  /** seven tenths of the nave's, or what covers the bore, unless given */
  readonly diameter?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  /** whether the front cap has a hole for the axle too; the back one always has; open where the wheel turns
   * on its axle, so that a collar or a linchpin holds it there, closed otherwise, unless given */
  readonly front?: 'open' | 'closed';
  readonly stock: string;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface CartFitOptions {
  /** between tenon and mortise; 0.15 unless given */
  readonly mortise?: Mm;
  /** between tongue and slot; 0.15 unless given */
  readonly tongue?: Mm;
  /** in the seams; the joint's own unless given */
  readonly seam?: Mm;
  /** round a bearing or a shaft, -0.05 unless given; round an axle the wheel turns on, 0.3 */
  readonly bore?: Mm;
}

/** What a cart wheel is made from: the plan's keys, in millimetres and radians. Defaults of what is left out are the builder's. */
export interface CartWheelOptions {
  readonly rim: CartRimOptions;
  readonly spokes: CartSpokeOptions;
  readonly nave: NaveOptions;
  readonly tyre?: 'none' | TyreOptions;
  readonly cap?: CapOptions;
  readonly edges?: {
    readonly rim?: EdgeProfile;
    readonly spokes?: EdgeProfile;
    readonly nave?: EdgeProfile;
    readonly cap?: EdgeProfile;
  };
  /** see accents-options.ts */
  readonly accents?: AccentOptions;
  /** bearing where there is a bearing or an axle, else fixed, unless given */
  readonly turns?: Turns;
  readonly method: Method;
  readonly fit?: CartFitOptions;
}
