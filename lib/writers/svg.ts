import type { Drawing, Layer, TextLine } from '../drawings/drawing.js';
import { drawingExtent } from '../drawings/extent.js';
import { hexColour, layerColour } from '../drawings/layers.js';
import type { Box } from '../geometry/measure.js';
import { asCircle, type Outline } from '../geometry/outline.js';
import { letteringWidth } from '../parts/lettering/lettering.js';
import { toDegrees, toUnit, type Unit } from '../units/length.js';
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

/** Height of a capital over the size of the letters in most sans serif fonts; common practice, no source. */
const CAPITAL = 0.72;

/** A text squeezed or stretched to the width of our own letters, whatever font its reader has. */
function textElement({ text, at, height, turn }: TextLine, colour: string): string {
  const [x, y] = [coordinate(at.x), coordinate(-at.y)];
  const turned = turn === 0 ? '' : ` transform="rotate(${coordinate(-toDegrees(turn))} ${x} ${y})"`;
  const size = `font-size="${coordinate(height / CAPITAL)}" textLength="${coordinate(letteringWidth(text, height))}"`;
  const font = `font-family="sans-serif" ${size} lengthAdjust="spacingAndGlyphs" text-anchor="middle"`;
  return `<text x="${x}" y="${coordinate(height / 2 - at.y)}"${turned} ${font} fill="${colour}" stroke="none">${xmlText(text)}</text>`;
}

function layerGroup(layer: Layer): string {
  const colour = hexColour(layerColour(layer.name).rgb);
  const elements = [
    ...layer.closed.map(closedElement),
    ...layer.open.map(line => `<path d="${pathData(line, false)}"/>`),
    ...(layer.texts ?? []).map(text => textElement(text, colour)),
  ];
  const head = `<g id="${layer.name}" fill="none" stroke="${colour}" stroke-width="${HAIRLINE}">`;
  return [head, ...elements, '</g>'].join('\n');
}

/** Layers that come again joined to one, where they come first. */
function joined(layers: readonly Layer[]): Layer[] {
  const names = [...new Set(layers.map(layer => layer.name))];
  if (names.length === layers.length) return [...layers];
  return names.map(name => {
    const runs = layers.filter(layer => layer.name === name);
    const texts = runs.flatMap(r => r.texts ?? []);
    return { name, closed: runs.flatMap(r => r.closed), open: runs.flatMap(r => r.open), texts };
  });
}

/** The opening tag: its size in mm or inches, one unit of the view box a millimetre; y turned over, as it points down in SVG. */
export function svgStart(extent: Box, units: Unit = 'mm'): string {
  const [width, height] = [extent.maxX - extent.minX, extent.maxY - extent.minY];
  const size = (length: number): string => `${coordinate(toUnit(length, units))}${units}`;
  const box = [extent.minX, -extent.maxY, width, height].map(coordinate).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size(width)}" height="${size(height)}" viewBox="${box}">`;
}

export interface SvgWriteOptions {
  /** of the size of the page; mm unless given. One unit of the view box is 1 mm either way */
  readonly units?: Unit;
}

/** A drawing as an SVG file: one group a layer, outlines as paths with true arcs, full circles as circles, no fill.
 * A point (x, y) of the drawing stands at (x, -y); the page is the drawing's extent. Labels asked for as text are text elements.
 * @throws Unusable for a number that is not finite, a title or name that cannot stand in a file, a line of fewer than two vertices
 * Source: SVG 2, "Units", "Paths". */
export function writeSvg(drawing: Drawing, { units = 'mm' }: SvgWriteOptions = {}): string {
  checkDrawing(drawing);
  const start = svgStart(drawingExtent(drawing), units);
  const title = `<title>${xmlText(drawing.title)}</title>`;
  return `${[start, title, ...joined(drawing.layers).map(layerGroup), '</svg>'].join('\n')}\n`;
}
