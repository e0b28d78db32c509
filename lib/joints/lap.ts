import { difference, intersection } from '../geometry/boolean.js';
import { withMates, withoutMates } from '../geometry/mates.js';
import { bounds } from '../geometry/measure.js';
import { moveOutline, turning } from '../geometry/motion.js';
import {
  annularSector,
  circle,
  type Outline,
  type Region,
  rectangle,
  reverse,
  solid,
  stripAcrossRing,
} from '../geometry/outline.js';
import type { Face, Part, Pocket } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

/** How far a pocket is carried past an open edge: more than any cutter's width. */
const PAST: Mm = 60;

/** The tag of a pocket's walls, and of their edges carried on. */
const MATE = 'lap';
/** Their edges in a strip across a ring and in a rectangle, lying along +x. */
const SIDES = [0, 2];

/** A spoke's crossing as the rim sees it; lengths mm. */
export interface RimLap {
  readonly inner: Mm;
  readonly outer: Mm;
  /** wall to wall: the spoke and its clearance */
  readonly width: Mm;
  readonly depth: Mm;
  /** the face the pocket is cut from; front unless given */
  readonly face?: Face;
  /** angle over which the piece is a plain sector, symmetric about +y: between its seams, less what joints take of it */
  readonly sweep: Radians;
  /** angles of the spokes in the rim piece's frame, from +y */
  readonly at: readonly Radians[];
}

/** A rim's crossing as the spoke along +x sees it; lengths mm. */
export interface SpokeLap {
  /** the rim's radii */
  readonly inner: Mm;
  readonly outer: Mm;
  readonly width: Mm;
  /** clearance across the joint; half of it at each shoulder */
  readonly clearance: Mm;
  /** of the pocket, from the back */
  readonly depth: Mm;
}

const pocket = (face: Face, depth: Mm, area: Region, beyond: Outline): Pocket => ({
  kind: 'pocket',
  face,
  depth,
  area,
  beyond: solid(beyond),
});

/** A rim piece with a pocket of parallel walls for every spoke that crosses it; a crossing cut by a seam keeps its share.
 * The pocket is carried past the rim's edges, so a cutter can clear it from end to end. */
export function lapRim(part: Part, lap: RimLap): Part {
  const face = lap.face ?? 'front';
  const whole = withMates(stripAcrossRing(lap.width, lap.inner, lap.outer), MATE, SIDES);
  const [from, to] = [Math.max(lap.inner - PAST, 0), lap.outer + PAST];
  const run = withMates(rectangle(from, -lap.width / 2, to, lap.width / 2), MATE, SIDES);
  const rim = withoutMates(part.region); // where a pocket ends at a seam it is open
  const half = Math.asin(lap.width / 2 / lap.inner);
  const pockets = lap.at.flatMap((angle): Pocket[] => {
    const strip = moveOutline(whole, turning(Math.PI / 2 + angle));
    const beyond = moveOutline(run, turning(Math.PI / 2 + angle));
    if (Math.abs(angle) + half <= lap.sweep / 2) return [pocket(face, lap.depth, solid(strip), beyond)];
    return intersection([solid(strip)], [rim]).map(area => pocket(face, lap.depth, area, beyond));
  });
  return { ...part, features: [...part.features, ...pockets] };
}

/** A spoke with the pocket for the rim: walls across it follow the rim's two arcs, half the clearance off each. */
export function lapSpoke(part: Part, lap: SpokeLap): Part {
  const inner = lap.inner - lap.clearance / 2;
  const outer = lap.outer + lap.clearance / 2;
  const reach = Math.min(1.4, Math.asin(Math.min(1, (lap.width / 2 + PAST) / inner)));
  const area = solid(withMates(stripAcrossRing(lap.width, inner, outer), MATE, [1, 3]));
  const beyond = withMates(annularSector(inner, outer, -reach, 2 * reach), MATE, [0, 2]);
  return { ...part, features: [...part.features, pocket('back', lap.depth, area, beyond)] };
}

/** The two pieces left of a spoke along +x in a layer where the rim runs through it, half the clearance off its arcs: the inner one, and
 * the handle. */
export function splitSpoke(
  whole: Part,
  lap: Pick<SpokeLap, 'inner' | 'outer' | 'clearance'>,
): [inner: Part, handle: Part] {
  const c = lap.clearance / 2;
  const tagged = (outline: Outline): Outline => withMates(outline, MATE, [0, 1]);
  const rim: Region = {
    outer: tagged(circle(lap.outer + c)),
    openings: [reverse(tagged(circle(lap.inner - c)))],
  };
  const [inner, handle] = difference([whole.region], [rim])
    .slice()
    .sort((a, b) => bounds(a.outer).minX - bounds(b.outer).minX);
  const named = (region: Region, id: string, name: string): Part => ({ ...whole, region, id, name });
  return [named(inner!, 'spoke-inner', 'Spoke, inner piece'), named(handle!, 'spoke-handle', 'Spoke, handle piece')];
}
