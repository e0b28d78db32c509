import { describe, expect, test } from 'vitest';
import { pointAlong } from '../../lib/geometry/along.js';
import { distanceToSegment, locate } from '../../lib/geometry/locate.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import type { Polyline } from '../../lib/geometry/outline.js';
import type { Point } from '../../lib/geometry/point.js';
import { polylineSegments, type Segment, segments } from '../../lib/geometry/segment.js';
import { stretch } from '../../lib/geometry/stretch.js';
import type { FinishedSheet } from '../../lib/sheets/finish-sheet.js';
import type { Profile, Work } from '../../lib/sheets/work.js';
import { cutWidth } from '../../lib/stock/stock.js';
import { randomModels } from '../models/random-models.js';
import { finishedSheets } from './finished.js';

/** Plans drawn of each model; RIMWRIGHT_PLANS draws more. */
const PLANS = Number(process.env['RIMWRIGHT_PLANS'] ?? 3);
const HOW = {
  leads: { shape: 'arc', length: 8 },
  tabs: { parts: 'all', width: 6, style: 'mark' },
} as const;

type ProfileWork = Profile & Work;
const isProfile = (w: Work): w is ProfileWork => w.kind === 'inside' || w.kind === 'outside';

const sampled = (line: Polyline): Point[] =>
  polylineSegments(line).flatMap(s => [0, 0.2, 0.4, 0.6, 0.8, 1].map(share => pointAlong(s, share)));

/** A sheet's finished shapes and, of those, the edges that meet another piece. */
function shapes({ sheet }: FinishedSheet) {
  return sheet.placements.map(({ cut: c, motion }) => {
    const region = moveRegion(c.finished, motion);
    const mates: Segment[] = [region.outer, ...region.openings].flatMap(o =>
      segments(o).filter((_, i) => o[i]!.mate !== undefined),
    );
    return { region, mates, radius: cutWidth(c.cutter) / 2 };
  });
}

const from = (edges: readonly Segment[], p: Point): number => Math.min(...edges.map(s => distanceToSegment(s, p)));

/** What a profile's lead does that it must not. */
function leadFaults(work: ProfileWork, parts: ReturnType<typeof shapes>, radius: number): string[] {
  const { lead } = work;
  if (!lead) return [];
  return [...sampled(lead.in), ...sampled(lead.out)].flatMap(p =>
    parts.flatMap(({ region, mates }, i) => {
      const edges = [region.outer, ...region.openings].flatMap(segments);
      const faults = from(edges, p) < radius - 1e-6 || locate(region, p) === 'inside' ? [`a lead cuts into ${i}`] : [];
      return from(mates, p) < radius + 1e-6 ? [...faults, `a lead touches a mating face of ${i}`] : faults;
    }),
  );
}

/** What a profile's tabs do that they must not. @param others the sheet's other profiles */
function tabFaults(
  work: ProfileWork,
  others: readonly ProfileWork[],
  parts: ReturnType<typeof shapes>,
  radius: number,
) {
  const own = parts[work.piece!]!;
  return work.tabs.flatMap(({ along }) => {
    const points = sampled(stretch(work.outline, ...along));
    const near = points.filter(p => others.some(o => from(segments(o.outline), p) < 2 * radius - 1e-6));
    const mating = points.filter(p => from(own.mates, p) < radius + 1e-6);
    return [
      ...(near.length > 0 ? ['a tab has no waste behind it'] : []),
      ...(mating.length > 0 ? ['a tab is on a mating face'] : []),
    ];
  });
}

/** What comes too late on a face. */
function orderFaults(works: readonly Work[], count: number): string[] {
  return Array.from({ length: count }, (_, piece) => {
    const own = works.flatMap((w, i) => (w.piece === piece ? [{ kind: w.kind, i }] : []));
    const freed = Math.min(...own.filter(o => o.kind === 'outside').map(o => o.i), Infinity);
    return own.some(o => o.kind !== 'outside' && o.i > freed) ? [`piece ${piece} is freed too early`] : [];
  }).flat();
}

describe.each(Object.keys(randomModels))('random sheets of %s', model => {
  test('no lead or tab touches a neighbour or a mating face; no piece is freed before its other cuts', () => {
    const faults: string[] = [];
    let leads = 0;
    let tabs = 0;
    for (let seed = 1; seed <= PLANS; seed++)
      for (const finished of finishedSheets(randomModels[model]!(seed, 'router'), HOW)) {
        const { works } = finished.first;
        const parts = shapes(finished);
        const profiles = works.filter(isProfile);
        for (const work of profiles) {
          const radius = parts[work.piece!]!.radius;
          const others = profiles.filter(o => o !== work);
          faults.push(...leadFaults(work, parts, radius), ...tabFaults(work, others, parts, radius));
          leads += work.lead ? 1 : 0;
          tabs += work.tabs.length;
        }
        faults.push(...orderFaults(works, parts.length).map(f => `seed ${seed}: ${f}`));
        expect(finished.first.travel).toBeLessThanOrEqual(finished.first.listed + 1e-6);
      }
    expect(faults).toEqual([]);
    expect(leads).toBeGreaterThan(0);
    expect(tabs).toBeGreaterThan(0);
  }, 600_000);
});
