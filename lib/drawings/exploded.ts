import { type Box, boundsOfAll } from '../geometry/measure.js';
import { polygon } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Model } from '../models/model.js';
import { letteringWidth } from '../parts/lettering/lettering.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { caption, strokes } from './caption.js';
import { type ExplodedLayer, explodedLayers } from './exploded-layers.js';
import { lyingPose, type Pose, standingPose } from './exploded-pose.js';
import { partWord } from './kind-words.js';
import { anchors, type Label, leaders } from './leaders.js';
import type { Picture, PictureShape } from './picture.js';
import { placedPieces } from './placed.js';
import { modelSlabs, type SlabsOf } from './slabs.js';
import { type Solid, solidOf } from './solid.js';
import { solidShapes } from './solid-shapes.js';
import { seenAt, seenPiece } from './view.js';
import { FAINT, PAPER, type Tones, woodTones } from './wood.js';

/** Arcs stray by this share of the picture's half size. */
const STRAY = 1 / 1000;

interface Scene {
  readonly layers: readonly ExplodedLayer[];
  readonly pose: Pose;
  readonly solids: ReadonlyMap<Part, Solid>;
  readonly tones: Tones;
  readonly unit: Mm;
}

/** Pieces of a layer from the farthest; they lie beside each other. */
function layerShapes({ layers, pose, solids, tones, unit }: Scene, index: number): PictureShape[] {
  const { view, shifts } = pose;
  const shift = shifts[index]!;
  const nearness = (p: Point): Mm => p.x * view.towards.x + p.y * view.towards.y;
  const ordered = [...layers[index]!.pieces].sort((a, b) => nearness(a.middle) - nearness(b.middle));
  return ordered.flatMap(({ placed: { piece, part }, by }) => {
    const seen = seenPiece(view, piece, { x: by.x + shift.x, y: by.y + shift.y, z: shift.z });
    return solidShapes(solids.get(part) ?? [], seen, { tone: tones(part), line: unit / 450 });
  });
}

/** The box round all corners. */
function cornersBox(shapes: readonly PictureShape[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const s of shapes)
    for (const line of [...s.closed, ...s.open])
      for (const { x, y } of line) {
        minX = Math.min(minX, x);
        minY = Math.min(minY, y);
        maxX = Math.max(maxX, x);
        maxY = Math.max(maxY, y);
      }
  return { minX, minY, maxX, maxY };
}

/** The axis the layers are moved along. */
function axis({ pose, unit }: Scene): PictureShape {
  const dashes = [unit / 15, unit / 60, unit / 120, unit / 60];
  const ends = pose.axis.map(p => seenAt(pose.view, p));
  return strokes([polygon(ends)], { stroke: FAINT, width: unit / 400, dashes });
}

const labelText = ({ pieces }: ExplodedLayer): string => `${pieces.length} x ${partWord(pieces[0]!.placed.part)}`;

/** The layers' names in a column on the right, and the title above it all; both as high as the drawing is large.
 * @param extent of what is drawn */
function lettered(title: string, names: readonly Label[], extent: Box): Pick<Picture, 'box' | 'groups'> {
  const height = 0.02 * (extent.maxX - extent.minX + 0.3 * (extent.maxY - extent.minY));
  const x = extent.maxX + 6 * height;
  const right = x + Math.max(...names.map(l => letteringWidth(l.text, height)));
  const named = leaders(names, x, height);
  const { minY, maxY } = boundsOfAll([extent, cornersBox(named)]);
  const at = { x: (extent.minX + right) / 2, y: maxY + 3.2 * height };
  return {
    box: {
      minX: extent.minX - 2.5 * height,
      minY: minY - 2.5 * height,
      maxX: right + 2.5 * height,
      maxY: maxY + 5.6 * height,
    },
    groups: [
      { name: 'labels', shapes: named },
      { name: 'title', shapes: [caption(title, at, 1.6 * height, right - extent.minX)] },
    ],
  };
}

/** A prop taken apart along its axis, lying on its back with its front up (an orthographic axonometric view from 32 degrees above the
 * bench, the prop turned by 20 degrees, see benchView) or, where it stands by itself, on its feet (see standingView). Pieces of one kind at
 * one height are a layer; layers are moved off each other in the order they lie in, and pieces of a layer are moved apart. What lies in front hides what lies behind: layer by layer from the rear,
 * in a layer from the farthest piece. Every layer is named by a leader. Arcs are polygons here.
 * @param model of one piece or more   @param slabs of its parts, where another picture has them already
 * @returns a picture in millimetres of the real thing as seen @throws GeometryFailure */
export function explodedPicture(model: Model, slabs: SlabsOf = modelSlabs(model)): Picture {
  const layers = explodedLayers(placedPieces(model));
  const unit = Math.max(...layers.map(l => l.reach));
  const solids = new Map([...slabs].map(([part, of]) => [part, solidOf(part, of, unit * STRAY)]));
  const pose = model.upright ? standingPose(layers) : lyingPose(layers);
  const scene: Scene = { layers, pose, solids, tones: woodTones(model.parts), unit };
  const drawn = layers.map((_, i) => layerShapes(scene, i));
  const spots = anchors(drawn);
  const names = layers.map((layer, i) => ({ text: labelText(layer), at: spots[i]! }));
  const { box, groups } = lettered(model.title, names, cornersBox(drawn.flat()));
  return {
    title: `${model.title}, exploded`,
    box,
    background: PAPER,
    groups: [
      { name: 'axis', shapes: [axis(scene)] },
      ...drawn.map((shapes, i) => ({ name: `layer-${i + 1}`, shapes })),
      ...groups,
    ],
  };
}
