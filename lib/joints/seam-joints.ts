import { biscuited } from './biscuit.js';
import { butt } from './butt.js';
import { dowelled } from './dowel.js';
import { fingered } from './finger.js';
import { keyed } from './key.js';
import { scarfed } from './scarf.js';
import type { SeamJoint, SeamJointName } from './seam-joint.js';

/** Every joint between felloes, by the plan's word for it. */
export const seamJoints: Readonly<Record<SeamJointName, SeamJoint>> = {
  butt,
  biscuit: biscuited,
  dowel: dowelled,
  finger: fingered,
  key: keyed,
  scarf: scarfed,
};
