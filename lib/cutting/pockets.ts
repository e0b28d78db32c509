import type { Finding } from '../findings/finding.js';
import { difference, intersection } from '../geometry/boolean.js';
import { area } from '../geometry/measure.js';
import { offset } from '../geometry/offset.js';
import { type Outline, type Polyline, type Region, solid, vertex } from '../geometry/outline.js';
import { distance } from '../geometry/point.js';
import { ON_BOUNDARY } from '../geometry/tolerance.js';
import type { Face, Part, Pocket } from '../parts/part.js';
import type { Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { narrowPocket } from './checks/narrow-pocket.js';
import { tightRadius } from './checks/tight-radius.js';
import { cornerNote } from './corner-note.js';
import { cornersOfHollow, type InsideCorner, onlyCorners, tightArcsOfHollow, widestThat } from './hollow.js';
import { relievedPocket } from './pocket-relief.js';
import type { Relief } from './relief.js';
import { snugCentres } from './snug.js';

/** An area to clear to a depth, in the part's frame. */
export interface Clearing {
  readonly depth: Mm;
  readonly area: Region;
}

export interface Clearings {
  readonly pockets: readonly Clearing[];
  /** outlines of pockets that this method can only mark */
  readonly scores: readonly Polyline[];
  readonly findings: readonly Finding[];
}

const sameOutline = (a: Outline, b: Outline): boolean =>
  a.length === b.length && a.every((v, i) => distance(v, b[i]!) === 0 && v.bulge === b[i]!.bulge);

const sameRegion = (a: Region, b: Region): boolean =>
  sameOutline(a.outer, b.outer) &&
  a.openings.length === b.openings.length &&
  a.openings.every((o, i) => sameOutline(o, b.openings[i]!));

/** A closed outline as a run that ends where it began. */
export const closedRun = (outline: Outline): Polyline =>
  outline.length === 0 ? [] : [...outline, vertex(outline[0]!)];

/** The area to clear: the finished pocket, carried past the part's open edges by the cutter's whole width. That is enough: the disc that
 * reaches a point of the pocket is no wider than that, so it lies within the width of the point. */
export function runPast(part: Part, pocket: Pocket, width: Mm): Region[] {
  if (sameRegion(pocket.area, pocket.beyond)) return [pocket.area];
  return intersection(offset([solid(part.region.outer)], width), [pocket.beyond]);
}

/** Corners of the pocket in the wood: those of the finished area that are corners still when it runs on past open edges. */
function cornersInWood(pocket: Pocket): { readonly outline: Outline; readonly corner: InsideCorner }[] {
  const kept = [pocket.beyond.outer, ...pocket.beyond.openings].flatMap(o => cornersOfHollow(o).map(c => o[c.vertex]!));
  return [pocket.area.outer, ...pocket.area.openings].flatMap(outline =>
    cornersOfHollow(outline)
      .filter(c => kept.some(v => distance(v, outline[c.vertex]!) < ON_BOUNDARY))
      .map(corner => ({ outline, corner })),
  );
}

/** Where the cutter's centre goes in the area to clear. */
const centresOf = (cleared: readonly Region[], width: Mm): Region[] => offset(cleared, -width / 2);

/** Whether a cutter that stays inside the pocket carried past its open edges reaches all of the finished pocket but its corners. */
function reaches(pocket: Pocket, centres: readonly Region[], width: Mm): boolean {
  const lost = difference([pocket.area], offset(centres, width / 2)).reduce((sum, r) => sum + area(r), 0);
  return onlyCorners(
    lost,
    cornersInWood(pocket).map(c => c.corner),
    tightArcsOfHollow(pocket.area, width / 2),
    width / 2,
  );
}

/** The widest cutter that reaches all of a pocket, at most `limit`. */
const widestIn = (part: Part, pocket: Pocket, limit: Mm): Mm =>
  widestThat(width => reaches(pocket, centresOf(runPast(part, pocket, width), width), width), limit);

function routed(part: Part, pocket: Pocket, width: Mm, relief: Relief): Clearings {
  const run = runPast(part, pocket, width);
  const centres = centresOf(run, width);
  const fits = reaches(pocket, centres, width) || reaches(pocket, snugCentres(run, width / 2), width);
  const { cleared, opened, findings } = relievedPocket(part, pocket, run, width / 2, fits ? relief : 'none');
  const left = cornersInWood(pocket).filter(
    c => !opened.some(({ corner }) => corner.of.outline === c.outline && corner.vertex === c.corner.vertex),
  );
  return {
    pockets: cleared.map(r => ({ depth: pocket.depth, area: r })),
    scores: [],
    findings: [
      ...cornerNote(
        part.id,
        'a pocket',
        left.map(c => c.corner),
        width / 2,
      ),
      ...findings,
      ...(fits
        ? tightRadius(part, 'a pocket', tightArcsOfHollow(pocket.area, width / 2), width / 2)
        : [narrowPocket(part, pocket, centres, width, widestIn(part, pocket, width))]),
    ],
  };
}

function marked(part: Part, pocket: Pocket): Clearings {
  const depth = Number(pocket.depth.toFixed(3));
  const message = `${part.id} has a pocket ${depth} mm deep, which a laser cannot clear; its outline is marked, clear it by other means`;
  return {
    pockets: [],
    scores: [pocket.area.outer, ...pocket.area.openings].map(closedRun),
    findings: [{ level: 'warn', rule: 'laser-pocket', where: part.id, message, value: pocket.depth, limit: 0 }],
  };
}

/** What to do about a part's pockets on one face: a router clears past the open edges and into corners that a square corner goes into, a
 * laser can only mark them, hands clear what is drawn. */
export function clearings(part: Part, face: Face, method: Method, width: Mm, relief: Relief): Clearings {
  const pockets = part.features.filter((f): f is Pocket => f.kind === 'pocket' && f.face === face);
  const each = pockets.map(pocket => {
    switch (method) {
      case 'router':
        return routed(part, pocket, width, relief);
      case 'laser':
        return marked(part, pocket);
      case 'hand':
        return { pockets: [{ depth: pocket.depth, area: pocket.area }], scores: [], findings: [] };
      default:
        return method satisfies never;
    }
  });
  return {
    pockets: each.flatMap(c => c.pockets),
    scores: each.flatMap(c => c.scores),
    findings: each.flatMap(c => c.findings),
  };
}
