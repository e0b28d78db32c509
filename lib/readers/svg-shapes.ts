import { refuse } from '../findings/unusable.js';
import { numberOf } from './svg-viewport.js';
import type { Element } from './xml.js';

/** An ellipse as path data, from its right end. */
const ellipse = (cx: number, cy: number, rx: number, ry: number): string =>
  rx > 0 && ry > 0 ? `M${cx + rx} ${cy}A${rx} ${ry} 0 1 1 ${cx - rx} ${cy}A${rx} ${ry} 0 1 1 ${cx + rx} ${cy}Z` : '';

/** A rectangle; round corners are quarters of ellipses, no larger than half a side. Source: SVG 2, 10.2. */
function rect(e: Element): string {
  const [x, y, w, h] = [numberOf(e, 'x'), numberOf(e, 'y'), numberOf(e, 'width'), numberOf(e, 'height')];
  if (!(w > 0 && h > 0)) return '';
  const given = { rx: numberOf(e, 'rx', Number.NaN), ry: numberOf(e, 'ry', Number.NaN) };
  const rx = Math.min(Number.isNaN(given.rx) ? given.ry : given.rx, w / 2);
  const ry = Math.min(Number.isNaN(given.ry) ? given.rx : given.ry, h / 2);
  if (!(rx > 0 && ry > 0)) return `M${x} ${y}h${w}v${h}h${-w}Z`;
  const quarter = (dx: number, dy: number): string => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
  const [across, down] = [w - 2 * rx, h - 2 * ry];
  return `M${x + rx} ${y}h${across}${quarter(rx, ry)}v${down}${quarter(-rx, ry)}h${-across}${quarter(-rx, -ry)}v${-down}${quarter(rx, -ry)}Z`;
}

function points(e: Element): string {
  const text = (e.attributes.get('points') ?? '').trim();
  const numbers =
    text === ''
      ? []
      : text
          .replace(/([\d.])([+-])/g, '$1 $2')
          .split(/[\s,]+/)
          .map(Number);
  if (numbers.length % 2 > 0 || numbers.some(n => !Number.isFinite(n)))
    return refuse(`${e.name}.points`, text, 'pairs of numbers');
  return numbers.length < 4 ? '' : `M${numbers.join(' ')}`;
}

/** What a shape's element draws, as path data; empty where it draws nothing, undefined where the element is no shape.
 * @throws Unusable naming the attribute. Source: W3C, SVG 2, chapters 9 "Paths" and 10 "Basic Shapes". */
export function pathDataOf(e: Element): string | undefined {
  switch (e.name) {
    case 'path':
      return e.attributes.get('d') ?? '';
    case 'rect':
      return rect(e);
    case 'circle': {
      const r = numberOf(e, 'r');
      return ellipse(numberOf(e, 'cx'), numberOf(e, 'cy'), r, r);
    }
    case 'ellipse': {
      const [rx, ry] = [numberOf(e, 'rx', Number.NaN), numberOf(e, 'ry', Number.NaN)];
      return ellipse(numberOf(e, 'cx'), numberOf(e, 'cy'), Number.isNaN(rx) ? ry : rx, Number.isNaN(ry) ? rx : ry);
    }
    case 'line':
      return `M${numberOf(e, 'x1')} ${numberOf(e, 'y1')}L${numberOf(e, 'x2')} ${numberOf(e, 'y2')}`;
    case 'polyline':
      return points(e);
    case 'polygon': {
      const data = points(e);
      return data === '' ? '' : `${data}Z`;
    }
    default:
      return undefined;
  }
}
