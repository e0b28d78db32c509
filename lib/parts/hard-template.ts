import { endDirection, startDirection } from '../geometry/along.js';
import { difference } from '../geometry/boolean.js';
import { dashes } from '../geometry/dashes.js';
import { distanceToSegment, locate } from '../geometry/locate.js';
import { area } from '../geometry/measure.js';
import { asCircle, type Outline, type Polyline, polygon, type Region, solid, vertex } from '../geometry/outline.js';
import { distance, type Point } from '../geometry/point.js';
import { polylineSegments, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { type LapLine, lapLines, middleOf } from './lap-lines.js';
import type { Drill, Face, Part, Score } from './part.js';

/** What templates are cut from, and with. */
export interface HardTemplateOptions {
  /** name and thickness of the thin board */
  readonly stock: string;
  readonly thickness: Mm;
  /** width of the cut, mm: a fine one cuts notches, a router's bit holes beside the edge */
  readonly kerf: Mm;
}

/** Common practice, no source: a notch takes a pencil's or a knife's point, a pricked hole an awl's. Lengths mm. */
const NOTCH = { deep: 3, wide: 3 };
const FINEST_FOR_NOTCHES: Mm = 0.6;
const PRICK = { fine: 1, coarse: 2 };
/** From an edge to the middle of a hole that stands for a notch; from hole to hole, wall to wall. */
const INSIDE: Mm = 4;
const APART: Mm = 1;
const DASH: Mm = 3;

interface End {
  readonly at: Point;
  /** away from the edge, along the line */
  readonly into: Point;
}

/** Where lap lines meet the part's edges. */
function ends({ line, closed }: LapLine): End[] {
  const edges = polylineSegments(line);
  const [first, last] = [edges[0], edges.at(-1)];
  if (closed || !first || !last) return [];
  const back = endDirection(last);
  return [
    { at: first.from, into: startDirection(first) },
    { at: last.to, into: { x: -back.x, y: -back.y } },
  ];
}

const along = ({ at, into }: End, by: Mm): Point => ({ x: at.x + by * into.x, y: at.y + by * into.y });

/** A V with its point on the lap line, as wide as it is deep, open over the edge. */
function notch({ at, into }: End): Region {
  const half = { x: (-into.y * NOTCH.wide) / 2, y: (into.x * NOTCH.wide) / 2 };
  const tip = along({ at, into }, NOTCH.deep);
  // on past the edge, on the same slant
  const left = { x: 2 * (at.x + half.x) - tip.x, y: 2 * (at.y + half.y) - tip.y };
  const right = { x: 2 * (at.x - half.x) - tip.x, y: 2 * (at.y - half.y) - tip.y };
  return solid(polygon([tip, left, right]));
}

/** The points to be pricked through: middles of discs, bores, holes and round pockets, corners of lap lines. */
function centres(part: Part, laps: readonly LapLine[]): Point[] {
  const holes = part.features.flatMap(f => (f.kind === 'drill' ? [f.at] : []));
  const rounds = [part.region.outer, ...part.region.openings].flatMap(o => asCircle(o)?.center ?? []);
  const corners = laps.flatMap(l => {
    const middle = middleOf(l);
    return middle ? [middle] : l.closed ? l.line.slice(1) : l.line.slice(1, -1);
  });
  return [...rounds, ...holes, ...corners];
}

/** Those that leave wood between each other and the edges. */
function pricked(region: Region, points: readonly Point[], diameter: Mm): Drill[] {
  const edges = [region.outer, ...region.openings].flatMap(segments);
  const kept: Point[] = [];
  for (const p of points) {
    const clear = edges.every(s => distanceToSegment(s, p) >= diameter / 2 + APART);
    const apart = kept.every(q => distance(p, q) >= diameter + APART);
    if (clear && apart && locate(region, p) === 'inside') kept.push(p);
  }
  return kept.map(at => ({ kind: 'drill', at, diameter, from: 'through', depth: 0 }));
}

const score = (line: Polyline): Score => ({ kind: 'score', face: 'front', line });

/** What is drawn for a face: lines of the front whole, of the back in dashes. */
const drawn = (lines: readonly Polyline[], face: Face): Score[] =>
  (face === 'front' ? lines : lines.flatMap(l => dashes(l, DASH))).map(score);

/** The lap lines of a face's pockets. */
const lapsOn = (part: Part, face: Face): LapLine[] =>
  part.features.flatMap(f => (f.kind === 'pocket' && f.face === face ? lapLines(part, f) : []));

function marks(part: Part): Score[] {
  const faces = ['front', 'back'] as const;
  return faces.flatMap(face => {
    const own = part.features.flatMap(f => (f.kind === 'score' && f.face === face ? [f.line] : []));
    return drawn([...lapsOn(part, face).map(l => l.line), ...own], face);
  });
}

const rounds = (part: Part): Score[] =>
  part.region.openings.filter(o => asCircle(o)).map(o => score([...o, vertex(o[0]!)]));

/** A template meets no other piece. */
const bare = (outline: Outline): Outline => outline.map(v => vertex(v, v.bulge));

const largest = (regions: readonly Region[]): Region => regions.reduce((a, b) => (area(b) > area(a) ? b : a));

/** A part's template of thin board, to be laid on the wood and traced: its outline, notches where lap lines meet an edge (with a router's bit, which
 * cannot cut them, holes on the lap line a little inside the edge), small holes to prick centres and corners through, round openings and
 * lap lines as marks, those of the back in dashes, for the template may be turned over. Other openings stay openings. Not lettered. */
export function hardTemplate(part: Part, o: HardTemplateOptions): Part {
  const fine = o.kerf <= FINEST_FOR_NOTCHES;
  const diameter = fine ? PRICK.fine : PRICK.coarse;
  const laps = [...lapsOn(part, 'front'), ...lapsOn(part, 'back')];
  const met = laps.flatMap(ends);
  const { outer, openings } = part.region;
  const whole = { outer: bare(outer), openings: openings.filter(w => !asCircle(w)).map(bare) };
  const region = fine && met.length > 0 ? largest(difference([whole], met.map(notch))) : whole;
  const beside = fine ? [] : met.map(e => along(e, INSIDE));
  const holes = pricked(region, [...centres(part, laps), ...beside], diameter);
  const { grain: _, side: __, end: ___, bevel: ____, ...flat } = part;
  return {
    ...flat,
    name: `${part.name}, template`,
    quantity: 1,
    stock: o.stock,
    thickness: o.thickness,
    region,
    features: [...holes.map(h => ({ ...h, depth: o.thickness })), ...rounds(part), ...marks(part)],
  };
}

/** The template of a turned piece's second side; undefined where it has none. */
export function sideTemplate({ side, ...part }: Part, o: HardTemplateOptions): Part | undefined {
  if (!side) return undefined;
  const marked = side.marks.map(score);
  const seen: Part = {
    ...part,
    id: `${part.id}-side`,
    name: `${part.name}, side`,
    region: solid(side.outline),
    features: marked,
  };
  return hardTemplate(seen, o);
}
