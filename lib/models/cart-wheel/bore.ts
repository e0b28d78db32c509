import type { NaveBore } from '../../parts/nave-disc.js';
import { shoulderHole } from '../../stock/bearings.js';
import type { Mm } from '../../units/length.js';
import { shaftOf } from '../helm-wheel/core.js';
import { type CartSizes, RELIEF } from './sizes.js';

/** Rounding of depths, mm. */
const SAME: Mm = 1e-6;

/** How deep a bearing's seat is from the end of the nave: the bearing's width, and room under a cap; `through` seats take whole discs. */
function seatDepth(s: CartSizes, width: Mm, seat: 'through' | 'shoulder'): Mm {
  const depth = width + (s.cap ? RELIEF : 0);
  const { each } = s.nave.sides;
  return seat === 'shoulder' ? depth : Math.ceil(depth / each - SAME) * each;
}

/** The bore of the nave from end to end. */
export function naveBore(s: CartSizes): NaveBore {
  const { axis } = s.nave;
  if (axis.kind === 'none') return { kind: 'none' };
  if (axis.kind === 'axle') return { kind: 'plain', diameter: axis.diameter + s.fit.bore };
  return {
    kind: 'seats',
    diameter: axis.bearing.outside + s.fit.bore,
    depth: seatDepth(s, axis.bearing.width, axis.seat),
    shoulder: shoulderHole(axis.bearing),
  };
}

/** Radius of the bore at the ends of the nave, and in its middle discs; 0 for none. */
export function boreRadii(s: CartSizes): { readonly end: Mm; readonly middle: Mm } {
  const bore = naveBore(s);
  if (bore.kind === 'none') return { end: 0, middle: 0 };
  const end = bore.diameter / 2;
  return { end, middle: bore.kind === 'plain' ? end : bore.shoulder / 2 };
}

/** Diameter of the axle or shaft; 0 for none. */
export const axle = (s: CartSizes): Mm => shaftOf(s.nave.axis);
