import type { Finding } from '../findings/finding.js';
import { biscuitFindings } from '../joints/biscuit.js';
import { cutThrough, rimSlabs } from '../models/helm-wheel/layers.js';
import { lapWidth, seamsByLayer, spokeAngles } from '../models/helm-wheel/layout.js';
import type { HelmWheel } from '../models/helm-wheel.js';
import { wrap } from '../models/seams.js';
import { biscuit } from '../stock/biscuits.js';

/** A biscuit's slot stays clear of laps, of the band's edges and of the felloe's faces, in every layer that has seams. */
export function biscuitSlot(wheel: HelmWheel): Finding[] {
  const s = wheel.sizes;
  if (s.seam.joint !== 'biscuit') return [];
  const seams = seamsByLayer(s);
  const found = rimSlabs(s)
    .filter(slab => !cutThrough(slab))
    .flatMap((slab, i) => {
      const nearest = seams[i]!.map(seam =>
        Math.min(...spokeAngles(s).map(a => Math.abs(wrap(a - seam + Math.PI) - Math.PI))),
      );
      const laps = { width: lapWidth(s), depth: slab.lap, at: [Math.min(...nearest)] };
      const edge = s.edges.rim?.radius ?? 0;
      return biscuitFindings(
        { inner: s.inner, outer: s.outer, thickness: slab.thickness, edge, laps },
        biscuit(s.seam.size, 'rim.seam.size'),
      );
    });
  return found.filter((f, i) => found.findIndex(g => g.message === f.message) === i);
}
