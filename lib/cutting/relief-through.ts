import type { Finding } from '../findings/finding.js';
import { difference } from '../geometry/boolean.js';
import { distanceToSegment } from '../geometry/locate.js';
import { offset } from '../geometry/offset.js';
import { circle, type Outline, type Region, solid } from '../geometry/outline.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Drill, Part, Pocket } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { type Opened, type Relief, towards } from './relief.js';
import { spurArea } from './spur.js';

// Relief cuts into the walls beside a corner. Where the wood there is thin it would come out on the other side; such a corner stays as it is.

const outlinesOf = (r: Region): Outline[] => [r.outer, ...r.openings];

/** What is cut out of a part from its faces that relief of a corner could come into: from an outline everything; from a pocket what is in
 * its own face or reaches it from the other. */
function hollowsMet(part: Part, { corner: { of } }: Opened): Region[] {
  const meets = (f: Pocket | Drill): boolean => {
    if (of.where !== 'pocket') return true;
    const face = f.kind === 'pocket' ? f.face : f.from;
    return face === 'through' || face === of.pocket.face || f.depth + of.pocket.depth >= part.thickness;
  };
  return part.features
    .filter((f): f is Pocket | Drill => f.kind === 'pocket' || f.kind === 'drill')
    .filter(meets)
    .map(f => (f.kind === 'pocket' ? f.area : solid(circle(f.diameter / 2, f.at))));
}

/** Edges near a corner that are neither its walls nor what these end at. */
function otherEdges(outline: Outline, { corner }: Opened): Segment[] {
  const edges = segments(outline);
  if (outline !== corner.of.outline) return edges;
  const own = [-2, -1, 0, 1].map(k => (corner.vertex + k + edges.length) % edges.length);
  return edges.filter((_, i) => !own.includes(i));
}

/** Whether the cutter in a corner, and another in a corner across from it, may meet any other edge. */
function comesNear(part: Part, opened: Opened, radius: Mm, relief: Relief): boolean {
  const { corner, to } = opened;
  const intoWall = relief === 'side' ? radius : radius * (1 - Math.cos(corner.turn / 2));
  const around = [part.region, ...hollowsMet(part, opened)].flatMap(outlinesOf);
  return around.some(o => otherEdges(o, opened).some(s => distanceToSegment(s, to) < radius + intoWall));
}

/** How many pieces, and how many openings in them. */
const pieces = (regions: readonly Region[]): string =>
  [regions.length, ...regions.map(r => r.openings.length).sort()].join();

/** What the cutter takes on its way into a corner that is opened. */
export const sweptBy = (opened: Opened, radius: Mm): Region[] =>
  offset([solid(spurArea(opened.outline, opened))], radius);

/** Those of some openings that come out on another side of the wood, one after the other. */
function comingThrough(part: Part, near: readonly Opened[], radius: Mm): Opened[] {
  const through: Opened[] = [];
  let gone: Region[] = [];
  for (const opened of near) {
    const hollows = hollowsMet(part, opened);
    const before = difference([part.region], [...hollows, ...gone]);
    const more = [...gone, ...sweptBy(opened, radius)];
    const after = difference([part.region], [...hollows, ...more]);
    if (pieces(before) === pieces(after)) gone = more;
    else through.push(opened);
  }
  return through;
}

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

function cutsThrough(part: Part, { corner }: Opened): Finding {
  const { x, y } = corner.at;
  const message = `${part.id}: relief of the corner at (${mm(x)}, ${mm(y)}) would come out on the other side of the wood, so it is left out; allowed: a narrower cutter, more wood there, or squaring the corner by hand`;
  return { level: 'warn', rule: 'relief-through', where: part.id, message, place: { part: part.id, at: corner.at } };
}

/** Openings of corners less those that would cut through the wood to another edge, pocket or hole, each of which is told. Where that is
 * so to the side, the corner is opened along the bisector, which takes less off a wall. */
export function keptWhole(
  part: Part,
  opened: readonly Opened[],
  radius: Mm,
  relief: Relief,
): { readonly opened: readonly Opened[]; readonly findings: readonly Finding[] } {
  const near = opened.filter(o => comesNear(part, o, radius, relief));
  const through = near.length === 0 ? [] : comingThrough(part, near, radius);
  const kept = opened.filter(o => !through.includes(o));
  if (relief !== 'side' || through.length === 0)
    return { opened: kept, findings: through.map(o => cutsThrough(part, o)) };
  const straight = through.map(o => ({ ...o, to: towards(o.corner.at, o.outline[o.vertex]!, radius) }));
  const second = keptWhole(part, straight, radius, 'bisector');
  return { opened: [...kept, ...second.opened], findings: second.findings };
}
