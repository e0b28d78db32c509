import { type AccentPlaces, onRim } from '../accents.js';
import { boreRadii } from './bore.js';
import { capHole } from './cap.js';
import { spokeAngles } from './layout.js';
import { aboutMiddle, type CartSizes } from './sizes.js';

/** The front cap where there is one, else the front of the nave. */
function hubFlat(s: CartSizes): NonNullable<AccentPlaces['hub']> {
  const { high } = aboutMiddle(s, s.nave.middle.thickness + 2 * s.nave.sides.thickness);
  const cap = s.cap?.faces.includes('front') ? s.cap : undefined;
  if (!cap) return { radius: s.nave.radius - (s.edges.nave?.radius ?? 0), hole: boreRadii(s).end, front: high };
  const radius = cap.radius - (s.edges.cap?.radius ?? 0);
  return { radius, hole: capHole(s, cap, 'front') / 2, front: high + cap.thickness };
}

/** Accents go on the rim, over the spokes' tongues, and on the front cap or the nave. */
export function cartPlaces(s: CartSizes): AccentPlaces {
  const edge = s.edges.rim?.radius ?? 0;
  const rim = { inner: s.rim.inner + edge, outer: s.rim.outer - edge, front: s.rim.thickness };
  return { ...onRim(rim, spokeAngles(s)), hub: hubFlat(s) };
}
