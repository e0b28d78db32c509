import type { AccentPlaces } from '../accents.js';
import { numberFlat } from './face.js';
import { discBore } from './hub.js';
import type { PrizeSizes } from './sizes.js';

/** Accents go round the middle (on the front hub disc where there is one, else on the face, round its hole) and, a name band, between hub
 * and numbers. */
export function prizePlaces(s: PrizeSizes): AccentPlaces {
  const { inner, outer } = numberFlat(s);
  const front = s.face.thickness;
  const bore = discBore(s, 'front');
  const disc = s.hub.faces === 'both';
  const hole = disc && bore.kind !== 'none' ? bore.diameter / 2 : s.face.hole;
  return {
    ...(outer > inner && { rim: { inner, outer, front } }),
    hub: { radius: s.hub.radius, hole, front: front + (disc ? s.hub.thickness : 0) },
  };
}
