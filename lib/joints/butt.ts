import { glued, seamFace } from './glue.js';
import { square } from './seam-ends.js';
import type { SeamJoint } from './seam-joint.js';

/** Felloes glued end to end, nothing between them. */
export const butt: SeamJoint = (felloe, site) => ({
  part: felloe,
  loose: [],
  hardware: [],
  settings: [],
  steps: [],
  findings: [],
  glue: glued([seamFace(site)]),
  reach: 0,
  locks: false,
  lines: [square(site)],
});
