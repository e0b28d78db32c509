import { intersection } from '../geometry/boolean.js';
import { windingNumber } from '../geometry/locate.js';
import { moveOutline } from '../geometry/motion.js';
import { type Region, solid } from '../geometry/outline.js';
import { add, ORIGIN, type Point, scale, subtract } from '../geometry/point.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Placed } from './placed.js';

/** Pieces of one kind at one height, that move together when a prop is taken apart along its axis. */
export interface ExplodedLayer {
  readonly pieces: readonly Spread[];
  /** middle of where it is seen from the front, and how far it reaches from there */
  readonly middle: Point;
  readonly reach: Mm;
  readonly low: Mm;
  readonly high: Mm;
}

/** A piece, and how far it is moved away from the others of its layer. */
export interface Spread {
  readonly placed: Placed;
  readonly by: Point;
  /** its middle once it is moved */
  readonly middle: Point;
}

/** How far pieces of a layer move from its middle, as a share of how far they are from it. */
const APART = 0.16;
/** Where pieces overlap they move so many times as far, at most. */
const MOST = 5;

const SAME_HEIGHT: Mm = 1e-3;

const hasPocket = (part: Part, face: 'front' | 'back'): boolean =>
  part.features.some(f => f.kind === 'pocket' && f.face === face);

/** What is open to the front only takes what is laid into it: of pieces that cross in half laps, the upper ones are open to the back only. */
const liesOver = ({ part, piece }: Placed): boolean =>
  !piece.stands && hasPocket(part, 'back') && !hasPocket(part, 'front');

interface Middle {
  readonly placed: Placed;
  readonly at: Point;
}

/** The middle of several points. */
const meanOf = (points: readonly Point[]): Point => scale(points.reduce(add, ORIGIN), 1 / points.length);

/** The middle of a piece's corners: that of its box would lie beside an arc. */
const middleOf = (placed: Placed): Middle => ({ placed, at: meanOf(placed.outlines.flat()) });

function spreadBy(middles: readonly Middle[], middle: Point, apart: number): Spread[] {
  return middles.map(({ placed, at }) => {
    const by = middles.length > 1 ? scale(subtract(at, middle), apart) : { x: 0, y: 0 };
    return { placed, by, middle: add(at, by) };
  });
}

const outerOf = ({ placed, by }: Spread): Region =>
  solid(moveOutline(placed.outlines[0] ?? [], { turn: 0, x: by.x, y: by.y }));

/** Whether a piece still lies over another, as scarfed felloes do. Only pieces with pockets on both faces can. */
function overlap(spread: readonly Spread[]): boolean {
  const both = spread.filter(({ placed: { part } }) => hasPocket(part, 'front') && hasPocket(part, 'back'));
  return both.some((a, i) => both.slice(i + 1).some(b => intersection([outerOf(a)], [outerOf(b)]).length > 0));
}

function layerOf(pieces: readonly Placed[]): ExplodedLayer {
  const middles = pieces.map(middleOf);
  const middle = meanOf(middles.map(m => m.at));
  let spread = spreadBy(middles, middle, APART);
  for (let n = 2; n <= MOST && overlap(spread); n += 1) spread = spreadBy(middles, middle, n * APART);
  const reach = Math.max(
    ...spread.flatMap(s =>
      s.placed.outlines.flat().map(v => Math.hypot(v.x + s.by.x - middle.x, v.y + s.by.y - middle.y)),
    ),
  );
  const low = Math.min(...pieces.map(p => p.low));
  const high = Math.max(...pieces.map(p => p.high));
  return { pieces: spread, middle, reach, low, high };
}

/** At one height, what is open to the front comes first and takes what is laid into it; what is open to the back only comes last. */
function rank({ pieces }: ExplodedLayer): number {
  if (pieces.some(s => hasPocket(s.placed.part, 'front'))) return 0;
  return pieces.some(s => hasPocket(s.placed.part, 'back')) ? 2 : 1;
}

/** Pieces of one kind at one height as one layer, or as two where some are laid over others, as bars that cross in half laps are. */
function parted(pieces: readonly Placed[]): (readonly Placed[])[] {
  const over = pieces.filter(liesOver);
  const under = pieces.filter(p => !liesOver(p));
  const outline = ({ outlines }: Placed): Region[] => [solid(outlines[0] ?? [])];
  const crossed = over.some(a => under.some(b => intersection(outline(a), outline(b)).length > 0));
  return crossed ? [under, over] : [pieces];
}

/** A prop's pieces by kind and height, rearmost first. */
export function explodedLayers(pieces: readonly Placed[]): ExplodedLayer[] {
  const height = (z: Mm): number => Math.round(z / SAME_HEIGHT);
  const groups = new Map<string, Placed[]>();
  for (const p of pieces) {
    const key = `${p.part.kind} ${height(p.low)} ${height(p.high)}`;
    groups.set(key, [...(groups.get(key) ?? []), p]);
  }
  const order = (a: ExplodedLayer, b: ExplodedLayer): number =>
    height((a.low + a.high) / 2) - height((b.low + b.high) / 2) || rank(a) - rank(b) || a.reach - b.reach;
  return [...groups.values()].flatMap(parted).map(layerOf).sort(order);
}

/** How many corners are asked for, at most. */
const ASKED = 24;

/** Whether a layer over another hides most of it, seen from the front, before either is lifted. */
export function isCovered(under: ExplodedLayer, over: ExplodedLayer): boolean {
  const corners = under.pieces.flatMap(s => s.placed.outlines[0] ?? []);
  const some = corners.filter((_, i) => i % Math.ceil(corners.length / ASKED) === 0);
  const hidden = some.filter(p =>
    over.pieces.some(({ placed: { outlines } }) => outlines.reduce((n, o) => n + windingNumber(o, p), 0) > 0),
  );
  return hidden.length > some.length / 2;
}
