import library, { type Path, type Paths } from 'clipper-lib';
import { frameOf } from '../../lib/cutting/cut.js';
import type { CutPart } from '../../lib/cutting/cut-part.js';
import type { Relief } from '../../lib/cutting/relief.js';
import { endDirection, pointAlong, startDirection } from '../../lib/geometry/along.js';
import { movePoint } from '../../lib/geometry/motion.js';
import { add, distance, type Point, scale } from '../../lib/geometry/point.js';
import { clearings } from '../../lib/parts/clearings.js';
import { type MatingEdge, matingCorners, matingEdges } from '../../lib/parts/mates.js';
import { cutWidth } from '../../lib/stock/stock.js';
import { toDegrees } from '../../lib/units/length.js';
import { reliefReach } from './cut-faults.js';
import { type Solid, UNIT } from './solid.js';
import { type Assembled, overlapsOf, type PlacedPiece, placedPieces, placedSection } from './solids.js';
import { both, fineArea, grown } from './sweep.js';
import type { SweptPart } from './swept-part.js';

/** What cut pieces may take of each other's room, and how far a gap may be off, mm. */
const OVERLAP = 0.002;
const OFF_FIT = 0.005;
/** Polygons in place of arcs, mm. */
const ROUNDING = 0.001;

const { Clipper } = library;

/** A cut piece as a solid with its first face up. */
export function cutSolid({ part }: CutPart, swept: SweptPart): Solid {
  const { thickness, bevel = 0 } = part;
  const cleared = swept.pockets.map(({ face, depth, area }) =>
    face === 'first' ? { low: thickness - depth, high: thickness, area } : { low: 0, high: depth, area },
  );
  return { thickness, lean: Math.tan(bevel), plate: swept.plate, cleared, sections: new Map() };
}

const moved = (paths: Paths, mirrored: boolean): Paths =>
  mirrored ? paths.map(p => p.map(({ X, Y }) => ({ X: -X, Y })).reverse()) : paths;

/** The finished piece as a solid with its first face up. */
export function finishedSolid({ part, first }: CutPart): Solid {
  const mirrored = first.face === 'back';
  const { thickness, bevel = 0 } = part;
  const cleared = clearings({ ...part, features: part.features.filter(f => f.kind === 'pocket') }).map(c => ({
    low: mirrored ? thickness - c.high : c.low,
    high: mirrored ? thickness - c.low : c.high,
    area: moved(fineArea(c.area), mirrored),
  }));
  const plate = moved(fineArea(part.region), mirrored);
  return { thickness, lean: Math.tan(bevel), plate, cleared, sections: new Map() };
}

/** Pieces whose cut shapes take the same room, by more than they are pressed. @param press mm */
export function interferences(
  solids: ReadonlyMap<string, Solid>,
  assembly: Assembled['assembly'],
  press: number,
): string[] {
  const by = -(OVERLAP + press) / 2;
  const shared = (a: Paths, b: Paths): number =>
    grown(both(a, b), by).reduce((sum, p) => sum + Math.abs(Clipper.Area(p)), 0);
  return overlapsOf(solids, assembly, shared).map(
    ({ a, b, z }) => `${assembly[a]!.part} and ${assembly[b]!.part} meet at height ${z.toFixed(2)}`,
  );
}

/** How far along a line from a point polygons are crossed, mm, and whether into them. */
function crossings(paths: Paths, from: Point, along: Point): { at: number; into: boolean }[] {
  const [ox, oy] = [from.x * UNIT, from.y * UNIT];
  return paths.flatMap((path: Path) =>
    path.flatMap((p, i) => {
      const q = path[(i + 1) % path.length]!;
      const side = (v: { X: number; Y: number }): number => along.x * (v.Y - oy) - along.y * (v.X - ox);
      const [s, t] = [side(p), side(q)];
      if (s > 0 === t > 0) return [];
      const share = s / (s - t);
      const x = p.X + (q.X - p.X) * share - ox;
      const y = p.Y + (q.Y - p.Y) * share - oy;
      // wood lies on the left of a polygon's edge: an edge that crosses from left to right is entered
      return [{ at: (x * along.x + y * along.y) / UNIT, into: s > 0 }];
    }),
  );
}

/** The wall nearest to a point on a line through it. */
function wall(paths: Paths, from: Point, along: Point, into: boolean): number | undefined {
  const found = crossings(paths, from, along).filter(c => c.into === into && Math.abs(c.at) < 0.6);
  return found.sort((a, b) => Math.abs(a.at) - Math.abs(b.at))[0]?.at;
}

interface Face {
  readonly at: Point;
  readonly out: Point;
}

/** A point of an edge and the way out of the wood there. */
function faceAt({ of, segment }: MatingEdge, share: number): Face {
  const chord = add(startDirection(segment), endDirection(segment));
  const u = scale(chord, 1 / Math.hypot(chord.x, chord.y));
  const right = { x: u.y, y: -u.x };
  return { at: pointAlong(segment, share), out: of.where === 'pocket' ? scale(right, -1) : right };
}

