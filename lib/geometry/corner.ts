import { refuse, requireRange } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { curvature, endDirection, startDirection } from './along.js';
import { addOutline, type Edges, edgeTable } from './arrangement/edges.js';
import { meet } from './arrangement/meet.js';
import { type Cut, chamferCut, filletCut } from './corner-cut.js';
import { bulgeOf, type Outline, type Vertex, vertex } from './outline.js';
import { cross, dot } from './point.js';
import { type Segment, segments } from './segment.js';
import { CUSP } from './tolerance.js';

/** Which corners: `outside` ones turn left (material stands out), `inside` ones turn right (a cutter cannot reach in); openings run
 * clockwise, so the words hold for them as well. */
export type Corners = 'all' | 'outside' | 'inside';

/** Below this turn two edges run on smoothly: there is no corner to treat. */
const SMOOTH = 1e-6;
const SMALLEST: Mm = 1e-6;
const LARGEST: Mm = 1e6;
/** An edge left shorter than this share of itself is gone. */
const NOTHING = 1e-9;
/** How near a shared end a tangent neighbour may seem to meet a new edge once more. */
const AT_END: Mm = 1e-4;

/** New edges nearer than this to another meet it; an arc that strays half as far from its chord is the chord. */
const TOUCH: Mm = 1e-9;

interface Corner {
  readonly before: Segment;
  readonly after: Segment;
  /** 1 turns left, -1 right */
  readonly hand: 1 | -1;
}

/** The corner at a vertex; undefined where the edges run on smoothly, or a slit or horn has no side. A cusp's side is decided by the curvatures. */
function cornerAt(edges: readonly Segment[], index: number): Corner | undefined {
  const before = edges[(index + edges.length - 1) % edges.length]!;
  const after = edges[index]!;
  const u = endDirection(before);
  const v = startDirection(after);
  const sine = cross(u, v);
  if (dot(u, v) > 0 ? Math.abs(sine) < SMOOTH : false) return undefined;
  const side = Math.abs(sine) > CUSP ? sine : -curvature(before) - curvature(after);
  return side === 0 ? undefined : { before, after, hand: side > 0 ? 1 : -1 };
}

type Cutter = (corner: Corner) => Cut | undefined;

/** The outline with the given corners replaced, what is left of its edges tagged as it was, the new ones not tagged; undefined where the cuts overlap on an edge or the new edges meet another. */
function cutCorners(
  outline: Outline,
  edges: readonly Segment[],
  corners: ReadonlyMap<number, Corner>,
  cutter: Cutter,
): Outline | undefined {
  const cuts = new Map<number, Cut>();
  for (const [i, corner] of corners) {
    const cut = cutter(corner);
    if (!cut) return undefined;
    cuts.set(i, cut);
  }
  const result: Vertex[] = [];
  const added: number[] = [];
  for (let i = 0; i < edges.length; i++) {
    const cut = cuts.get(i);
    for (const v of cut?.run ?? []) {
      added.push(result.length);
      result.push(v);
    }
    const left = 1 - (cut?.after ?? 0) - (cuts.get((i + 1) % edges.length)?.before ?? 0);
    if (left < -NOTHING) return undefined;
    if (left <= NOTHING) continue;
    const s = edges[i]!;
    const v = outline[i]!;
    const bulge = s.kind === 'line' ? 0 : left === 1 ? v.bulge : bulgeOf(s.sweep * left);
    result.push(vertex(cut?.to ?? v, bulge, v.mate));
  }
  return result.length > 1 && standClear(result, added) ? result : undefined;
}

/** Whether the edges at the given places meet no other edge but their neighbours, and those only at the shared end. */
function standClear(outline: Outline, places: readonly number[]): boolean {
  const edges = edgeTable(outline.length);
  addOutline(edges, outline, 1, TOUCH);
  return places.every(i => outline.every((_, k) => k === i || !meetAway(edges, i, k)));
}

function meetAway(e: Edges, a: number, b: number): boolean {
  let away = false;
  const shared = [
    [e.x0[a], e.y0[a], e.x1[b], e.y1[b]],
    [e.x1[a], e.y1[a], e.x0[b], e.y0[b]],
  ].filter(([x, y, u, v]) => x === u && y === v);
  meet(e, a, b, TOUCH, (x, y) => {
    if (!shared.some(([sx, sy]) => Math.hypot(x - sx!, y - sy!) < AT_END)) away = true;
  });
  return away;
}

