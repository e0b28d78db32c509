import { biscuited } from './biscuit.js';
import { butt } from './butt.js';
import type { SeamJoint } from './seam-joint.js';

/** Every joint between felloes, by the plan's word for it. */
export const seamJoints: Readonly<Record<string, SeamJoint>> = {
  butt,
  biscuit: biscuited,
};
