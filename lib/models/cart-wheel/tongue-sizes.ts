import { type BoredTongue, tongueDowel } from '../../joints/bored-tongue.js';
import { longestTongue, type TongueJoint } from '../../joints/tongue.js';
import { traitsOf } from '../../stock/traits.js';
import type { Mm } from '../../units/length.js';
import type { CartWheelOptions } from '../cart-wheel-options.js';
import type { CartSizes } from './sizes.js';

/** How the spokes' outer ends are held in the rim. */
export type TongueSizes =
  | { readonly joint: 'captured'; readonly slot: TongueJoint; readonly thickness: Mm }
  | { readonly joint: 'drilled'; readonly bored: BoredTongue };

/** Share of a spoke's width that its tenon and its tongue take; common practice, no source. */
export const SHOULDERED = 0.6;

/** Wood over a tongue in the layers that capture it; common practice, no source. */
export const COVER: Mm = 3;

/** Wood left between a slot and the rim's outer edge, under the tyre; common practice, no source. */
export const underTyre = (band: Mm): Mm => Math.max(3, 0.15 * band);

/** Share of the band that a tongue goes into; common practice, no source. */
const SHARE = 0.6;
/** Length of a drilled tongue in either piece, in diameters, where the band has room for it; common practice, no source. */
const DIAMETERS = 3;

/** Thinnest tongue there is. */
const LEAST: Mm = 0.5;

/** Rounding of thicknesses, mm. */
const SAME: Mm = 1e-6;

interface Around {
  readonly rim: CartSizes['rim'];
  readonly spoke: CartSizes['spoke'];
  readonly drilled: boolean;
  readonly clearance: Mm;
}

/** Thickest tongue that takes whole middle layers, leaves one in front and one behind, and is no thicker than the spoke. */
function wholeLayers({ rim, spoke }: Around): Mm {
  const count = Math.round(rim.layers);
  const each = rim.thickness / Math.max(1, count);
  const least = count % 2 === 0 ? 2 : 1;
  const most = Math.min(count - 2, Math.floor(spoke.thickness / each + SAME));
  const right = most - ((most - count) % 2 === 0 ? 0 : 1);
  return Math.max(least, right) * each;
}

/** A tongue's thickness where the plan does not say: the spoke's as far as two pockets leave it wood, or whole layers. */
function thicknessOf(method: CartWheelOptions['method'], around: Around): Mm {
  const { rim, spoke } = around;
  const count = Math.round(rim.layers);
  if (method === 'laser' || count % 2 === 1) return wholeLayers(around);
  const each = rim.thickness / count;
  const pockets = 2 * (each - Math.max(COVER, traitsOf(rim.stock).tongue, each / 4));
  return Math.min(spoke.thickness, Math.max(pockets, LEAST));
}

function bored({ spokes }: CartWheelOptions, { rim, spoke }: Around): BoredTongue {
  const thin = Math.min(rim.thickness, spoke.thickness);
  const diameter = spokes.tongue?.width ?? tongueDowel(thin, spoke.end / 2);
  const band = rim.outer - rim.inner;
  const depth = spokes.tongue?.length ?? Math.min(SHARE * band, DIAMETERS * diameter);
  return { inner: rim.inner, diameter, depth };
}

/** Sizes of the tongues with their defaults. */
export function tongueSizes(o: CartWheelOptions, around: Around): TongueSizes {
  if (around.drilled) return { joint: 'drilled', bored: bored(o, around) };
  const { rim, spoke, clearance } = around;
  const band = rim.outer - rim.inner;
  const { width = SHOULDERED * spoke.end, length, thickness } = o.spokes.tongue ?? {};
  const base = { inner: rim.inner, width, clearance };
  const most = longestTongue(base, rim.outer - underTyre(band));
  return {
    joint: 'captured',
    slot: { ...base, length: length ?? Math.min(SHARE * band, most) },
    thickness: thickness ?? thicknessOf(o.method, around),
  };
}
