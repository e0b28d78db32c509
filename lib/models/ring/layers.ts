import type { Face } from '../../parts/part.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Crossing, RingOptions } from '../ring-options.js';

/** Within this a layer's share of a crossing counts as none or all of it: layers are stacked by multiplication, which rounds. */
const SAME_HEIGHT: Mm = 1e-6;

/** Something that crosses a layer: all of it, a pocket from one face, or a hollow inside it, which no cutter can make. */
export interface LayerCut {
  readonly at: readonly Radians[];
  readonly width: Mm;
  readonly depth: Mm;
  readonly from: Face | 'through' | 'inside';
}

/** A layer of a ring; heights over the ring's back, mm. */
export interface RingLayer {
  readonly index: number;
  readonly z: Mm;
  readonly thickness: Mm;
  readonly cuts: readonly LayerCut[];
  /** whether a crossing cuts it through, so that it falls into loose felloes without seams */
  readonly loose: boolean;
}

/** Layers a ring is built of: what the options say, or by laser what the thickness takes (a fraction where it does not come out). */
export const layerCount = (o: RingOptions): number =>
  o.layers ?? (o.method === 'laser' && o.thickness !== undefined ? o.thickness / o.stock.thickness : 1);

/** Thickness of all layers. */
export const ringThickness = (o: RingOptions): Mm => o.thickness ?? o.stock.thickness * layerCount(o);

function cutOf(crossing: Crossing, z: Mm, thickness: Mm): LayerCut[] {
  const low = Math.max(crossing.low - z, 0);
  const high = Math.min(crossing.high - z, thickness);
  if (high - low < SAME_HEIGHT) return [];
  const back = low < SAME_HEIGHT;
  const front = high > thickness - SAME_HEIGHT;
  const from = back && front ? 'through' : front ? 'front' : back ? 'back' : 'inside';
  const depth = from === 'through' ? thickness : high - low;
  return [{ at: crossing.at, width: crossing.width, depth, from }];
}

/** The layers of a ring, back to front, each with what its crossings take of it. */
export function ringLayers(o: RingOptions): RingLayer[] {
  const count = Math.max(1, Math.round(layerCount(o)));
  const thickness = ringThickness(o) / count;
  return Array.from({ length: count }, (_, index) => {
    const z = index * thickness;
    const cuts = (o.crossings ?? []).flatMap(c => cutOf(c, z, thickness));
    return { index, z, thickness, cuts, loose: cuts.some(c => c.from === 'through') };
  });
}

/** What slots that end inside the ring take of a layer. */
export const slotsOf = (o: RingOptions, layer: RingLayer): LayerCut[] =>
  (o.slots ?? []).flatMap(slot => cutOf(slot, layer.z, layer.thickness));
