import { difference, union } from '../geometry/boolean.js';
import { withMates } from '../geometry/mates.js';
import { moveOutline, turning } from '../geometry/motion.js';
import { bulgeOf, type Outline, rectangle, solid, vertex } from '../geometry/outline.js';
import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { onlyPiece } from './one-piece.js';

/** A spoke's foot in the nave: a tenon as thick as the spoke, in a mortise cut right through the nave's middle discs and open at their
 * edge; the discs in front and behind close it. Lengths mm. */
export interface FootJoint {
  /** radius of the nave */
  readonly nave: Mm;
  /** of the tenon, across the spoke */
  readonly width: Mm;
  /** of the tenon, from the nave's edge on the spoke's centre line towards the wheel's centre */
  readonly length: Mm;
  /** `fit.mortise`: between the walls, across the joint; half of it past the tenon's end; negative presses the walls only */
  readonly clearance: Mm;
}

const MATE = 'mortise';

/** How far a slot is carried past the edge it is open at, and a tenon into the spoke it grows from. */
const PAST: Mm = 1;

/** Distance from the wheel's centre to a mortise's bottom. */
export const mortiseBottom = (joint: FootJoint): Mm => joint.nave - joint.length - Math.max(0, joint.clearance) / 2;

/** Wood between two neighbouring mortises where they are closest, at their bottoms' corners: twice the distance from a corner to the line
 * half way between the spokes, 2 (b sin(pi / N) - w / 2 cos(pi / N)); plane trigonometry. @param count spokes in the wheel */
export function betweenMortises(joint: FootJoint, count: number): Mm {
  const step = Math.PI / count;
  return 2 * mortiseBottom(joint) * Math.sin(step) - (joint.width + joint.clearance) * Math.cos(step);
}

/** The longest tenon that leaves a wall between mortises. @param wall mm; at the mortises' bottoms */
export function longestTenon(joint: Omit<FootJoint, 'length'>, count: number, wall: Mm): Mm {
  const step = Math.PI / count;
  const bottom = (wall + (joint.width + joint.clearance) * Math.cos(step)) / 2 / Math.sin(step);
  return joint.nave - Math.max(0, joint.clearance) / 2 - bottom;
}

/** Where pins through the discs find most wood between the mortises: on the line half way between two spokes, as far from the nave's edge
 * as from both mortises; r (1 + sin(pi / N)) = R + w / 2. */
export function betweenFeet(joint: FootJoint, count: number): { readonly radius: Mm; readonly room: Mm } {
  const sine = Math.sin(Math.PI / count);
  const radius = (joint.nave + (joint.width + joint.clearance) / 2) / (1 + sine);
  return { radius, room: joint.nave - radius };
}

/** A nave's disc with a mortise for every spoke. @param at angles of the spokes' centre lines in the disc's frame, from +y */
export function mortised(disc: Part, joint: FootJoint, at: readonly Radians[]): Part {
  const wide = (joint.width + joint.clearance) / 2;
  const slot = rectangle(mortiseBottom(joint), -wide, joint.nave + PAST, wide);
  const tagged = withMates(slot, MATE, [0, 2, 3]);
  const slots = at.map((angle): Outline => moveOutline(tagged, turning(Math.PI / 2 + angle)));
  return { ...disc, region: onlyPiece(disc.id, difference([disc.region], slots.map(solid))) };
}

/** A spoke along +x with the tenon on its foot: up to the nave's edge, on which the foot sits, and no farther, for a spoke may taper fast. */
export function tenoned(spoke: Part, joint: FootJoint): Part {
  const { nave } = joint;
  const wide = joint.width / 2;
  const edge = Math.sqrt(nave * nave - wide * wide);
  const tenon = rectangle(nave - joint.length, -wide, edge, wide).map((v, i) =>
    i === 1 ? vertex(v, bulgeOf(2 * Math.asin(wide / nave))) : v,
  );
  return {
    ...spoke,
    region: onlyPiece(spoke.id, union([spoke.region, solid(withMates(tenon, MATE, [0, 2, 3]))])),
  };
}
