import type { Finding } from '../../findings/finding.js';
import { polar } from '../../geometry/point.js';
import type { Face } from '../../parts/part.js';
import { trimSegment } from '../../parts/trim-segment.js';
import { type Screw, screwUnder } from '../../stock/screws.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import { type PlugObstacles, placePlugs } from '../plugs.js';
import { gapsFor, ringOfSeams } from '../seams.js';
import { lapWidth, seamsByLayer, spokeAngles } from './layout.js';
import type { HelmSizes, TrimSizes } from './sizes.js';

const TURN = 2 * Math.PI;

/** Wood left under a counterbore; common practice, no source. */
export const UNDER_PLUG: Mm = 6;

/** Depth of a plug's counterbore: all but the wood left under it. */
export const plugDepth = (trim: TrimSizes): Mm => trim.thickness - UNDER_PLUG;

/** Metric plugs are up to this much smaller than the inch sizes screws are made for; by comparing the two rows of sizes. */
const METRIC: Mm = 0.4;

/** The screw that goes under a plug. @throws Unusable when the plug is too small for any. */
export const plugScrew = (plug: Mm): Screw => screwUnder(plug + METRIC, 'trim.plugs.diameter');

/** Shares of half the gap between rim seams by which trim seams are moved off its middle when plugs find no place there. */
const OFF_MIDDLE = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7].flatMap(share => (share === 0 ? [0] : [share, -share]));

/** Seam offsets to try: those as far from every layer's rim seams as can be first, then a little off them. */
function seamChoices(s: HelmSizes, trim: TrimSizes): Radians[][] {
  const gaps = gapsFor(trim.segments, seamsByLayer(s).flat());
  const widest = gaps.filter(g => g.half > gaps[0]!.half - 1e-6);
  return OFF_MIDDLE.map(share => widest.map(g => g.middle + share * g.half));
}

/** What a plug must keep clear of, under the trim. */
function obstacles(s: HelmSizes, trim: TrimSizes): PlugObstacles {
  return {
    radius: (trim.inner + trim.outer) / 2,
    seams: seamsByLayer(s).flat(),
    spokes: spokeAngles(s),
    lapHalf: lapWidth(s) / 2,
    plug: (trim.plugs?.diameter ?? 0) / 2,
  };
}

/** Trim seams and each segment's plug angles, or nothing when no arrangement keeps the plugs clear. */
export interface TrimLayout {
  readonly middles: readonly Radians[];
  /** one list a segment, in the order of `middles`; angles from the segment's middle */
  readonly plugs: readonly (readonly Radians[])[];
}

function layoutAt(s: HelmSizes, trim: TrimSizes, first: Radians, middleMoves: boolean): TrimLayout | undefined {
  const sweep = TURN / trim.segments;
  const middles = ringOfSeams(trim.segments, first + sweep / 2);
  const each = trim.plugs?.each ?? 0;
  const plugs = placePlugs(middles, sweep, { each, middleMoves }, obstacles(s, trim));
  return plugs && { middles, plugs };
}

/** Kinds of segment a layout needs. */
const kinds = (l: TrimLayout): number => new Set(l.plugs.map(p => p.map(a => a.toFixed(9)).join())).size;

/** The seam offset at which every plug finds a clear place: as far from the rim's seams as it can be, then with the fewest kinds of
 * segment. Only where there is none may the middle plug of an odd number leave its segment's middle. */
export function trimLayout(s: HelmSizes, trim: TrimSizes): TrimLayout | undefined {
  for (const middleMoves of [false, true])
    for (const choices of seamChoices(s, trim)) {
      const found = choices.map(first => layoutAt(s, trim, first, middleMoves)).filter(l => l !== undefined);
      if (found.length > 0) return found.reduce((best, l) => (kinds(l) < kinds(best) ? l : best));
    }
  return undefined;
}

function drafts(s: HelmSizes, trim: TrimSizes, layout: TrimLayout, face: Face): Draft[] {
  const sweep = TURN / trim.segments;
  const z = face === 'front' ? s.rim.thickness : -trim.thickness;
  return layout.middles.map((turn, i): Draft => {
    const angles = layout.plugs[i]!;
    const plugs = trim.plugs && {
      at: angles,
      diameter: trim.plugs.diameter + s.fit.plug,
      depth: plugDepth(trim),
      shank: plugScrew(trim.plugs.diameter).shank,
    };
    const part = trimSegment({
      outer: trim.outer,
      inner: trim.inner,
      sweep,
      thickness: trim.thickness,
      stock: trim.stock.name,
      grained: trim.stock.kind === 'board',
      face,
      ...(trim.faces.length > 1 && { id: `trim-segment-${face}`, name: `Trim segment, ${face}` }),
      ...(plugs && { plugs }),
    });
    return { part, turn, z, lettering: letteringOn(trim, angles, sweep) };
  });
}

/** Lettering goes in the widest stretch between plugs, the one nearest the segment's middle of several. */
function letteringOn(trim: TrimSizes, angles: readonly Radians[], sweep: Radians): Lettering {
  const stops = [-sweep / 2, ...angles, sweep / 2];
  const gaps = stops.slice(1).map((to, i) => ({ at: (to + stops[i]!) / 2, width: to - stops[i]! }));
  const better = (a: (typeof gaps)[number], b: (typeof gaps)[number]): boolean =>
    a.width > b.width + 1e-9 || (a.width > b.width - 1e-9 && Math.abs(a.at) < Math.abs(b.at) - 1e-9);
  const gap = gaps.reduce((best, g) => (better(g, best) ? g : best));
  const at = polar((trim.inner + trim.outer) / 2, Math.PI / 2 + gap.at);
  const length = 0.7 * (gap.width * trim.inner - (trim.plugs?.diameter ?? 0));
  return { at, height: Math.min(10, (trim.outer - trim.inner) / 5), length, turn: gap.at };
}

/** Every trim segment on every face that has trim, and a stop where plugs find no place. */
export function trimDrafts(s: HelmSizes): { readonly drafts: readonly Draft[]; readonly findings: readonly Finding[] } {
  const { trim } = s;
  if (!trim) return { drafts: [], findings: [] };
  const layout = trimLayout(s, trim);
  if (layout) return { drafts: trim.faces.flatMap(face => drafts(s, trim, layout, face)), findings: [] };
  const { plugs: _, ...bare } = trim;
  return {
    drafts: trim.faces.flatMap(face => drafts(s, bare, trimLayout(s, bare)!, face)),
    findings: [
      {
        level: 'stop',
        rule: 'plug-place',
        where: 'trim.plugs.each',
        message: `trim.plugs.each is ${trim.plugs?.each}: no arrangement keeps every plug clear of seams and lap walls; allowed: fewer or smaller plugs, or another number of trim segments`,
        value: trim.plugs?.each ?? 0,
        limit: (trim.plugs?.each ?? 1) - 1,
      },
    ],
  };
}
