import type { Outcome } from '../../findings/finding.js';
import { markStops } from '../../joints/router-stops.js';
import type { Part } from '../../parts/part.js';
import { type Ring, type RingPlace, ring, seenFrom } from '../ring.js';
import { largestBit, rimOptions, spokeAngles } from './layout.js';
import type { HelmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';

/** Where the router must stop before a spoke. */
const stopMarks = (s: HelmSizes, part: Part, place: RingPlace): Part =>
  markStops(part, {
    inner: s.inner,
    outer: s.outer,
    off: s.width / 2 + largestBit(s),
    at: seenFrom(place, spokeAngles(s), Math.PI / s.spokes),
    sweep: place.sweep,
    faces: place.showing,
  });

/** The rim: every piece, layer by layer, and what its seams need. */
export const rimRing = (s: HelmSizes, pins: HelmPins): Outcome<Ring> =>
  ring({
    ...rimOptions(s),
    pins: pins.ring,
    ...(s.edges.rim && { features: (part: Part, place: RingPlace) => stopMarks(s, part, place) }),
  });
