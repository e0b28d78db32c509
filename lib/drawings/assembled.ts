import type { Box } from '../geometry/measure.js';
import type { Model } from '../models/model.js';
import type { Mm } from '../units/length.js';
import { caption, type LegendItem, legend, legendDepth, line } from './caption.js';
import { bothUnits, dimension, extensions, overCircle } from './dimension.js';
import { frontedPieces, frontView, legendItems, mannerOf } from './front-view.js';
import { type Overall, overall } from './overall.js';
import type { Picture, PictureShape } from './picture.js';
import { placedPieces } from './placed.js';
import { isDeep, sideView } from './side-view.js';
import { modelSlabs, type SlabsOf } from './slabs.js';
import { PAPER, woodTones } from './wood.js';

/** Where things lie on the picture. Lengths mm of the real thing; `unit` is half the larger of the prop's width and height. */
interface Layout extends Overall {
  readonly unit: Mm;
  /** left edge of the side view; without it there is none */
  readonly side?: Mm;
  /** what all of it reaches from left to right, and its middle */
  readonly left: Mm;
  readonly right: Mm;
  readonly middle: Mm;
}

/** Narrow props keep room for their title. */
const LEAST_HALF = 1;

function layoutOf(size: Overall, deep: boolean): Layout {
  const { box, low, high } = size;
  const unit = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2;
  const side = box.maxX + 0.3 * unit;
  const end = deep ? side + (high - low) : box.maxX;
  const middle = (box.minX + end) / 2;
  const half = Math.max((end - box.minX) / 2, LEAST_HALF * unit);
  return { ...size, unit, middle, left: middle - half, right: middle + half, ...(deep && { side }) };
}

/** Height of a dimension's letters, as a share of the unit. */
const LETTERS = 0.042;

/** Overall sizes: a round prop's diameter, else width and height; the depth in words, or under the side view. */
function dimensions(l: Layout): PictureShape[] {
  const { box, unit, radius } = l;
  const height = unit * LETTERS;
  const depth = l.high - l.low;
  const y = box.minY - 0.1 * unit;
  const across = radius === undefined ? bothUnits(box.maxX - box.minX) : `Ø ${bothUnits(2 * radius)}`;
  const text = l.side === undefined ? `${across}, ${bothUnits(depth)} deep` : across;
  const level = { text, from: { x: box.minX, y }, to: { x: box.maxX, y }, height };
  return [
    ...dimension({ ...level, most: Math.max(box.maxX - box.minX, 1.1 * unit) }),
    ...(radius === undefined ? upright(l, height) : []),
    ...(l.side === undefined ? [] : sideDepth(l.side, depth, y, height, unit)),
  ];
}

/** Faint lines behind the prop: from it down to its dimension, and the circle a round one is measured over. */
function extent({ box, radius, unit }: Layout): PictureShape[] {
  const height = unit * LETTERS;
  const bottom = box.minY - 0.1 * unit - height / 2;
  const top = (radius === undefined ? box.minY : 0) - height / 2;
  const lines = [box.minX, box.maxX].map(x => line({ x, y: top }, { x, y: bottom }));
  return [extensions(lines, height), ...(radius === undefined ? [] : [overCircle(radius, height)])];
}

function upright({ box, unit }: Layout, height: Mm): PictureShape[] {
  const x = box.minX - 0.1 * unit;
  const size = box.maxY - box.minY;
  const text = bothUnits(size);
  return dimension({ text, from: { x, y: box.minY }, to: { x, y: box.maxY }, height, most: Math.max(size, unit) });
}

function sideDepth(x: Mm, depth: Mm, y: Mm, height: Mm, unit: Mm): PictureShape[] {
  const [from, to] = [
    { x, y },
    { x: x + depth, y },
  ];
  return dimension({ text: bothUnits(depth), from, to, height, most: depth + 0.5 * unit });
}

function legendRows(l: Layout, items: readonly LegendItem[]): { readonly shapes: PictureShape[]; readonly depth: Mm } {
  const most = l.right - l.left + 0.3 * l.unit;
  const height = l.unit * 0.034;
  const shapes = legend(items, { x: l.middle, y: l.box.minY - 0.37 * l.unit }, height, most);
  return { shapes, depth: legendDepth(items, height, most) };
}

/** The finished prop from the front: real outlines with true arcs, what lies in front over what lies behind, hidden seams and laps
 * dashed, plugs and pins in, bores open; of a deep prop its right side too. Its title above; its overall size, to a 64th of an inch and a
 * tenth of a mm, and a legend below.
 * @param model of one piece or more   @param slabs of its parts, where another picture has them already
 * @returns a picture in millimetres of the real thing, wheel centre at the origin @throws GeometryFailure */
export function assembledPicture(model: Model, slabs: SlabsOf = modelSlabs(model)): Picture {
  const pieces = frontedPieces(placedPieces(model), slabs);
  const size = overall(pieces);
  const scale = layoutOf(size, false).unit;
  const layout = layoutOf(size, isDeep(pieces, size.high - size.low, scale));
  const { unit, side, box: prop, middle } = layout;
  const manner = mannerOf(woodTones(model.parts), unit);
  const words = legendRows(layout, legendItems(pieces, manner));
  const box: Box = {
    minX: layout.left - 0.25 * unit,
    minY: prop.minY - 0.436 * unit - words.depth,
    maxX: layout.right + 0.25 * unit,
    maxY: prop.maxY + 0.34 * unit,
  };
  const most = box.maxX - box.minX - 0.3 * unit;
  return {
    title: model.title,
    box,
    background: PAPER,
    groups: [
      { name: 'extent', shapes: extent(layout) },
      ...frontView(pieces, manner),
      ...(side === undefined ? [] : [sideView(pieces, slabs, manner, { x: side + size.high, y: 0 })]),
      { name: 'legend', shapes: words.shapes },
      { name: 'dimension', shapes: dimensions(layout) },
      { name: 'title', shapes: [caption(model.title, { x: middle, y: prop.maxY + 0.18 * unit }, unit * 0.07, most)] },
    ],
  };
}
