import type { Mm, Radians } from '../../units/length.js';
import { type Arc, middleOf } from '../registration.js';
import { layerSeams, ringOfSeams, wrap } from '../seams.js';
import { cutThrough, rimSlabs, type Slab } from './layers.js';
import type { HelmSizes } from './sizes.js';

// Where spokes, seams and pieces lie round the wheel; angles from the first spoke, which points up once the wheel is assembled.

const TURN = 2 * Math.PI;

/** Angles of the spokes' centre lines, the first at 0. */
export const spokeAngles = (s: HelmSizes): Radians[] => ringOfSeams(s.spokes, 0);

/** Width of a lap in the rim, wall to wall. */
export const lapWidth = (s: HelmSizes): Mm => s.width + s.fit.lap;

/** Angle from a spoke's centre line to its lap's wall, at a radius. */
export const lapHalf = (s: HelmSizes, radius: Mm): Radians => Math.asin(lapWidth(s) / 2 / radius);

/** Seam angles of every layer that has seams, back to front; a layer the laps cut through has none. */
export function seamsByLayer(s: HelmSizes): Radians[][] {
  const seamed = rimSlabs(s).filter(slab => !cutThrough(slab)).length;
  return layerSeams(seamed, s.felloes, s.spokes, s.seam.first).map(first => ringOfSeams(s.felloes, first));
}

/** A piece of one layer of the rim: the stretch it covers (from spoke to spoke where the laps cut its layer through), and its slab. */
export interface RimPiece extends Arc {
  readonly slab: Slab;
}

/** Every piece of the rim, layer by layer, back to front. */
export function rimPieces(s: HelmSizes): RimPiece[] {
  const seams = seamsByLayer(s);
  let seamed = 0;
  return rimSlabs(s).flatMap(slab => {
    const cuts = cutThrough(slab) ? spokeAngles(s) : seams[seamed++]!;
    return cuts.map(from => ({ from, sweep: TURN / cuts.length, slab }));
  });
}

/** An angle seen from another, -pi to pi. */
export const relative = (angle: Radians, from: Radians): Radians => wrap(angle - from + Math.PI) - Math.PI;

/** Angles relative to a piece's middle, those only that lie on it or within a margin of its ends. */
export const seenFrom = (piece: Arc, angles: readonly Radians[], margin: Radians): Radians[] =>
  angles
    .map(a => relative(a, middleOf(piece)))
    .filter(a => Math.abs(a) < piece.sweep / 2 + margin)
    .sort((a, b) => a - b);

/** Largest radius of a routed edge on the wheel; 0 for none. */
export const largestBit = (s: HelmSizes): Mm =>
  Math.max(0, ...[s.edges.rim, s.edges.trim, s.edges.hub].map(e => e?.radius ?? 0));
