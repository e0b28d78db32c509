import type { SeamSite } from '../../lib/joints/seam-joint.js';
import { felloe } from '../../lib/parts/felloe.js';
import type { Part } from '../../lib/parts/part.js';

/** A seam of a rim of eight felloes, 600 mm over it, band 70 mm, 19 mm thick, with nothing near it; some of it changed. */
export function site(change: Partial<SeamSite> = {}): SeamSite {
  const sweep = change.sweep ?? Math.PI / 4;
  return {
    inner: 230,
    outer: 300,
    sweep,
    whole: sweep,
    ends: { left: true, right: true },
    thickness: 19,
    clearance: 0,
    method: 'router',
    layers: 1,
    seamed: 1,
    edge: 0,
    laps: [],
    grained: true,
    field: 'rim.seam',
    ...change,
  };
}

/** The plain felloe of a site. */
export const plain = ({ inner, outer, sweep, thickness }: SeamSite): Part =>
  felloe({ inner, outer, sweep, thickness, stock: 'plank' });

/** Area of the felloe's sector, mm². */
export const sectorArea = ({ inner, outer, sweep }: SeamSite): number => (sweep * (outer * outer - inner * inner)) / 2;
