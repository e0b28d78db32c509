import { length, signedArea } from '../geometry/measure.js';
import { type Outline, type Polyline, type Region, vertex } from '../geometry/outline.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';
import type { Mm } from '../units/length.js';
import { type ChainReport, chain, type Stray } from './chain.js';
import type { Piece } from './piece.js';
import { regionsOf } from './regions.js';
import { rounded } from './round.js';

/** What a file was found to hold, mm. */
export interface ReadDrawing {
  /** closed outlines by nesting: anticlockwise outers less clockwise openings */
  readonly regions: readonly Region[];
  /** runs that close nowhere */
  readonly open: readonly Polyline[];
  readonly report: ChainReport;
  /** mm: the most any curve strays from the arcs laid in its place; 0 where all was lines and arcs */
  readonly deviation: Mm;
  /** things of the file that are no outlines, or that this reader does not know, one line each */
  readonly skipped: readonly string[];
}

/** An outline whose area is less than this over its length holds nothing: it runs there and back, or its halves cancel. */
const isFlat = (outline: Outline): boolean => Math.abs(signedArea(outline)) <= ON_BOUNDARY * length(outline);

const strayOf = (outline: Outline): Stray => ({
  at: outline[0]!,
  to: outline[0]!,
  length: length(outline),
  source: 'an outline without area: there and back, or crossing itself into halves that cancel',
});

/** Pieces chained, nested and told about. @throws GeometryFailure 'self-crossing' with the place */
export function drawingOf(
  pieces: readonly Piece[],
  bridge: Mm,
  deviation: Mm,
  skipped: readonly string[],
): ReadDrawing {
  const { outlines, open, report } = chain(pieces, bridge);
  const flat = outlines.filter(isFlat);
  return {
    regions: regionsOf(outlines.filter(o => !isFlat(o)).map(rounded)),
    open: [...open, ...flat.map(o => [...o, vertex(o[0]!)])],
    report: { ...report, stray: [...report.stray, ...flat.map(strayOf)] },
    deviation,
    skipped,
  };
}
