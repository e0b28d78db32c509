import type { SeamOptions } from '../../joints/seam-joint.js';
import type { Method, Stock } from '../../stock/stock.js';
import type { Mm, Radians } from '../../units/length.js';
import type { EdgeProfile } from '../helm-wheel-options.js';
import { stockNamed } from '../named-stock.js';
import type { RingFrameOptions } from '../ring-frame-options.js';

interface Board {
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** The bars across the opening. */
export interface Mullions extends Board {
  readonly upright: number;
  readonly level: number;
  readonly width: Mm;
}

/** Every size of a ring frame with its defaults filled in: mm and radians, radii instead of diameters. The ring's back is z = 0. */
export interface FrameSizes {
  readonly method: Method;
  readonly outer: Mm;
  readonly inner: Mm;
  readonly sweep: Radians;
  readonly full: boolean;
  readonly segments: number;
  readonly seam: SeamOptions;
  readonly ring: Board & { readonly layers?: number };
  /** 0 by 0 for none */
  readonly rebate: { readonly width: Mm; readonly depth: Mm };
  readonly mullions?: Mullions;
  /** how far mullions go in past the ring's inner edge */
  readonly hold: Mm;
  /** of the legs; 0 for none */
  readonly legs: Mm;
  readonly edge?: EdgeProfile;
  readonly fit: { readonly lap: Mm; readonly pane: Mm; readonly seam?: Mm; readonly mullion: Mm };
}

/** Clearances where the plan does not say; common practice, no source. */
const FIT = { lap: 0.15, pane: 2, mullion: 0.2 };
/** How far mullions go into a ring without a rebate: half its band, at most this; common practice, no source. */
const MOST_HOLD: Mm = 12;
const ROUNDING: Radians = 1e-9;

function board(
  stock: readonly Stock[],
  field: string,
  own: { readonly stock: string; readonly thickness?: Mm },
  layers = 1,
): Board {
  const from = stockNamed(stock, `${field}.stock`, own.stock);
  return { stock: from, thickness: own.thickness ?? from.thickness * layers };
}

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock that is not known. */
export function frameSizes(o: RingFrameOptions, stock: readonly Stock[]): FrameSizes {
  const { ring, rebate, mullions } = o;
  const sweep = ring.sweep ?? 2 * Math.PI;
  return {
    method: o.method,
    outer: ring.outside / 2,
    inner: ring.outside / 2 - ring.band,
    sweep,
    full: sweep > 2 * Math.PI - ROUNDING,
    segments: ring.segments,
    seam: ring.seam ?? {},
    ring: {
      ...board(stock, 'ring', ring, ring.layers),
      ...(ring.layers !== undefined && { layers: ring.layers }),
    },
    rebate: rebate ?? { width: 0, depth: 0 },
    ...(mullions && {
      mullions: {
        ...board(stock, 'mullions', mullions),
        upright: mullions.upright ?? 0,
        level: mullions.level ?? 0,
        width: mullions.width,
      },
    }),
    hold: rebate ? rebate.width : Math.min(ring.band / 2, MOST_HOLD),
    legs: o.legs?.height ?? 0,
    ...(o.edges?.ring && { edge: o.edges.ring }),
    fit: { ...FIT, ...o.fit },
  };
}

/** How deep the ring is notched for mullions, from its back; 0 without any. */
export const notchDepth = (s: FrameSizes): Mm => (s.mullions ? s.rebate.depth + s.mullions.thickness : 0);

/** Radius of the pane, and of the ends of the mullions. */
export const paneRadius = (s: FrameSizes): Mm => s.inner + s.rebate.width - s.fit.pane / 2;
export const mullionReach = (s: FrameSizes): Mm => s.inner + s.hold - s.fit.mullion / 2;
