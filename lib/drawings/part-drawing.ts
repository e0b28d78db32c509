import { MIRROR, type Motion, movePoint, movePolyline, moveRegion, STILL } from '../geometry/motion.js';
import { circle, type Polyline, type Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { partFaces } from '../parts/faces.js';
import { letter } from '../parts/lettering/lettering.js';
import type { Face, Feature, Label, Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Drawing, LabelStyle } from './drawing.js';
import { type Entry, layerList } from './layer-list.js';
import { drillLayer, pocketLayer } from './layers.js';
import { partPins } from './part-pins.js';

/** From a part's frame to what is seen looking at a face: nothing, or mirrored (x to -x). */
export const faceView = (face: Face): Motion => (face === 'front' ? STILL : MIRROR);

/** A label as it reads on a face: placed by the view, never mirrored itself. */
const seenLabel = ({ text, at, height, turn }: Label, face: Face) => ({
  text,
  at: movePoint(at, faceView(face)),
  height,
  turn: face === 'front' ? turn : -turn,
});

/** A label's strokes as they read on a face. */
export function labelStrokes(label: Label, face: Face): Polyline[] {
  const { text, at, height, turn } = seenLabel(label, face);
  return letter(text, at, height, turn);
}

const labelEntry = (label: Label, face: Face, style: LabelStyle): Entry =>
  style === 'lines'
    ? { layer: 'LABEL', open: labelStrokes(label, face) }
    : { layer: 'LABEL', texts: [seenLabel(label, face)] };

const outlines = (region: Region): readonly Region['outer'][] => [region.outer, ...region.openings];

const hole = (at: Point, diameter: Mm): Entry => ({
  layer: drillLayer(diameter),
  closed: [circle(diameter / 2, at)],
});

/** A feature's lines on one face; none if it is made from the other. @param labels none: not lettered */
function featureEntry(feature: Feature, face: Face, labels: LabelStyle | undefined): Entry | undefined {
  const view = faceView(face);
  switch (feature.kind) {
    case 'pocket':
      if (feature.face !== face) return undefined;
      return { layer: pocketLayer(feature.depth), closed: outlines(moveRegion(feature.area, view)) };
    case 'drill':
      if (feature.from !== face && feature.from !== 'through') return undefined;
      return hole(movePoint(feature.at, view), feature.diameter);
    case 'score':
      return feature.face === face ? { layer: 'SCORE', open: [movePolyline(feature.line, view)] } : undefined;
    case 'label':
      return labels && labelEntry(feature, face, labels);
  }
}

/** A part at its finished size as seen looking at a face, in the part's frame (mirrored, x to -x, for the back): the outline and
 * openings on either face, through holes on either, pockets, blind holes and marks of that face, lettering on the first face. One worked
 * on both faces has two holes beside it on either, for the pins it is turned over on. */
export function partDrawing(part: Part, face: Face, labels: LabelStyle = 'lines'): Drawing {
  const { outer, openings } = moveRegion(part.region, faceView(face));
  const lettered = partFaces(part).first === face;
  const features = part.features.flatMap(f => featureEntry(f, face, lettered ? labels : undefined) ?? []);
  const pins = partPins(part).map(({ at, diameter }) => hole(movePoint(at, faceView(face)), diameter));
  const layers = layerList([
    { layer: 'OUTSIDE', closed: [outer] },
    { layer: 'INSIDE', closed: openings },
    ...features,
    ...pins,
  ]);
  return { title: face === 'front' ? part.name : `${part.name}, back`, layers };
}

/** The second side of a turned piece: its outline along the length and across the thickness, and its marks.
 * Without a line for a part that has no shape of its own there. */
export function sideDrawing(part: Part): Drawing {
  const { side } = part;
  const layers = side && [
    { layer: 'OUTSIDE', closed: [side.outline] },
    { layer: 'SCORE', open: side.marks },
  ];
  return { title: `${part.name}, side`, layers: layerList(layers ?? []) };
}

/** An end that is bored from there: its outline and the holes. Without a line for a part that has none. */
export function endDrawing(part: Part): Drawing {
  const { end } = part;
  const holes = (end?.holes ?? []).map(({ at, diameter }) => hole(at, diameter));
  const layers = end ? [{ layer: 'OUTSIDE', closed: [end.outline] }, ...holes] : [];
  return { title: `${part.name}, end`, layers: layerList(layers) };
}