/** A gap between two pieces across a joint. */
export interface Gap {
  readonly joint: string;
  readonly pieces: string;
  readonly finished: number;
  readonly cut: number;
}

/** Corners of a part that are opened, and how far along the walls that reaches. */
const opened = ({ part, cutter }: CutPart, relief: Relief): { at: Point; reach: number }[] =>
  matingCorners(part)
    .filter(c => c.side === 'inside')
    .map(c => {
      const r = cutWidth(cutter) / 2;
      return { at: c.at, reach: relief === 'side' ? reliefReach(c.turn, r) : 2 * r * Math.sin(c.turn / 2) + 0.2 };
    });

/** Gaps across the joints of lying pieces, measured at the middle and near the ends of every edge that meets another piece, between cut
 * shapes and between finished ones. Where a corner is opened nothing is measured. One piece of each part is looked at from. */
export function gaps(
  cuts: readonly CutPart[],
  swept: ReadonlyMap<string, Solid>,
  assembly: Assembled['assembly'],
  relief: Relief,
): Gap[] {
  const byId = new Map(cuts.map(c => [c.part.id, c]));
  const finished = placedPieces(new Map(cuts.map(c => [c.part.id, finishedSolid(c)])), assembly);
  const cut = placedPieces(swept, assembly);
  const place = (i: number, p: Point): Point => {
    const e = assembly[i]!;
    const own = movePoint(p, frameOf(byId.get(e.part)!.first.face));
    return movePoint(own, { mirrored: e.flipped, turn: (e.turn * Math.PI) / 180, x: e.x, y: e.y });
  };
  const seen = new Set<string>();
  const found: Gap[] = [];
  assembly.forEach((e, a) => {
    if (e.stands || seen.has(e.part)) return;
    seen.add(e.part);
    const own = byId.get(e.part)!;
    for (const edge of matingEdges(own.part))
      for (const share of [0.5, 0.15, 0.85]) {
        const { at, out } = faceAt(edge, share);
        if (opened(own, relief).some(c => distance(c.at, at) < c.reach)) continue;
        const from = place(a, at);
        const tip = place(a, add(at, out));
        const along = { x: tip.x - from.x, y: tip.y - from.y };
        found.push(...gapsAt(a, from, along, edge.mate));
      }
  });
  return found;

  function gapsAt(a: number, from: Point, along: Point, joint: string): Gap[] {
    return assembly.flatMap((other, b): Gap[] => {
      const [p, q] = [cut[a]!, cut[b]!];
      const low = Math.max(p.low, q.low);
      const high = Math.min(p.high, q.high);
      if (a === b || high - low < 0.1) return [];
      if (from.x * UNIT < q.box[0] - UNIT || from.x * UNIT > q.box[2] + UNIT) return [];
      if (from.y * UNIT < q.box[1] - UNIT || from.y * UNIT > q.box[3] + UNIT) return [];
      const near =
        !other.stands && opened(byId.get(other.part)!, relief).some(c => distance(place(b, c.at), from) < c.reach);
      if (near) return [];
      const heights = [low, ...[...p.breaks, ...q.breaks].filter(z => z > low && z < high), high].sort((x, y) => x - y);
      return heights.slice(1).flatMap((top, i): Gap[] => {
        if (top - heights[i]! < 0.1) return [];
        const z = (top + heights[i]!) / 2;
        const gap = (pieces: readonly PlacedPiece[]): number | undefined => {
          const mine = wall(placedSection(pieces[a]!, z), from, along, false);
          const theirs = wall(placedSection(pieces[b]!, z), from, along, true);
          return mine === undefined || theirs === undefined ? undefined : theirs - mine;
        };
        const [wanted, got] = [gap(finished), gap(cut)];
        if (wanted === undefined || got === undefined) return [];
        return [{ joint, pieces: `${assembly[a]!.part} and ${other.part}`, finished: wanted, cut: got }];
      });
    });
  }
}

/** Gaps that are not the fit's: a joint has its fit in one gap, half of it on either side, or faces that touch.
 * @param fits clearance by joint, mm */
export const gapFaults = (all: readonly Gap[], fits: Readonly<Record<string, number>> = {}): string[] =>
  all.flatMap(({ joint, pieces, finished, cut }) => {
    const fit = fits[joint] ?? 0;
    const planned = [0, fit / 2, fit].some(gap => Math.abs(gap - finished) < ROUNDING);
    if (planned && Math.abs(cut - finished) <= OFF_FIT) return [];
    return [`${pieces}: ${joint} gap ${cut.toFixed(4)} cut, ${finished.toFixed(4)} finished; fit ${fit}`];
  });

/** Where a model's pieces sit, as its report says. */
export const assemblyOf = (
  pieces: readonly {
    readonly part: string;
    readonly turn: number;
    readonly x: number;
    readonly y: number;
    readonly z: number;
    readonly stands?: true;
  }[],
  cuts: readonly CutPart[],
): Assembled['assembly'] =>
  pieces.map(p => ({
    ...p,
    turn: toDegrees(p.turn),
    flipped: cuts.find(c => c.part.id === p.part)!.first.face === 'back',
  }));
