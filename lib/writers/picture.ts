import { hexColour } from '../drawings/layers.js';
import type { Paint, Picture, PictureGroup, PictureShape } from '../drawings/picture.js';
import { rectangle } from '../geometry/outline.js';
import { coordinate } from './number.js';
import { svgStart } from './svg.js';
import { pathData } from './svg-path.js';
import { layerName, oneLine, xmlText } from './text.js';

function attributes(paint: Paint): string {
  const { fill, stroke, width, dashes, opacity } = paint;
  const given: (readonly [string, string | undefined])[] = [
    ['fill', fill === undefined ? 'none' : hexColour(fill)],
    ['stroke', stroke === undefined ? undefined : hexColour(stroke)],
    ['stroke-width', width === undefined ? undefined : coordinate(width)],
    ['stroke-dasharray', dashes?.map(coordinate).join(' ')],
    ['opacity', opacity === undefined ? undefined : coordinate(opacity)],
  ];
  return given.flatMap(([name, value]) => (value === undefined ? [] : [` ${name}="${value}"`])).join('');
}

function shapeElement(shape: PictureShape): string {
  const runs = [...shape.closed.map(o => pathData(o, true)), ...shape.open.map(o => pathData(o, false))];
  return `<path d="${runs.join(' ')}"${attributes(shape.paint)}/>`;
}

const groupElement = (group: PictureGroup): string =>
  [
    `<g id="${layerName(group.name)}" stroke-linecap="round" stroke-linejoin="round">`,
    ...group.shapes.map(shapeElement),
    '</g>',
  ].join('\n');

/** A picture as an SVG file in true size: one group for each of its own, shapes as paths with true arcs, lettering as strokes, so that
 * it looks the same whatever fonts there are.
 * @throws Unusable for a number that is not finite, a title or name that cannot stand in a file */
export function writePicture(picture: Picture): string {
  const { box, background } = picture;
  const ground = pathData(rectangle(box.minX, box.minY, box.maxX, box.maxY), true);
  return `${[
    svgStart(box),
    `<title>${xmlText(oneLine('the title of a picture', picture.title))}</title>`,
    `<path d="${ground}" fill="${hexColour(background)}"/>`,
    ...picture.groups.map(groupElement),
    '</svg>',
  ].join('\n')}\n`;
}
