import type { AccentPlaces } from '../accents.js';
import { spokeAngles } from './layout.js';
import { type WaterSizes, wheelHeight } from './sizes.js';

/** Accents go on the front spokes, half way across the rim under them, and on the foremost hub disc, clear of the axle's collar, which is
 * taken as twice as wide as the axle. Spokes lie across the rim, so a name band finds no place there. */
export function waterPlaces(s: WaterSizes): AccentPlaces {
  const front = wheelHeight(s) + s.spokes.thickness;
  return {
    crossings: {
      at: spokeAngles(s),
      radius: (s.inner + s.outer) / 2,
      front,
      room: Math.min(s.spokes.width, s.outer - s.inner),
    },
    hub: { radius: s.hub.radius, hole: s.axle, front: front + s.hub.thickness },
  };
}
