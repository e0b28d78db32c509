import { difference, union } from '../geometry/boolean.js';
import { withMates } from '../geometry/mates.js';
import { moveOutline, turning } from '../geometry/motion.js';
import { annularSector, bulgeOf, type Outline, rectangle, solid, vertex } from '../geometry/outline.js';
import type { Face, Part, Pocket } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { onlyPiece } from './one-piece.js';

/** A spoke's tongue in the rim: a flat tongue on its outer end, in a slot open at the rim's inner edge that stops short of the outer one.
 * The slot is a pocket in each of the two layers that meet on it, or is cut through the layers between. Lengths mm. */
export interface TongueJoint {
  /** radius of the rim's inner edge */
  readonly inner: Mm;
  /** of the tongue, across the spoke */
  readonly width: Mm;
  /** of the tongue, from the rim's inner edge on the spoke's centre line outwards */
  readonly length: Mm;
  /** `fit.tongue`: between the walls, across the joint; half of it past the tongue's end; negative presses the walls only */
  readonly clearance: Mm;
}

const MATE = 'tongue';

/** How far a slot is carried past the edge it is open at, a tongue into the spoke it grows from. */
const PAST: Mm = 1;
/** How far a pocket is carried past an open edge: more than any cutter's width. */
const CLEAR: Mm = 60;

/** Distance from the wheel's centre to a slot's end. */
export const slotEnd = (joint: TongueJoint): Mm => joint.inner + joint.length + Math.max(0, joint.clearance) / 2;

const slotHalf = (joint: TongueJoint): Mm => (joint.width + joint.clearance) / 2;

/** Distance from the wheel's centre to the slot's farthest corner: what is left to the rim's outer edge lies under the tyre. */
export const slotReach = (joint: TongueJoint): Mm => Math.hypot(slotEnd(joint), slotHalf(joint));

/** The longest tongue whose slot stays within a radius; not above 0 where there is none. */
export function longestTongue(joint: Omit<TongueJoint, 'length'>, within: Mm): Mm {
  const half = (joint.width + joint.clearance) / 2;
  return Math.sqrt(Math.max(0, within * within - half * half)) - joint.inner - Math.max(0, joint.clearance) / 2;
}

/** Angle from a spoke's centre line to its slot's wall at the rim's inner edge, where that is widest by angle. */
export const slotAngle = (joint: TongueJoint): Radians => Math.asin(Math.min(1, slotHalf(joint) / joint.inner));

/** What a tongue takes of a layer it passes through, in or beside. */
export type LayerShare =
  | { readonly kind: 'none' | 'through' }
  | { readonly kind: 'pocket'; readonly face: Face; readonly depth: Mm }
  /** shut in on both sides: no cutter gets there */
  | { readonly kind: 'inside' };

/** A stretch of height, mm. */
export interface Span {
  readonly low: Mm;
  readonly high: Mm;
}

/** Heights closer than this are one: layers are stacked by multiplication, which rounds. */
const SAME_HEIGHT: Mm = 1e-6;

/** What a tongue takes of a layer. */
export function shareOf(layer: Span, tongue: Span): LayerShare {
  const low = Math.max(layer.low, tongue.low);
  const high = Math.min(layer.high, tongue.high);
  if (high - low < SAME_HEIGHT) return { kind: 'none' };
  const back = low - layer.low < SAME_HEIGHT;
  const front = layer.high - high < SAME_HEIGHT;
  if (back && front) return { kind: 'through' };
  if (!back && !front) return { kind: 'inside' };
  return { kind: 'pocket', face: front ? 'front' : 'back', depth: high - low };
}

/** The slot as it lies in the rim, along +x: straight walls and end, the rim's inner edge. */
function slotInRim(joint: TongueJoint): Outline {
  const half = slotHalf(joint);
  const edge = Math.sqrt(joint.inner * joint.inner - half * half);
  const end = slotEnd(joint);
  const arc = -bulgeOf(2 * slotAngle(joint));
  return [
    vertex({ x: edge, y: -half }, 0, MATE),
    vertex({ x: end, y: -half }, 0, MATE),
    vertex({ x: end, y: half }, 0, MATE),
    vertex({ x: edge, y: half }, arc),
  ];
}

/** The slot carried past the rim's inner edge. */
const slotPast = (joint: TongueJoint, by: Mm): Outline =>
  withMates(
    rectangle(Math.max(0, joint.inner - by), -slotHalf(joint), slotEnd(joint), slotHalf(joint)),
    MATE,
    [0, 1, 2],
  );

function pocketed(felloe: Part, joint: TongueJoint, face: Face, depth: Mm, turns: readonly Radians[]): Part {
  const pockets = turns.map((turn): Pocket => {
    const area = solid(moveOutline(slotInRim(joint), turning(turn)));
    const beyond = solid(moveOutline(slotPast(joint, CLEAR), turning(turn)));
    return { kind: 'pocket', face, depth, area, beyond };
  });
  return { ...felloe, features: [...felloe.features, ...pockets] };
}

/** A felloe of one layer of the rim with a slot for every tongue that comes into it, as far as the tongue takes of the layer.
 * @param at angles of the spokes' centre lines in the felloe's frame, from +y; each slot lies whole in the felloe
 * @throws RangeError where the layer's share is shut in on both sides */
export function slotted(felloe: Part, joint: TongueJoint, share: LayerShare, at: readonly Radians[]): Part {
  const turns = at.map(angle => Math.PI / 2 + angle);
  switch (share.kind) {
    case 'none':
      return felloe;
    case 'pocket':
      return pocketed(felloe, joint, share.face, share.depth, turns);
    case 'through': {
      const slots = turns.map(turn => solid(moveOutline(slotPast(joint, CLEAR), turning(turn))));
      return { ...felloe, region: onlyPiece(felloe.id, difference([felloe.region], slots)) };
    }
    case 'inside':
      throw new RangeError(`${felloe.id}: a tongue inside one layer cannot be cut`);
  }
}

/** A spoke along +x with a tongue on its outer end, in a layer of it that the tongue runs through. */
export function tongued(spoke: Part, joint: TongueJoint): Part {
  const half = joint.width / 2;
  const root = Math.sqrt(joint.inner * joint.inner - half * half) - PAST;
  const tongue = withMates(rectangle(root, -half, joint.inner + joint.length, half), MATE, [0, 1, 2]);
  return { ...spoke, region: onlyPiece(spoke.id, union([spoke.region, solid(tongue)])) };
}

/** A spoke's tongue made thinner than the spoke: a pocket from each face, from the end in to the shoulder, which follows the rim's inner
 * edge. @param depth of each, mm; above 0 */
export function cheeked(spoke: Part, joint: TongueJoint, depth: Mm): Part {
  const half = joint.width / 2;
  const end = joint.inner + joint.length;
  const edge = Math.sqrt(joint.inner * joint.inner - half * half);
  const arc = -bulgeOf(2 * Math.asin(half / joint.inner));
  const area = solid([
    vertex({ x: edge, y: -half }),
    vertex({ x: end, y: -half }),
    vertex({ x: end, y: half }),
    vertex({ x: edge, y: half }, arc, MATE),
  ]);
  const reach = Math.min(1.4, Math.asin(Math.min(1, (half + CLEAR) / joint.inner)));
  const beyond = solid(annularSector(joint.inner, end + CLEAR, -reach, 2 * reach));
  const pockets = (['front', 'back'] as const).map((face): Pocket => ({ kind: 'pocket', face, depth, area, beyond }));
  return { ...spoke, features: [...spoke.features, ...pockets] };
}
