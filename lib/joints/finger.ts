import type { Mm } from '../units/length.js';
import { butt } from './butt.js';
import { type FingerSeam, fingerFindings, fingerSeam } from './finger-sizes.js';
import { glued, seamFace } from './glue.js';
import { joinedEnds, withEnds } from './seam-ends.js';
import type { SeamJoint, SeamPoint, SeamSite } from './seam-joint.js';

// Fingers cut through the thickness: seen from the front the seam runs to and fro, half a finger's length to either side of its line. Both
// ends of a felloe follow the same run, so that all felloes are alike and one's left end fills the next one's right end.

/** The seam's line from the outer edge to the inner one, moved by half the clearance into the wood on one side: v < 0 for a left end.
 * @param wood the side its wood is on */
export function fingerRun(site: SeamSite, f: FingerSeam, wood: 1 | -1): SeamPoint[] {
  const off = (wood * site.clearance) / 2;
  const side = (j: number): Mm => (j % 2 === 0 ? f.length / 2 : -f.length / 2) + off;
  const at = (u: Mm, v: Mm): SeamPoint => ({ u, v, mate: 'finger' });
  const onEdge = (radius: Mm, v: Mm): SeamPoint => at(Math.sqrt(radius * radius - v * v), v);
  const steps = Array.from({ length: f.count - 1 }, (_, i): SeamPoint[] => {
    // between fingers j + 1 (outside) and j; the left felloe's are those at even j, and narrower by the clearance
    const j = f.count - 2 - i;
    const own = (j % 2 === 0) === wood < 0;
    const u = site.inner + (j + 1) * f.pitch + ((own ? -1 : 1) * site.clearance) / 2;
    return [at(u, side(j + 1)), at(u, side(j))];
  });
  return [onEdge(site.outer, side(f.count - 1)), ...steps.flat(), onEdge(site.inner, side(0))];
}

/** Fingers along the seam, cut through: for every method. */
export const fingered: SeamJoint = (felloe, site, options) => {
  const seam = fingerSeam(site, options);
  const findings = fingerFindings(site, options, seam);
  if (findings.some(f => f.level === 'stop')) return { ...butt(felloe, site, options), findings };
  const ends = joinedEnds(site);
  const flanks = (seam.count - 1) * seam.length * site.thickness;
  return {
    part: withEnds(felloe, site, {
      ...(ends.includes('left') && { left: fingerRun(site, seam, -1) }),
      ...(ends.includes('right') && { right: fingerRun(site, seam, 1) }),
    }),
    loose: [],
    hardware: [],
    settings: [
      { name: 'width of a finger', value: seam.pitch, unit: 'mm' },
      { name: 'length of a finger', value: seam.length, unit: 'mm' },
    ],
    steps: [
      'Try the fingers of every seam dry; ease them until they go in under hand pressure. Lower the felloes into each other face down.',
    ],
    findings,
    glue: glued([seamFace(site), { area: flanks, along: 1 }]),
    reach: seam.length / 2 + Math.abs(site.clearance) / 2,
    locks: true,
    lines: [fingerRun(site, seam, -1), fingerRun(site, seam, 1)],
  };
};
