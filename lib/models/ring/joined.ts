import type { Finding } from '../../findings/finding.js';
import { butt } from '../../joints/butt.js';
import type { Seamed, SeamJoint, SeamLap, SeamOptions, SeamSite } from '../../joints/seam-joint.js';
import { seamJoints } from '../../joints/seam-joints.js';
import { felloe } from '../../parts/felloe.js';
import type { Part } from '../../parts/part.js';
import { traitsOf } from '../../stock/traits.js';
import type { Radians } from '../../units/length.js';
import type { RingOptions } from '../ring-options.js';
import { relative } from '../seams.js';
import { type RingLayer, slotsOf } from './layers.js';
import { pieceSweep, type RingLayout, type RingPiece } from './layout.js';

/** Clearance between fingers, and round a key, where the plan does not say: goes together by hand with glue; common practice, no source.
 * Faces that are only pressed on each other (butt, biscuit, dowel, scarf) have none. */
export const SEAM_FIT = 0.1;

/** Options of a plain felloe of a ring. */
export const felloeOptions = (o: RingOptions, thickness: number) => ({
  outer: o.outer,
  inner: o.inner,
  thickness,
  stock: o.stock.name,
  grained: o.stock.kind === 'board',
  ...(o.kind && { kind: o.kind }),
});

/** Pockets and slots of a layer nearest to any of its seams. */
function lapsOf(o: RingOptions, layer: RingLayer, seams: readonly Radians[]): SeamLap[] {
  const pockets = layer.cuts.filter(c => c.from !== 'through');
  return [...pockets, ...slotsOf(o, layer)].flatMap(({ at, width, depth, from }) => {
    if (from === 'inside' || seams.length === 0 || at.length === 0) return [];
    const apart = Math.min(...seams.flatMap(seam => at.map(a => Math.abs(relative(a, seam)))));
    return [{ apart, width, depth, face: from === 'back' ? 'back' : 'front' }];
  });
}

const ALL = { left: true, right: true };

function siteOf(
  o: RingOptions,
  layout: RingLayout,
  layer: RingLayer,
  sweep: Radians,
  ends: SeamSite['ends'],
): SeamSite {
  return {
    inner: o.inner,
    outer: o.outer,
    sweep,
    whole: pieceSweep(o),
    ends,
    thickness: layer.thickness,
    clearance: o.clearance ?? SEAM_FIT,
    method: o.method,
    layers: layout.layers.length,
    seamed: layout.layers.filter(l => !l.loose).length,
    edge: o.edge ?? 0,
    ...(o.room !== undefined && { room: o.room }),
    laps: lapsOf(o, layer, layout.seams[layer.index]!),
    grained: o.stock.kind === 'board',
    traits: traitsOf(o.stock),
    field: `${o.field}.seam`,
  };
}

/** The layer a key goes into: the foremost one with seams, or the rearmost. */
function keyedLayer(o: RingOptions, layout: RingLayout): RingLayer | undefined {
  const seamed = layout.layers.filter(l => !l.loose);
  return o.seam?.face === 'back' ? seamed[0] : seamed.at(-1);
}

/** How a layer's felloes are joined: a key goes into one layer alone, the others are butted. */
function jointOf(o: RingOptions, layout: RingLayout, layer: RingLayer): SeamJoint {
  const name = o.seam?.joint ?? 'butt';
  return name === 'key' && keyedLayer(o, layout) !== layer ? butt : seamJoints[name];
}

const seamOptions = (o: RingOptions): SeamOptions => o.seam ?? {};

/** One whole felloe of a layer with its seams, for what the seams need and say. */
export interface LayerSeams {
  readonly layer: RingLayer;
  readonly seams: readonly Radians[];
  readonly joined: Seamed;
}

/** The seams of every layer that has any. */
export function layerSeamed(o: RingOptions, layout: RingLayout): LayerSeams[] {
  return layout.layers.flatMap((layer, i): LayerSeams[] => {
    const seams = layout.seams[i]!;
    if (seams.length === 0) return [];
    const sweep = pieceSweep(o);
    const plain = felloe({ ...felloeOptions(o, layer.thickness), sweep });
    const site = siteOf(o, layout, layer, sweep, ALL);
    return [{ layer, seams, joined: jointOf(o, layout, layer)(plain, site, seamOptions(o)) }];
  });
}

/** How far the seams' joint reaches into the felloes, mm. */
export const ringReach = (o: RingOptions, layout: RingLayout): number =>
  Math.max(0, ...layerSeamed(o, layout).map(s => s.joined.reach));

/** A felloe with its seams: butted where the layer's seams cannot be made as the plan says. */
export function joinPiece(
  o: RingOptions,
  layout: RingLayout,
  piece: RingPiece,
  plain: Part,
  found: readonly Finding[],
): Part {
  const stopped = found.some(f => f.level === 'stop');
  const site = siteOf(o, layout, piece.layer, piece.sweep, piece.seams);
  const joint = stopped ? butt : jointOf(o, layout, piece.layer);
  return joint(plain, site, seamOptions(o)).part;
}
