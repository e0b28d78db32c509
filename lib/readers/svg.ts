import { refuse } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { type Affine, after, IDENTITY } from './affine.js';
import { BRIDGE } from './chain.js';
import { drawingOf, type ReadDrawing } from './drawing.js';
import type { Piece } from './piece.js';
import { CURVE_TOLERANCE, pathPieces } from './svg-path.js';
import { pathDataOf } from './svg-shapes.js';
import { transformOf } from './svg-transform.js';
import { lengthOf, MM_PER_PX, numberOf, viewBoxMap } from './svg-viewport.js';
import { type Element, readXml } from './xml.js';

/** What an SVG file was found to hold. */
export interface ReadSvg extends ReadDrawing {
  /** the file does not say how large it is in the real world: 96 of its units were taken for an inch */
  readonly sizeAssumed: boolean;
}

interface Page {
  readonly byId: ReadonlyMap<string, Element>;
  readonly pieces: Piece[];
  readonly skipped: Map<string, number>;
  readonly tolerance: Mm;
  deviation: Mm;
  shapes: number;
}

/** Drawn only where something refers to them, or never. */
const SILENT =
  /^(defs|symbol|clipPath|mask|pattern|marker|linearGradient|radialGradient|filter|metadata|title|desc|script|view|cursor|animate\w*|set|mpath|.*:.*)$/;
const GROUPS = ['g', 'a'];
const MOST_SHAPES = 100_000;
const DEEPEST = 200;

const style = (element: Element, property: string): string | undefined =>
  new RegExp(`(?:^|;)\\s*${property}\\s*:\\s*([^;]+)`).exec(element.attributes.get('style') ?? '')?.[1]?.trim() ??
  element.attributes.get(property);

function tell(page: Page, what: string): void {
  page.skipped.set(what, (page.skipped.get(what) ?? 0) + 1);
}

/** Why an element is left out, if it is. */
function leftOut(element: Element): string | undefined {
  if (style(element, 'display') === 'none') return 'not displayed';
  if (/^(hidden|collapse)$/.test(style(element, 'visibility') ?? '')) return 'hidden';
  if (
    /(?:^|;)\s*(transform|translate|rotate|scale|zoom|offset-path)\s*:\s*(?!none)/.test(
      element.attributes.get('style') ?? '',
    )
  )
    return 'moved by its style, which is not read';
  if (style(element, 'transform-origin') !== undefined && element.attributes.has('transform'))
    return 'with a transform-origin, which is not read';
  return undefined;
}

/** What is told of an element though it is read. */
function tellOf(element: Element, page: Page): void {
  for (const property of ['clip-path', 'mask'])
    if ((style(element, property) ?? 'none') !== 'none') tell(page, `${element.name} with a ${property}: read whole`);
}

const flattens = (m: Affine): boolean => {
  const size = Math.max(Math.abs(m.a), Math.abs(m.b), Math.abs(m.c), Math.abs(m.d));
  return !(Math.abs(m.a * m.d - m.b * m.c) > 1e-9 * size * size);
};

function drawShape(data: string, element: Element, map: Affine, page: Page): void {
  page.shapes += 1;
  if (page.shapes > MOST_SHAPES) refuse('the SVG file', `more than ${MOST_SHAPES} shapes`, `at most ${MOST_SHAPES}`);
  if (data.trim() === '' || data.trim() === 'none') return;
  const id = element.attributes.get('id');
  const { pieces, deviation } = pathPieces(
    data,
    map,
    page.tolerance,
    `${element.name}${id === undefined ? '' : ` ${id}`}, `,
  );
  page.pieces.push(...pieces);
  page.deviation = Math.max(page.deviation, deviation);
}

