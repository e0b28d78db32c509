import { refuse } from '../findings/unusable.js';
import { type Affine, IDENTITY } from './affine.js';
import type { Element } from './xml.js';

// Sizes on paper and view boxes. Source: W3C, SVG 2, chapter 8 "Coordinate Systems, Transformations and Units".

/** mm to one of each unit; 96 px to the inch. Source: W3C, CSS Values and Units Module Level 3, 6.2. */
const MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
};
export const MM_PER_PX = 25.4 / 96;

const LENGTH = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(mm|cm|q|in|pt|pc|px|%|em|ex|rem)?\s*$/i;

/** A length and whether its unit is one of the real world. */
export interface Measured {
  /** user units of 1/96 in */
  readonly px: number;
  readonly physical: boolean;
}

/** An attribute's length; undefined where it is not there, `auto` or a share of something. @throws Unusable for what is no length */
export function lengthOf(element: Element, name: string): Measured | undefined {
  const text = element.attributes.get(name);
  if (text === undefined || text.trim() === 'auto') return undefined;
  const [, number, unit = ''] =
    LENGTH.exec(text) ?? refuse(`${element.name}.${name}`, text, 'a number with or without a unit');
  if (unit === '%') return undefined;
  if (/^(em|ex|rem)$/i.test(unit)) return refuse(`${element.name}.${name}`, text, 'a length not in sizes of letters');
  const size = MM[unit.toLowerCase()];
  return {
    px: Number(number) * (size === undefined ? 1 : size / MM_PER_PX),
    physical: size !== undefined && unit.toLowerCase() !== 'px',
  };
}

/** What a length attribute is, in user units; `otherwise` where it is not there. */
export function numberOf(element: Element, name: string, otherwise = 0): number {
  const text = element.attributes.get(name);
  if (text === undefined || text.trim() === 'auto') return otherwise;
  return lengthOf(element, name)?.px ?? refuse(`${element.name}.${name}`, text, 'a length that is no share of another');
}

/** x, y, width and height. @throws Unusable */
export function viewBoxOf(element: Element): readonly [number, number, number, number] | undefined {
  const text = element.attributes.get('viewBox');
  if (text === undefined) return undefined;
  const [x = 0, y = 0, w = 0, h = 0, ...more] = text
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const fine = more.length === 0 && [x, y, w, h].every(Number.isFinite) && w > 0 && h > 0;
  return fine ? [x, y, w, h] : refuse(`${element.name}.viewBox`, text, 'x y width height, sizes above 0');
}

/** Share of the room left over that goes before: xMin 0, xMid a half, xMax all of it. */
const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };
const ASPECT = /^\s*(?:(none)|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*$/;

/** The map from a view box to the viewport of a size. */
export function viewBoxMap(element: Element, width: number | undefined, height: number | undefined): Affine {
  const box = viewBoxOf(element);
  if (!box) return IDENTITY;
  const [x, y, w, h] = box;
  const wide = width ?? (height === undefined ? w : (height * w) / h);
  const high = height ?? (width === undefined ? h : (width * h) / w);
  const text = element.attributes.get('preserveAspectRatio') ?? 'xMidYMid meet';
  const [, none, alongX = 'Mid', alongY = 'Mid', fit] =
    ASPECT.exec(text) ??
    refuse(`${element.name}.preserveAspectRatio`, text, 'none, or xMidYMid and the like, then meet or slice');
  const [sx, sy] = [wide / w, high / h];
  const uniform = fit === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  const [a, d] = none === undefined ? [uniform, uniform] : [sx, sy];
  const e = -x * a + (none === undefined ? SHARE[alongX]! * (wide - w * a) : 0);
  const f = -y * d + (none === undefined ? SHARE[alongY]! * (high - h * d) : 0);
  return { a, b: 0, c: 0, d, e, f };
}
