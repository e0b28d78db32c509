import type { Paths } from 'clipper-lib';
import { frameOf } from '../../lib/cutting/cut.js';
import type { Finding } from '../../lib/findings/finding.js';
import { endDirection, startDirection } from '../../lib/geometry/along.js';
import { movePoint, moveRegion } from '../../lib/geometry/motion.js';
import type { Outline, Region } from '../../lib/geometry/outline.js';
import { cross, distance, dot, type Point } from '../../lib/geometry/point.js';
import { segments } from '../../lib/geometry/segment.js';
import type { Placement } from '../../lib/nesting/sheet.js';
import { matingCorners } from '../../lib/parts/mates.js';
import type { Part, Pocket } from '../../lib/parts/part.js';
import type { Method } from '../../lib/stock/stock.js';
import { both, disc, either, fineArea, grown, minus, placeOf } from './sweep.js';
import type { SweptPart } from './swept-part.js';

/** What a cut may be off the finished part, mm. */
const BAR = 0.002;
/** In a pocket a corner is opened as for a cutter this much wider on each side, mm. */
const ROOM = 0.05;
const SPUR = 0.05;

/** How far from its corner relief may cut, mm: to the side the cutter takes a strip as wide as itself along one wall, which is met by the
 * other one 2 r / sin(angle between them) from the corner. */
export const reliefReach = (turn: number, radius: number): number =>
  (2 * (radius + ROOM)) / Math.sin(Math.min(Math.PI - turn, Math.PI / 2)) + SPUR;

/** A corner of a part, seen with its first face up. */
interface Corner {
  readonly at: Point;
  /** how far the wall turns: a cutter of radius r leaves wood over r tan(turn / 2) of it */
  readonly turn: number;
  /** whether it is to be opened */
  readonly opened: boolean;
}

const outlinesOf = (r: Region): Outline[] => [r.outer, ...r.openings];

/** Corners that wood stands round. @param hand the side of travel the wood lies on: 1 left */
function insideCorners(outline: Outline, hand: 1 | -1): { at: Point; turn: number }[] {
  const edges = segments(outline);
  return edges.flatMap((s, i) => {
    const u = endDirection(edges[(i + edges.length - 1) % edges.length]!);
    const v = startDirection(s);
    const turn = -hand * Math.atan2(cross(u, v), dot(u, v));
    return turn > 1e-6 ? [{ at: s.from, turn }] : [];
  });
}

function cornersOf(part: Part, findings: readonly Finding[], relieved: boolean): Corner[] {
  const mating = matingCorners(part).filter(c => c.side === 'inside');
  const kept = findings.filter(f => f.rule === 'relief-through').map(f => f.place!.at);
  const pockets = part.features.filter((f): f is Pocket => f.kind === 'pocket');
  const all = [
    ...outlinesOf(part.region).flatMap(o => insideCorners(o, 1)),
    ...pockets.flatMap(p => outlinesOf(p.area).flatMap(o => insideCorners(o, -1))),
  ];
  const isOpened = (p: Point): boolean =>
    relieved && mating.some(c => distance(c.at, p) < 1e-6) && !kept.some(k => distance(k, p) < 1e-6);
  return all.map(c => ({ ...c, opened: isOpened(c.at) }));
}

const worse = (area: Paths): string[] => grown(area, -BAR / 2).map(placeOf);

/** How a swept piece differs from the finished part by more than the bar: wood missing or left over, away from where a corner is opened
 * (missing) or cannot be reached (left over). @param relieved whether mating corners are to be square */
export function cutFaults(
  swept: SweptPart,
  { cut }: Placement,
  radius: number,
  method: Method,
  findings: readonly Finding[],
  relieved: boolean,
): string[] {
  const { part, first } = cut;
  const frame = frameOf(first.face);
  const corners = cornersOf(part, findings, relieved).map(c => ({ ...c, at: movePoint(c.at, frame) }));
  const relief = corners.filter(c => c.opened).map(c => disc(c.at.x, c.at.y, reliefReach(c.turn, radius)));
  const fillets = corners
    .filter(c => !c.opened)
    .map(c => disc(c.at.x, c.at.y, radius * Math.tan(Math.min(c.turn, 2.8) / 2) * 1.05 + 0.01));
  const finished = fineArea(cut.finished);
  const tell = (what: string, area: Paths): string[] => worse(area).map(at => `${part.id}: ${what} at ${at}`);
  const faults = [
    ...tell('wood missing', minus(minus(finished, swept.plate), relief)),
    ...tell('wood left over', minus(minus(swept.plate, finished), fillets)),
  ];
  if (method !== 'router') return faults;
  const pockets = part.features.filter((f): f is Pocket => f.kind === 'pocket');
  const area = (p: Pocket): Paths => fineArea(moveRegion(p.area, frame));
  const together = (list: readonly Pocket[]): Paths => list.map(area).reduce<Paths>((a, b) => either(a, b), []);
  const depths = new Set(pockets.map(p => `${p.face === first.face ? 'first' : 'second'} ${p.depth.toFixed(6)}`));
  for (const key of depths) {
    const [face, depth] = key.split(' ');
    const on = pockets.filter(p => (p.face === first.face ? 'first' : 'second') === face);
    const wanted = together(on.filter(p => p.depth.toFixed(6) === depth));
    const deeper = together(on.filter(p => p.depth > Number(depth) - 1e-5));
    const cleared = swept.pockets
      .filter(p => p.face === face && Math.abs(p.depth - Number(depth)) < 1e-5)
      .reduce<Paths>((a, p) => either(a, p.area), []);
    faults.push(
      ...tell(`wood left in a pocket ${depth} deep`, minus(minus(wanted, cleared), fillets)),
      ...tell(`wood missing round a pocket ${depth} deep`, minus(both(cleared, finished), either(deeper, relief))),
    );
  }
  return faults;
}