/** An element inside a viewport of its own: a nested svg, or a symbol that is used. @param size of the viewport where it says none */
function drawViewport(element: Element, map: Affine, page: Page, depth: number, size: Element): void {
  const [width, height] = [
    lengthOf(size, 'width') ?? lengthOf(element, 'width'),
    lengthOf(size, 'height') ?? lengthOf(element, 'height'),
  ];
  const shifted = after(map, { ...IDENTITY, e: numberOf(element, 'x'), f: numberOf(element, 'y') });
  const inner = after(shifted, viewBoxMap(element, width?.px, height?.px));
  for (const child of element.children) draw(child, inner, page, depth + 1);
}

function drawUsed(use: Element, map: Affine, page: Page, depth: number): void {
  const href = use.attributes.get('href') ?? use.attributes.get('xlink:href') ?? '';
  const used = href.startsWith('#') ? page.byId.get(href.slice(1)) : undefined;
  const at = after(map, { ...IDENTITY, e: numberOf(use, 'x'), f: numberOf(use, 'y') });
  if (!used) tell(page, `use of ${href || 'nothing'}: not in the file`);
  else if (used.name === 'symbol' || used.name === 'svg') drawViewport(used, at, page, depth + 1, use);
  else draw(used, at, page, depth + 1);
}

/** Draws an element that is not left out, by what it is. */
function drawKind(element: Element, map: Affine, page: Page, depth: number): void {
  const data = pathDataOf(element);
  if (data !== undefined) drawShape(data, element, map, page);
  else if (element.name === 'use') drawUsed(element, map, page, depth);
  else if (element.name === 'svg') drawViewport(element, map, page, depth, element);
  else if (GROUPS.includes(element.name)) for (const child of element.children) draw(child, map, page, depth + 1);
  else tell(page, `${element.name}: ${element.name === 'style' ? 'not read' : 'no outline'}`);
}

function draw(element: Element, above: Affine, page: Page, depth: number): void {
  if (SILENT.test(element.name)) return;
  if (depth > DEEPEST) refuse('the SVG file', 'elements that use each other', `at most ${DEEPEST} deep`);
  const map = after(above, transformOf(element.attributes.get('transform') ?? ''));
  const why = leftOut(element) ?? (flattens(map) ? 'a transform that leaves no area' : undefined);
  if (why !== undefined) {
    tell(page, `${element.name}: ${why}`);
    return;
  }
  tellOf(element, page);
  drawKind(element, map, page, depth);
}

const all = (element: Element): Element[] => [element, ...element.children.flatMap(all)];

/** An SVG file's shapes as regions of lines and true arcs, mm with y up: paths, rectangles, circles, ellipses, lines, polylines, polygons, in groups, nested
 * drawings, and uses of them, each where its transforms and view boxes bring it. Styles other than `display` and `visibility` are not read: outlines count,
 * however they are painted. What is left out, and what is read but would look otherwise, is told in `skipped`.
 * @param tolerance mm: how far arcs laid for curves may stray   @param bridge mm: see `chain`
 * @throws Unusable naming the attribute; GeometryFailure 'self-crossing' with the place
 * Source: W3C, SVG 2, chapters 5 "Document Structure", 8 "Coordinate Systems, Transformations and Units". */
export function readSvg(text: string, tolerance: Mm = CURVE_TOLERANCE, bridge: Mm = BRIDGE): ReadSvg {
  const root = readXml(text);
  if (root.name !== 'svg') return refuse('the SVG file', `an element ${root.name}`, 'an SVG drawing');
  const byId = new Map(all(root).flatMap(e => (e.attributes.has('id') ? [[e.attributes.get('id')!, e] as const] : [])));
  const page: Page = { byId, pieces: [], skipped: new Map(), tolerance, deviation: 0, shapes: 0 };
  const toMm = { a: MM_PER_PX, b: 0, c: 0, d: -MM_PER_PX, e: 0, f: 0 };
  draw(root, toMm, page, 0);
  const skipped = [...page.skipped].map(([what, times]) => (times > 1 ? `${what} (${times} times)` : what));
  const physical = ['width', 'height'].some(name => lengthOf(root, name)?.physical);
  return { ...drawingOf(page.pieces, bridge, page.deviation, skipped), sizeAssumed: !physical };
}
