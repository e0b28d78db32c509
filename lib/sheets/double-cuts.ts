import type { Finding } from '../findings/finding.js';
import { type Box, segmentBounds } from '../geometry/measure.js';
import type { Polyline } from '../geometry/outline.js';
import { cross, distance, dot, type Point, scale, subtract } from '../geometry/point.js';
import { type ArcSegment, type LineSegment, type Segment, segments } from '../geometry/segment.js';
import { SAME_POINT } from '../geometry/tolerance.js';
import type { Mm } from '../units/length.js';
import type { Work } from './work.js';

/** Two cuts nearer than this are one: far below any cutter, above rounding. */
const ONE_CUT: Mm = 0.02;
/** Shorter stretches are corners that touch. */
const SHORTEST: Mm = 0.5;

interface Edge {
  readonly piece: number;
  readonly s: Segment;
  readonly box: Box;
}

/** How far two edges run on one line, mm; 0 where they do not. */
function sharedLine(a: LineSegment, b: LineSegment): Mm {
  const size = distance(a.from, a.to);
  const along = scale(subtract(a.to, a.from), 1 / size);
  const off = (p: Point): Mm => Math.abs(cross(along, subtract(p, a.from)));
  if (off(b.from) > ONE_CUT || off(b.to) > ONE_CUT) return 0;
  const [u, v] = [dot(along, subtract(b.from, a.from)), dot(along, subtract(b.to, a.from))];
  return Math.max(0, Math.min(size, Math.max(u, v)) - Math.max(0, Math.min(u, v)));
}

/** How far two arcs run on one circle, mm. */
function sharedArc(a: ArcSegment, b: ArcSegment): Mm {
  if (distance(a.center, b.center) > ONE_CUT || Math.abs(a.radius - b.radius) > ONE_CUT) return 0;
  const low = (s: ArcSegment): number => (s.sweep < 0 ? s.start + s.sweep : s.start);
  const shift = 2 * Math.PI * Math.round((low(a) - low(b)) / (2 * Math.PI));
  const shared = [-1, 0, 1].map(turn => {
    const from = low(b) + shift + turn * 2 * Math.PI;
    return Math.min(low(a) + Math.abs(a.sweep), from + Math.abs(b.sweep)) - Math.max(low(a), from);
  });
  return a.radius * Math.max(0, ...shared);
}

function shared(a: Segment, b: Segment): Mm {
  if (a.kind === 'line') return b.kind === 'line' ? sharedLine(a, b) : 0;
  return b.kind === 'arc' ? sharedArc(a, b) : 0;
}

const touch = (a: Box, b: Box): boolean =>
  a.minY <= b.maxY + ONE_CUT && b.minY <= a.maxY + ONE_CUT && a.minX <= b.maxX + ONE_CUT && b.minX <= a.maxX + ONE_CUT;

function profileEdges(works: readonly Work[]): Edge[] {
  return works
    .flatMap(w =>
      (w.kind === 'inside' || w.kind === 'outside') && w.piece !== undefined
        ? segments(w.outline).map(s => ({ piece: w.piece!, s, box: segmentBounds(s) }))
        : [],
    )
    .sort((a, b) => a.box.minX - b.box.minX);
}

/** A stretch that two pieces' profiles both cut. */
export interface DoubleCut {
  readonly pieces: readonly [number, number];
  readonly at: Point;
  readonly length: Mm;
}

/** Where profiles of different pieces run on one line or one circle, nearer than 0.02 mm: it would be cut twice. */
export function doubleCuts(works: readonly Work[]): DoubleCut[] {
  const edges = profileEdges(works);
  return edges.flatMap((a, i) => {
    const found: DoubleCut[] = [];
    for (let j = i + 1; j < edges.length && edges[j]!.box.minX <= a.box.maxX + ONE_CUT; j++) {
      const b = edges[j]!;
      if (a.piece === b.piece || !touch(a.box, b.box)) continue;
      const length = shared(a.s, b.s);
      if (length >= SHORTEST) found.push({ pieces: [a.piece, b.piece], at: b.s.from, length });
    }
    return found;
  });
}

const mm = (value: Mm): string => `${Number(value.toFixed(1))} mm`;

/** What is said about double cuts: a word for each pair of pieces. @param name of a piece */
export function doubleCutFindings(
  cuts: readonly DoubleCut[],
  sheet: string,
  name: (piece: number) => string,
): Finding[] {
  const pairs = new Map<string, DoubleCut[]>();
  for (const cut of cuts) {
    const key = [...cut.pieces].sort((a, b) => a - b).join(' ');
    pairs.set(key, [...(pairs.get(key) ?? []), cut]);
  }
  return [...pairs.values()].map(([first, ...more]) => {
    const { pieces, at } = first!;
    const value = [first!, ...more].reduce((sum, c) => sum + c.length, 0);
    const message = `${sheet}: ${name(pieces[0])} and ${name(pieces[1])} share a cut of ${mm(value)} near (${mm(at.x)}, ${mm(at.y)}): it is cut twice; leave more room between parts or take one of the lines out`;
    return { level: 'warn', rule: 'double-cut', where: 'stock', message, value, limit: ONE_CUT };
  });
}

/** A mark without edges of no length. */
const withoutStubs = (line: Polyline): Polyline =>
  line.filter((v, i) => i === line.length - 1 || distance(v, line[i + 1]!) > SAME_POINT);

/** Marks with their doubled points taken out; a mark that is nothing else is no mark. */
const tidy = (works: readonly Work[]): Work[] =>
  works.flatMap((work): Work[] => {
    if (work.kind !== 'score') return [work];
    const line = withoutStubs(work.line);
    return line.length > 1 ? [{ ...work, line }] : [];
  });

/** What tells one piece of work from another, to the micrometre of its place. */
function sameness(work: Work): string {
  const points = (line: readonly Point[]): string =>
    line
      .map(p => `${Math.round(p.x * 1e6)},${Math.round(p.y * 1e6)}`)
      .sort()
      .join(' ');
  switch (work.kind) {
    case 'inside':
    case 'outside':
      return `profile ${work.outline.map(v => Math.round(Math.abs(v.bulge) * 1e9)).sort()} ${points(work.outline)}`;
    case 'pocket':
      return `pocket ${work.depth} ${points(work.area.outer)} ${work.area.openings.map(points)}`;
    case 'drill':
      return `drill ${work.diameter} ${points([work.at])}`;
    case 'score':
      return `score ${work.line.map(v => Math.round(Math.abs(v.bulge) * 1e9)).sort()} ${points(work.line)}`;
    case 'label':
      return `label ${work.label.text} ${points([work.label.at])} ${work.piece}`;
    default:
      return work satisfies never;
  }
}

/** Every piece of work once, and none of no length. */
export function once(works: readonly Work[]): Work[] {
  const seen = new Set<string>();
  return tidy(works).filter(work => {
    const key = sameness(work);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