/** The largest size up to `size` that fits, rounded down to a micrometre's thousandth and tried again. 0 when none does. */
function largest(size: Mm, fits: (size: Mm) => boolean): Mm {
  let [lo, hi] = [0, size];
  for (let k = 0; k < 80 && hi - lo > 1e-9 * hi; k++) {
    const mid = (lo + hi) / 2;
    if (fits(mid)) lo = mid;
    else hi = mid;
  }
  const rounded = [0, 1e-6, 1e-5].map(less => Math.floor((lo - less) * 1e6) / 1e6);
  return rounded.find(s => s > SMALLEST && fits(s)) ?? 0;
}

/** Cuts the corners or says how large a cut would fit. */
function treat(
  outline: Outline,
  field: string,
  size: Mm,
  corners: ReadonlyMap<number, Corner>,
  cutter: (size: Mm) => Cutter,
): Outline {
  requireRange(field, size, SMALLEST, LARGEST);
  if (corners.size === 0) return outline;
  const edges = segments(outline);
  const attempt = (s: Mm): Outline | undefined => cutCorners(outline, edges, corners, cutter(s));
  const done = attempt(size);
  if (done) return done;
  const most = largest(size, s => attempt(s) !== undefined);
  const [i] = corners.size === 1 ? corners.keys() : [];
  const where = i === undefined ? `${corners.size} corners` : `corner ${i} at (${outline[i]!.x}, ${outline[i]!.y})`;
  return refuse(field, `${size} mm on ${where}`, most > 0 ? `up to ${most} mm there` : 'none: nothing fits there');
}

function oneCorner(outline: Outline, index: number): ReadonlyMap<number, Corner> {
  if (!Number.isInteger(index) || index < 0 || index >= outline.length)
    refuse('index', index, `0 to ${outline.length - 1}, whole`);
  const corner = cornerAt(segments(outline), index);
  return corner
    ? new Map([[index, corner]])
    : refuse('index', `${index}, where the edges run on smoothly or back on each other`, 'a corner');
}

function allCorners(outline: Outline, which: Corners): ReadonlyMap<number, Corner> {
  const edges = segments(outline);
  const found = new Map<number, Corner>();
  for (const i of edges.keys()) {
    const corner = cornerAt(edges, i);
    if (corner && (which === 'all' || which === (corner.hand > 0 ? 'outside' : 'inside'))) found.set(i, corner);
  }
  return found;
}

const fillets =
  (radius: Mm): Cutter =>
  c =>
    filletCut(c.before, c.after, c.hand, radius);
const chamfers =
  (setback: Mm): Cutter =>
  c =>
    chamferCut(c.before, c.after, setback);

/** A corner rounded by the arc tangent to both its edges, lines or arcs, outside and inside corners and cusps.
 * @param index the vertex of the corner   @param radius mm, 1e-6 to 1e6
 * @returns the outline with the corner's vertex replaced by the arc's ends (and its middle past a half circle); an edge used up is left out
 * @throws Unusable when the radius does not fit between the neighbouring corners or the arc would meet another edge, naming the largest that fits;
 *   or when the vertex is no corner
 * Source: the circle tangent to two curves lies where their offsets by its radius meet. */
export const fillet = (outline: Outline, index: number, radius: Mm): Outline =>
  treat(outline, 'radius', radius, oneCorner(outline, index), fillets);

/** A corner cut off straight between the points of both its edges that lie the setback away from it, measured straight.
 * Parameters, result and errors as `fillet`. */
export const chamfer = (outline: Outline, index: number, setback: Mm): Outline =>
  treat(outline, 'setback', setback, oneCorner(outline, index), chamfers);

/** Every corner rounded at one radius; smooth joins stay. Errors as `fillet`: the largest named is the largest that fits all of them. */
export const filletAll = (outline: Outline, radius: Mm, which: Corners = 'all'): Outline =>
  treat(outline, 'radius', radius, allCorners(outline, which), fillets);

/** Every corner cut off at one setback; smooth joins stay. Errors as `fillet`. */
export const chamferAll = (outline: Outline, setback: Mm, which: Corners = 'all'): Outline =>
  treat(outline, 'setback', setback, allCorners(outline, which), chamfers);
