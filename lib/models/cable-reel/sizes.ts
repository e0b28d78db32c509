import type { SeamOptions } from '../../joints/seam-joint.js';
import { type StaveSizes, staveSizes } from '../../parts/stave.js';
import type { Method, Stock } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';
import { axleOf } from '../axle.js';
import type { CableReelOptions } from '../cable-reel-options.js';
import { stockNamed } from '../named-stock.js';

/** The flanges: how they are built up. */
export interface FlangeSizes {
  readonly radius: Mm;
  readonly build: 'planks' | 'segments';
  readonly pieces: number;
  /** as the plan has it; planks are one */
  readonly layers?: number;
  readonly seam: SeamOptions;
  readonly thickness: Mm;
  readonly stock: Stock;
}

export interface BattenSizes {
  readonly count: number;
  readonly width: Mm;
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** The core's staves. Cut by laser they stay square, as wide as their inner face would be: their inner corners meet. */
export interface CoreSizes {
  /** from the middle to the outer flats */
  readonly apothem: Mm;
  readonly staves: number;
  /** the bevelled stave, whether or not it is cut so */
  readonly stave: StaveSizes;
  readonly bevelled: boolean;
  readonly length: Mm;
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** Every size of a cable reel with its defaults filled in: mm and radians, radii instead of diameters. */
export interface ReelSizes {
  readonly method: Method;
  readonly flange: FlangeSizes;
  /** absent for segments, which hold each other */
  readonly battens?: BattenSizes;
  readonly core: CoreSizes;
  readonly rods: { readonly count: number; readonly diameter: Mm };
  /** diameter of the axle; 0 for none */
  readonly axle: Mm;
  readonly fit: { readonly bore: Mm; readonly rod: Mm; readonly seam?: Mm };
}

const FIT = { bore: 0.5, rod: 0.5 };
const PLANKS = 6;
const SEGMENTS = 8;
/** A batten's share of the flange's diameter where the plan does not say; common practice, no source. */
const BATTEN_SHARE = 1 / 8;

function flangeSizes({ flange }: CableReelOptions, stock: readonly Stock[]): FlangeSizes {
  const { build = 'planks', seam = {} } = flange;
  const from = stockNamed(stock, 'flange.stock', flange.stock);
  const { layers } = flange;
  return {
    radius: flange.diameter / 2,
    build,
    pieces: flange.pieces ?? (build === 'planks' ? PLANKS : SEGMENTS),
    ...(build === 'segments' && layers !== undefined && { layers }),
    seam,
    thickness: flange.thickness ?? from.thickness * (layers ?? 1),
    stock: from,
  };
}

function battenSizes({ flange, battens = {} }: CableReelOptions, stock: readonly Stock[]): BattenSizes {
  const from = stockNamed(stock, 'battens.stock', battens.stock ?? flange.stock);
  return {
    count: battens.count ?? 2,
    width: battens.width ?? flange.diameter * BATTEN_SHARE,
    thickness: battens.thickness ?? from.thickness,
    stock: from,
  };
}

function coreSizes({ core, method }: CableReelOptions, stock: readonly Stock[]): CoreSizes {
  const from = stockNamed(stock, 'core.stock', core.stock);
  const thickness = core.thickness ?? from.thickness;
  return {
    apothem: core.diameter / 2,
    staves: core.staves,
    stave: staveSizes(core.diameter, core.staves, thickness),
    bevelled: method !== 'laser',
    length: core.length,
    thickness,
    stock: from,
  };
}

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock that is not known. */
export function reelSizes(o: CableReelOptions, stock: readonly Stock[]): ReelSizes {
  const flange = flangeSizes(o, stock);
  return {
    method: o.method,
    flange,
    ...(flange.build === 'planks' && { battens: battenSizes(o, stock) }),
    core: coreSizes(o, stock),
    rods: o.rods,
    axle: axleOf(o.bore),
    fit: { ...FIT, ...o.fit },
  };
}

/** Radius of the hole in the flanges' middle; 0 for none. */
export const boreRadius = (s: ReelSizes): Mm => (s.axle > 0 ? (s.axle + s.fit.bore) / 2 : 0);

/** Width of a stave's widest face, as it is cut. */
export const staveWidth = ({ core }: ReelSizes): Mm => (core.bevelled ? core.stave.outer : core.stave.inner);

/** From the middle to the farthest corner of the core. */
export const coreReach = (s: ReelSizes): Mm => Math.hypot(s.core.apothem, staveWidth(s) / 2);

/** Height of the front of the front flange; the back of the back one is 0. */
export const reelHeight = ({ flange, core }: ReelSizes): Mm => 2 * flange.thickness + core.length;
