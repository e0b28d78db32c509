import { type Point, polar } from '../../geometry/point.js';
import { betweenFeet } from '../../joints/mortise.js';
import type { Mm, Radians } from '../../units/length.js';
import { PIN_SIZES, PIN_WALL } from '../registration.js';
import { ringOfSeams } from '../seams.js';
import { boreRadii } from './bore.js';
import { type CartSizes, tongueHalf } from './sizes.js';

// Where things lie round the wheel; angles from the first spoke, which points up.

/** Angles of the spokes' centre lines, the first at 0. */
export const spokeAngles = (s: CartSizes): Radians[] => ringOfSeams(s.spokes, 0);

/** Wood between a seam and the tongue nearest to it, at the rim's inner edge; common practice, no source. */
export const SEAM_WALL: Mm = 4;

/** First seam of each layer where a felloe holds one spoke: layers take turns to either side of the middle between two spokes, half way to
 * the nearest place a seam may be. Undefined where whole steps from gap to gap stagger the seams. */
export function seamOffsets(s: CartSizes): Radians[] | undefined {
  const layers = Math.max(1, Math.round(s.rim.layers));
  if (layers === 1 || s.felloes !== s.spokes || s.seam.at !== 'between-spokes') return undefined;
  const room = Math.max(0, Math.PI / s.spokes - tongueHalf(s) - SEAM_WALL / s.rim.inner);
  return Array.from({ length: layers }, (_, i) => s.seam.first + (i % 2 === 0 ? -room / 2 : room / 2));
}

/** The pins that hold the nave's discs in register: two, on lines half way between spokes, in the wood between the mortises or between
 * mortises and bore. */
export interface NavePins {
  readonly diameter: Mm;
  readonly at: readonly Point[];
}

/** Radius and room of a place for pins: between the mortises, in front of the nave's edge; or inside their bottoms, outside the bore. */
function places(s: CartSizes): { readonly radius: Mm; readonly room: Mm }[] {
  const between = betweenFeet(s.foot, s.spokes);
  const bore = boreRadii(s).end;
  const bottom = s.nave.radius - s.foot.length - Math.max(0, s.foot.clearance) / 2;
  return [
    { radius: between.radius, room: Math.min(between.room, between.radius - bore) },
    { radius: (bore + bottom) / 2, room: (bottom - bore) / 2 },
  ];
}

/** The thickest pins that keep their wall; none where there is no room for any. */
export function navePins(s: CartSizes): NavePins | undefined {
  for (const diameter of PIN_SIZES.filter(d => d <= s.nave.radius / 8)) {
    const place = places(s).find(p => p.room >= diameter / 2 + PIN_WALL);
    if (!place) continue;
    const half = Math.PI / s.spokes;
    const angles = [half, half + Math.floor(s.spokes / 2) * 2 * half];
    return { diameter, at: angles.map(a => polar(place.radius, Math.PI / 2 + a)) };
  }
  return undefined;
}

/** Pins along a spoke glued up from layers: their diameter and their distances from the wheel's centre; none in one solid piece or where it
 * is too narrow. */
export function spokePins(s: CartSizes): { readonly diameter: Mm; readonly at: readonly Mm[] } {
  const diameter = PIN_SIZES.find(d => d <= s.spoke.end / 3 && d + 2 * PIN_WALL <= s.spoke.end);
  const length = s.rim.inner - s.nave.radius;
  if (Math.round(s.spoke.layers) < 2 || diameter === undefined || length < 4 * diameter) return { diameter: 0, at: [] };
  return { diameter, at: [0.25, 0.75].map(share => s.nave.radius + share * length) };
}
