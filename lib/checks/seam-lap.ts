import type { Finding } from '../findings/finding.js';
import { cutThrough, rimSlabs } from '../models/helm-wheel/layers.js';
import { lapWidth, seamsByLayer, spokeAngles } from '../models/helm-wheel/layout.js';
import type { HelmWheel } from '../models/helm-wheel.js';
import { wrap } from '../models/seams.js';

/** A seam that runs into a lap's wall leaves a sliver: between spokes it keeps clear of every lap, under a spoke it lies in the lap's middle. */
export function seamLap(wheel: HelmWheel): Finding[] {
  const s = wheel.sizes;
  const layers = rimSlabs(s).filter(slab => !cutThrough(slab));
  const cut = layers.some(
    (slab, i) =>
      slab.lap > 0 &&
      seamsByLayer(s)[i]!.some(seam =>
        spokeAngles(s).some(a => {
          const apart = Math.abs(wrap(a - seam + Math.PI) - Math.PI);
          const wall = s.inner * Math.sin(Math.min(apart, Math.PI / 2)) - lapWidth(s) / 2;
          return apart > 1e-9 && wall < SLIVER && -wall < s.width / 2 - SLIVER;
        }),
      ),
  );
  if (!cut) return [];
  return [
    {
      level: 'warn',
      rule: 'seam-lap',
      where: 'rim.seam.at',
      message: `a seam comes within ${SLIVER} mm of a lap's wall and leaves a sliver; allowed: under-spokes, another angle, or another number of felloes`,
      value: s.seam.at,
      limit: SLIVER,
    },
  ];
}

/** Narrowest wood between a seam and a lap's wall; common practice, no source. */
const SLIVER = 3;
