import type { Drawing, Layer } from '../drawings/drawing.js';
import { drawingExtent } from '../drawings/extent.js';
import { hexColour, layerColour } from '../drawings/layers.js';
import type { Box } from '../geometry/measure.js';
import { asCircle, type Outline } from '../geometry/outline.js';
import { checkDrawing } from './check-drawing.js';
import { coordinate } from './number.js';
import { pathData } from './svg-path.js';
import { xmlText } from './text.js';

/** Width of a drawn line, mm: thin, as it is a path to follow and not a thing. */
const HAIRLINE = '0.25';

function closedElement(outline: Outline): string {
  const circle = asCircle(outline);
  if (!circle) return `<path d="${pathData(outline, true)}"/>`;
  const { center, radius } = circle;
  return `<circle cx="${coordinate(center.x)}" cy="${coordinate(-center.y)}" r="${coordinate(radius)}"/>`;
}

function layerGroup(layer: Layer): string {
  const elements = [
    ...layer.closed.map(closedElement),
    ...layer.open.map(line => `<path d="${pathData(line, false)}"/>`),
  ];
  const colour = hexColour(layerColour(layer.name).rgb);
  const head = `<g id="${layer.name}" fill="none" stroke="${colour}" stroke-width="${HAIRLINE}">`;
  return [head, ...elements, '</g>'].join('\n');
}

/** Layers that come again joined to one, where they come first. */
function joined(layers: readonly Layer[]): Layer[] {
  const names = [...new Set(layers.map(layer => layer.name))];
  if (names.length === layers.length) return [...layers];
  return names.map(name => {
    const runs = layers.filter(layer => layer.name === name);
    return { name, closed: runs.flatMap(r => r.closed), open: runs.flatMap(r => r.open) };
  });
}

/** The opening tag: size in mm, one unit of the view box a millimetre; y turned over, as it points down in SVG. */
export function svgStart(extent: Box): string {
  const width = coordinate(extent.maxX - extent.minX);
  const height = coordinate(extent.maxY - extent.minY);
  const box = `${coordinate(extent.minX)} ${coordinate(-extent.maxY)} ${width} ${height}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${box}">`;
}

/** A drawing as an SVG file: one group a layer, outlines as paths with true arcs, full circles as circles, no fill.
 * A point (x, y) of the drawing stands at (x, -y); the page is the drawing's extent.
 * @throws Unusable for a number that is not finite, a title or name that cannot stand in a file, a line of fewer than two vertices
 * Source: SVG 2, "Units", "Paths". */
export function writeSvg(drawing: Drawing): string {
  checkDrawing(drawing);
  const start = svgStart(drawingExtent(drawing));
  const title = `<title>${xmlText(drawing.title)}</title>`;
  return `${[start, title, ...joined(drawing.layers).map(layerGroup), '</svg>'].join('\n')}\n`;
}
