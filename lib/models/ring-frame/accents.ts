import type { AccentPlaces } from '../accents.js';
import { middleOf } from '../registration.js';
import { notchArcs } from './bars.js';
import type { FrameSizes } from './sizes.js';

/** Accents go on the front of the ring: a name band anywhere, caps where mullions end behind it. */
export function framePlaces(s: FrameSizes): AccentPlaces {
  const edge = s.edge && s.edge.faces !== 'back' ? s.edge.radius : 0;
  const rim = { inner: s.inner + edge, outer: s.outer - edge, front: s.ring.thickness };
  return {
    rim: { ...rim, ...(!s.full && { sweep: s.sweep }) },
    ...(s.mullions && {
      crossings: {
        at: notchArcs(s).map(middleOf),
        radius: (rim.inner + rim.outer) / 2,
        front: rim.front,
        room: rim.outer - rim.inner,
      },
    }),
  };
}
