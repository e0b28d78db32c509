import { refuse, requireRange } from '../findings/unusable.js';
import { intersection } from '../geometry/boolean.js';
import { area, bounds } from '../geometry/measure.js';
import { type Motion, moveRegion } from '../geometry/motion.js';
import { annularSector, type Outline, type Region, solid } from '../geometry/outline.js';
import { polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import { letteringWidth, lettersOf } from './lettering/lettering.js';
import type { Feature, Label, Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** Where lettering stands on a ring: over the wheel's top, or under its bottom; either way it reads from left to right. */
export type NamePlace = 'top' | 'bottom';

export interface NameBandOptions extends PieceOptions {
  /** radii, mm */
  readonly inner: Mm;
  readonly outer: Mm;
  /** radians, above 0 to pi */
  readonly sweep: Radians;
}

export interface Lettered {
  /** of a capital, mm */
  readonly height: Mm;
  readonly place?: NamePlace;
}

/** Angle that a text takes on a circle, with half its height free at either end. @param height mm   @param radius mm */
export const letteringSweep = (text: string, height: Mm, radius: Mm): Radians =>
  (letteringWidth(text, height) + height) / radius;

/** A plain band: a stretch of a ring, symmetric about +y, wheel centre at the origin. @throws Unusable naming the option */
export function nameBand(o: NameBandOptions): Part {
  requireRange('outer', o.outer, 1, 10_000);
  requireRange('inner', o.inner, 0.5, o.outer - 0.5);
  requireRange('sweep', o.sweep, 1e-3, Math.PI, 'rad');
  const sector = annularSector(o.inner, o.outer, Math.PI / 2 - o.sweep / 2, o.sweep);
  return piece('name-band', 'Name band', o, { region: solid(sector) });
}

/** Radius half way across a ring's stretch about the origin that is symmetric about +y. */
function middleRadius({ region }: Part): Mm {
  const radii = region.outer.map(v => Math.hypot(v.x, v.y));
  return (Math.min(...radii) + Math.max(...radii)) / 2;
}

/** Where something `along` mm to the right of the middle goes on the circle, upright as read. */
function onCircle(radius: Mm, along: Mm, place: NamePlace): { readonly turn: Radians; readonly x: Mm; readonly y: Mm } {
  const angle = place === 'top' ? -along / radius : along / radius;
  return { turn: place === 'top' ? angle : angle + Math.PI, ...polar(radius, Math.PI / 2 + angle) };
}

/** A band with a text along its middle, letter by letter in single strokes, marked on its face. Set at the bottom of a wheel (the band turned
 * half round) it reads from left to right as well. */
export function withText(band: Part, text: string, o: Lettered): Part {
  const radius = middleRadius(band);
  const labels = lettersOf(text, o.height).map((letter): Label => {
    const { turn, x, y } = onCircle(radius, letter.x, o.place ?? 'top');
    return { kind: 'label', text: letter.text, at: { x, y }, height: o.height, turn, shows: true };
  });
  return { ...band, features: [...band.features, ...labels] };
}

const scaled = (outline: Outline, by: number): Outline => outline.map(v => ({ ...v, x: v.x * by, y: v.y * by }));

/** Outlines that stand over each other along x, such as an i and its dot, are one letter. */
function glyphsOf(regions: readonly Region[]): Region[][] {
  const sorted = regions.map(region => ({ region, box: bounds(region.outer) })).sort((a, b) => a.box.minX - b.box.minX);
  const glyphs: { regions: Region[]; right: Mm }[] = [];
  for (const { region, box } of sorted) {
    const last = glyphs.at(-1);
    if (last && box.minX < last.right) {
      last.regions.push(region);
      last.right = Math.max(last.right, box.maxX);
    } else glyphs.push({ regions: [region], right: box.maxX });
  }
  return glyphs.map(g => g.regions);
}

/** Letters of any font, laid along the middle of a band; each keeps its shape, arcs and all. */
function laidAlong(band: Part, letters: readonly Region[], o: Lettered): Region[] {
  const boxes = letters.map(r => bounds(r.outer));
  const [low, high] = [Math.min(...boxes.map(b => b.minY)), Math.max(...boxes.map(b => b.maxY))];
  const by = o.height / (high - low);
  const middle = (Math.min(...boxes.map(b => b.minX)) + Math.max(...boxes.map(b => b.maxX))) / 2;
  return glyphsOf(letters).flatMap(glyph => {
    const own = glyph.map(r => bounds(r.outer));
    const x = (Math.min(...own.map(b => b.minX)) + Math.max(...own.map(b => b.maxX))) / 2;
    const { turn, x: px, y: py } = onCircle(middleRadius(band), (x - middle) * by, o.place ?? 'top');
    const home: Motion = { turn: 0, x: -x * by, y: (-(low + high) / 2) * by };
    return glyph.map(({ outer, openings }) => {
      const sized = { outer: scaled(outer, by), openings: openings.map(opening => scaled(opening, by)) };
      return moveRegion(moveRegion(sized, home), { turn, x: px, y: py });
    });
  });
}

/** How letters are worked into a band: cleared to a depth, or with their outlines marked. */
export interface Engraving extends Lettered {
  /** of the pockets, mm, less than the band is thick; without it outlines are marked on the face */
  readonly depth?: Mm;
}

/** A band with letters of any shape along its middle, as a drawing gives them (readMaker, readDxf, readSvgPath): baseline along +x, one size
 * for all, scaled so that they are `height` high together.
 * @throws Unusable where there are no letters, or they run off the band */
export function withLetters(band: Part, letters: readonly Region[], o: Engraving): Part {
  if (letters.length === 0) refuse('letters', 'none', 'one outline or more');
  requireRange('height', o.height, 1, 1000);
  if (o.depth !== undefined) requireRange('depth', o.depth, 0.1, band.thickness - 0.1);
  const laid = laidAlong(band, letters, o);
  const kept = intersection(laid, [band.region]).reduce((sum, r) => sum + area(r), 0);
  const whole = laid.reduce((sum, r) => sum + area(r), 0);
  if (kept < whole * (1 - 1e-6))
    refuse('height', `${o.height} mm`, 'letters that stay on the band: smaller, or a longer or wider band');
  const { depth } = o;
  const features = laid.flatMap((region): Feature[] =>
    depth === undefined
      ? [region.outer, ...region.openings].map(outline => ({
          kind: 'score',
          face: 'front',
          line: [...outline, { ...outline[0]!, bulge: 0 }],
        }))
      : [{ kind: 'pocket', face: 'front', depth, area: region, beyond: region }],
  );
  return { ...band, features: [...band.features, ...features] };
}
