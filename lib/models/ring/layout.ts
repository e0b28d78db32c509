import type { Radians } from '../../units/length.js';
import { type Arc, middleOf } from '../registration.js';
import type { RingOptions } from '../ring-options.js';
import { relative, ringOfSeams, wrap } from '../seams.js';
import { type RingLayer, ringLayers } from './layers.js';
import { layerOffsets } from './stagger.js';

const TURN = 2 * Math.PI;
/** Angles nearer than this are one. */
const SAME: Radians = 1e-9;

/** A felloe of one layer, and the width of the crossing along each of its ends: 0 at a seam or an arc's end. */
export interface RingPiece extends Arc {
  readonly layer: RingLayer;
  /** ends that meet a felloe across a seam */
  readonly seams: { readonly left: boolean; readonly right: boolean };
  readonly walls: { readonly left: number; readonly right: number };
}

/** Where everything lies round a ring; angles in the ring, from +y. */
export interface RingLayout {
  readonly layers: readonly RingLayer[];
  /** seams of each layer, back to front; none in a loose one */
  readonly seams: readonly (readonly Radians[])[];
  readonly pieces: readonly RingPiece[];
}

/** The stretch the ring covers: all round from any angle, or the arc. */
export const extentOf = (o: RingOptions): Arc => o.arc ?? { from: 0, sweep: TURN };

/** Angle of one felloe. */
export const pieceSweep = (o: RingOptions): Radians => extentOf(o).sweep / o.pieces;

/** Angle of the first seam of the lowest layer. */
const firstSeam = (o: RingOptions): Radians => o.first ?? (o.arc ? o.arc.from + pieceSweep(o) : pieceSweep(o) / 2);

/** Whether an angle lies inside an arc, off its ends. */
const within = (arc: Arc, angle: Radians): boolean => {
  const along = wrap(angle - arc.from);
  return along > SAME && along < arc.sweep - SAME;
};

/** Seams of a layer: a felloe apart, all round, or those that fall inside the arc. */
function seamsAt(o: RingOptions, first: Radians): Radians[] {
  if (!o.arc) return ringOfSeams(o.pieces, first);
  const { arc } = o;
  const step = pieceSweep(o);
  const start = wrap(first - arc.from) % step;
  // along the arc, which may be nearly a full turn: never wrapped
  const along = Array.from({ length: o.pieces + 1 }, (_, k) => start + k * step);
  return along.filter(a => a > SAME && a < arc.sweep - SAME).map(a => arc.from + a);
}

interface Cut {
  readonly angle: Radians;
  readonly seam: boolean;
  readonly wall: number;
}

function cutsOf(o: RingOptions, layer: RingLayer, seams: readonly Radians[]): Cut[] {
  if (!layer.loose) return seams.map(angle => ({ angle, seam: true, wall: 0 }));
  return layer.cuts
    .filter(c => c.from === 'through')
    .flatMap(c => c.at.map(angle => ({ angle, seam: false, wall: c.width })))
    .filter(c => !o.arc || within(o.arc, c.angle));
}

function piecesOf(o: RingOptions, layer: RingLayer, seams: readonly Radians[]): RingPiece[] {
  const cuts = cutsOf(o, layer, seams);
  const { arc } = o;
  const piece = (a: Cut, b: Cut, sweep: Radians): RingPiece => ({
    layer,
    from: a.angle,
    sweep,
    seams: { right: a.seam, left: b.seam },
    walls: { right: a.wall, left: b.wall },
  });
  if (!arc) {
    const even = !layer.loose || layer.cuts.filter(c => c.from === 'through').length === 1;
    return cuts.map((a, i) => {
      const b = cuts[(i + 1) % cuts.length]!;
      return piece(a, b, even ? TURN / cuts.length : wrap(b.angle - a.angle));
    });
  }
  const end = (angle: Radians): Cut => ({ angle, seam: false, wall: 0 });
  const along = [...cuts].sort((a, b) => wrap(a.angle - arc.from) - wrap(b.angle - arc.from));
  const all = [end(arc.from), ...along, end(arc.from + arc.sweep)];
  return all.slice(1).map((b, i) => piece(all[i]!, b, b.angle - all[i]!.angle));
}

/** Lays out a ring: its layers, their seams, and every piece of them, back to front. */
export function ringLayout(o: RingOptions): RingLayout {
  const layers = ringLayers(o);
  const seamed = layers.filter(l => !l.loose).length;
  const offsets = layerOffsets(o, seamed, firstSeam(o), pieceSweep(o));
  let next = 0;
  const seams = layers.map(l => (l.loose ? [] : seamsAt(o, offsets[next++]!)));
  return { layers, seams, pieces: layers.flatMap((l, i) => piecesOf(o, l, seams[i]!)) };
}

/** Angles of the ring relative to a piece's middle, those only that lie on it or within a margin of its ends. */
export const seenFrom = (piece: Arc, angles: readonly Radians[], margin: Radians): Radians[] =>
  angles
    .map(a => relative(a, middleOf(piece)))
    .filter(a => Math.abs(a) < piece.sweep / 2 + margin)
    .sort((a, b) => a - b);
