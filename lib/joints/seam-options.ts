import type { Finding } from '../findings/finding.js';
import type { SeamJointName, SeamOptions } from './seam-joint.js';

/** Options that only some joints have a use for, and which. */
const USED: Readonly<Record<SeamJointName, readonly (keyof SeamOptions)[]>> = {
  butt: [],
  biscuit: ['size', 'count'],
  dowel: ['count', 'diameter', 'depth'],
  finger: ['count', 'length'],
  key: ['depth', 'length', 'width', 'face'],
  scarf: ['overlap'],
};

const OWN: readonly (keyof SeamOptions)[] = [
  'size',
  'count',
  'diameter',
  'depth',
  'length',
  'width',
  'overlap',
  'face',
];

/** A note for every option of a seam that its joint has no use for. @param field `rim.seam` */
export function idleOptions(options: SeamOptions, field: string): Finding[] {
  const joint = options.joint ?? 'butt';
  return OWN.filter(key => options[key] !== undefined && !USED[joint].includes(key)).map(key => ({
    level: 'note',
    rule: 'seam-option',
    where: `${field}.${key}`,
    message: `${field}.${key} is given, but joint: ${joint} has no use for it; it has ${USED[joint].join(', ') || 'no sizes of its own'}`,
  }));
}
