import { type Box, boundsOfAll } from '../geometry/measure.js';
import { polygon } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Model } from '../models/model.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { caption, strokes } from './caption.js';
import { type ExplodedLayer, explodedLayers, isCovered } from './exploded-layers.js';
import { kindWord } from './kind-words.js';
import { anchors, type Label, leaders } from './leaders.js';
import { letteringWidth } from './lettering.js';
import type { Picture, PictureShape } from './picture.js';
import { placedPieces } from './placed.js';
import { modelSlabs, type SlabsOf } from './slabs.js';
import { type Solid, solidOf } from './solid.js';
import { solidShapes } from './solid-shapes.js';
import { benchView, seenAt, seenPiece, type View } from './view.js';
import { FAINT, PAPER, type Tones, woodTones } from './wood.js';

/** From a quarter above the bench, turned a little so that square props show two sides. */
const ELEVATION = (32 * Math.PI) / 180;
const TURN = (20 * Math.PI) / 180;
const VIEW: View = benchView(TURN, ELEVATION);
const [ALONG, FLATTENED] = [Math.cos(ELEVATION), Math.sin(ELEVATION)];

/** Room between layers as they are seen, as a share of half the sum of their heights there. */
const BETWEEN = 0.62;
/** Arcs stray by this share of the picture's half size. */
const STRAY = 1 / 1000;

/** How far in front of a layer that covers it a layer's middle comes to lie, as a share of the covering one's height on the picture. */
const CLEAR = 0.95;

/** How far each layer is lifted: clear of the one before, so far that both are seen, and off those it would hide. */
function lifts(layers: readonly ExplodedLayer[]): Mm[] {
  const out: Mm[] = [];
  const upright = (height: Mm): Mm => (height * FLATTENED) / ALONG;
  for (const [i, layer] of layers.entries()) {
    const before = layers[i - 1];
    if (before) {
      const clear = Math.max(0, before.high - layer.low);
      const beside = out[i - 1]! + clear + upright((BETWEEN * (before.reach + layer.reach)) / 2);
      const covered = layers.slice(0, i).flatMap((under, j) => (isCovered(under, layer) ? [out[j]!] : []));
      out.push(Math.max(beside, ...covered.map(lift => lift + clear + upright(CLEAR * layer.reach))));
    } else out.push(0);
  }
  return out;
}

/** How near to the one who looks a point of the bench is. */
const nearness = (p: Point): Mm => p.x * VIEW.towards.x + p.y * VIEW.towards.y;

interface Scene {
  readonly layers: readonly ExplodedLayer[];
  readonly lifts: readonly Mm[];
  readonly solids: ReadonlyMap<Part, Solid>;
  readonly tones: Tones;
  readonly unit: Mm;
}

/** Pieces of a layer from the farthest; they lie beside each other. */
function layerShapes({ layers, lifts, solids, tones, unit }: Scene, index: number): PictureShape[] {
  const ordered = [...layers[index]!.pieces].sort((a, b) => nearness(a.middle) - nearness(b.middle));
  return ordered.flatMap(({ placed: { piece, part }, by }) => {
    const seen = seenPiece(VIEW, piece, { ...by, z: lifts[index]! });
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

/** The axis the layers are moved along, from the first to the last. */
function axis(scene: Scene): PictureShape {
  const spot = (i: number): Point => {
    const layer = scene.layers.at(i)!;
    return seenAt(VIEW, { ...layer.middle, z: layer.low + scene.lifts.at(i)! });
  };
  const { unit } = scene;
  const dashes = [unit / 15, unit / 60, unit / 120, unit / 60];
  return strokes([polygon([spot(0), spot(-1)])], { stroke: FAINT, width: unit / 400, dashes });
}

const labelText = ({ pieces }: ExplodedLayer): string => `${pieces.length} x ${kindWord(pieces[0]!.placed.part.kind)}`;

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

/** A prop taken apart along its axis, lying on its back with its front up: an orthographic axonometric view from 32 degrees above the
 * bench, the prop turned by 20 degrees (see benchView). Pieces of one kind at one height are a layer; layers are lifted off each other in
 * the order they lie in, and pieces of a layer are moved apart. What lies in front hides what lies behind: layer by layer from the rear,
 * in a layer from the farthest piece. Every layer is named by a leader. Arcs are polygons here.
 * @param model of one piece or more   @param slabs of its parts, where another picture has them already
 * @returns a picture in millimetres of the real thing as seen @throws GeometryFailure */
export function explodedPicture(model: Model, slabs: SlabsOf = modelSlabs(model)): Picture {
  const layers = explodedLayers(placedPieces(model));
  const unit = Math.max(...layers.map(l => l.reach));
  const solids = new Map([...slabs].map(([part, of]) => [part, solidOf(part, of, unit * STRAY)]));
  const scene: Scene = { layers, lifts: lifts(layers), solids, tones: woodTones(model.parts), unit };
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
