import { refuse } from '../findings/unusable.js';
import type { Region } from '../geometry/outline.js';
import { readSvgPath } from './svg-path.js';

const MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

const attribute = (tag: string, name: string): string | undefined =>
  new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`)
    .exec(tag)
    ?.slice(1)
    .find(v => v !== undefined);

/** mm to one unit: width over the view box's; 96 units to the inch where the file does not say. Source: SVG 2, section 8. */
function scaleOf(svg: string): number {
  const root = /<svg\b[^>]*>/.exec(svg)?.[0] ?? refuse('the SVG file', 'without an svg element', 'an SVG drawing');
  const width = /^\s*([\d.]+)\s*(mm|cm|in|pt|pc|px|)\s*$/.exec(attribute(root, 'width') ?? '');
  const box = (attribute(root, 'viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (!width || !((box[2] ?? 0) > 0)) return 25.4 / 96;
  return (Number(width[1]) * MM[width[2] ?? '']!) / box[2]!;
}

const numbers = (tag: string, ...names: readonly string[]): number[] => names.map(n => Number(attribute(tag, n) ?? 0));

/** The outline of a basic shape as path data. */
function dataOf(kind: string, tag: string): string | undefined {
  switch (kind) {
    case 'path':
      return attribute(tag, 'd');
    case 'polygon':
      return `M${attribute(tag, 'points') ?? ''}Z`;
    case 'rect': {
      const [x = 0, y = 0, w = 0, h = 0, r = 0] = numbers(tag, 'x', 'y', 'width', 'height', 'rx');
      if (r > 0) return refuse('an SVG rect', 'with round corners', 'a path');
      return `M${x} ${y}h${w}v${h}h${-w}Z`;
    }
    case 'circle': {
      const [x = 0, y = 0, r = 0] = numbers(tag, 'cx', 'cy', 'r');
      return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
    }
    default:
      return undefined;
  }
}

/** Closed outlines of a drawing's paths, polygons, rectangles and circles, by nesting, mm with y up. Limits: no transforms, no styles, no
 * definitions used elsewhere: a file with a transform is refused. @throws Unusable, GeometryFailure */
export function readSvg(svg: string): readonly Region[] {
  if (/\stransform\s*=/.test(svg))
    refuse('the SVG file', 'with a transform', 'outlines in the coordinates they are drawn in');
  const scale = scaleOf(svg);
  const data = [...svg.matchAll(/<(path|polygon|rect|circle)\b[^>]*>/g)].flatMap(
    ([tag, kind]) => dataOf(kind!, tag) ?? [],
  );
  return readSvgPath(data.join(' '), { scale }).regions;
}
