import { vertex } from '../../geometry/outline.js';
import { type Point, polar } from '../../geometry/point.js';
import { markBiscuits } from '../../joints/biscuit.js';
import { lapRim } from '../../joints/lap.js';
import { felloe, looseFelloe } from '../../parts/felloe.js';
import type { Face, Part, Score } from '../../parts/part.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft, Lettering } from '../drafts.js';
import { type Arc, arcsBetween, holds, PIN_WALL, pinAngles, pinDiameter, pinned, pinPair } from '../registration.js';
import { layerSeams, ringOfSeams, wrap } from '../seams.js';
import { cutThrough, rimSlabs, type Slab } from './layers.js';
import type { HelmSizes } from './sizes.js';

const TURN = 2 * Math.PI;

/** Angles of the spokes' centre lines, the first at 0; the assembled wheel is turned so that it points up. */
export const spokeAngles = (s: HelmSizes): Radians[] => ringOfSeams(s.spokes, 0);

/** Width of a lap in the rim, wall to wall. */
export const lapWidth = (s: HelmSizes): Mm => s.width + s.fit.lap;

/** Seam angles of every layer that has seams, back to front; a layer the laps cut through has none. */
export function seamsByLayer(s: HelmSizes): Radians[][] {
  const seamed = rimSlabs(s).filter(slab => !cutThrough(slab)).length;
  return layerSeams(seamed, s.felloes, s.spokes, s.seam.first).map(first => ringOfSeams(s.felloes, first));
}

/** A piece of one layer: the stretch of rim it covers, and its slab. */
interface RimPiece extends Arc {
  readonly slab: Slab;
}

const pieceAngle = (a: Arc): Radians => a.from + a.sweep / 2;

function rimPieces(s: HelmSizes): RimPiece[] {
  const seams = seamsByLayer(s);
  let seamed = 0;
  return rimSlabs(s).flatMap(slab => {
    const cuts = cutThrough(slab) ? spokeAngles(s) : seams[seamed++]!;
    return cuts.map(from => ({ from, sweep: TURN / cuts.length, slab }));
  });
}

/** Angles of lines relative to a piece's middle, those only that come near it. */
const seenFrom = (piece: Arc, angles: readonly Radians[], margin: Radians): Radians[] =>
  angles
    .map(a => wrap(a - pieceAngle(piece) + Math.PI) - Math.PI)
    .filter(a => Math.abs(a) < piece.sweep / 2 + margin)
    .sort((a, b) => a - b);

/** Largest radius of a routed edge on the wheel; 0 for none. */
export const largestBit = (s: HelmSizes): Mm =>
  Math.max(0, ...[s.edges.rim, s.edges.trim, s.edges.hub].map(e => e?.radius ?? 0));

/** Where the router must stop before a lap: short marks on both edges of the rim and both faces, parallel to the spoke. */
function stopMarks(s: HelmSizes, piece: Arc, spokes: readonly Radians[]): Score[] {
  const off = s.width / 2 + largestBit(s);
  const tick = Math.min(12, (s.outer - s.inner) / 4);
  const along = (radius: Mm): Mm => Math.sqrt(radius * radius - off * off);
  const runs: [Mm, Mm][] = [
    [along(s.inner), along(s.inner) + tick],
    [along(s.outer) - tick, along(s.outer)],
  ];
  const marks = spokes.flatMap(angle =>
    [-1, 1].flatMap(side =>
      runs.map(([a, b]): [Point, Point] => {
        const end = (x: Mm): Point => polar(Math.hypot(x, off), Math.PI / 2 + angle + side * Math.atan2(off, x));
        return [end(a), end(b)];
      }),
    ),
  );
  const inside = (p: Point): boolean => Math.abs(Math.atan2(-p.x, p.y)) < piece.sweep / 2;
  const kept = marks.filter(m => m.every(inside));
  return (['front', 'back'] as Face[]).flatMap(face =>
    kept.map((m): Score => ({ kind: 'score', face, line: m.map(p => vertex(p)) })),
  );
}

/** Lettering goes in the middle of the widest stretch of a piece that no lap crosses. */
function letteringOn(s: HelmSizes, piece: Arc, laps: readonly Radians[]): Lettering {
  const cuts = [-piece.sweep / 2, ...laps.filter(a => Math.abs(a) < piece.sweep / 2), piece.sweep / 2];
  const gaps = cuts.slice(1).map((to, i) => ({ at: (to + cuts[i]!) / 2, width: to - cuts[i]! }));
  const clear = gaps.reduce((w, g) => (g.width > w.width + 1e-9 ? g : w));
  const at = polar((s.inner + s.outer) / 2, Math.PI / 2 + clear.at);
  const length = (rimSlabs(s).length > 1 ? 0.45 : 0.8) * (s.inner * clear.width - lapWidth(s));
  const band = s.outer - s.inner;
  const betweenPins = rimSlabs(s).length > 1 ? (0.4 * band - pinDiameter(band, s.width)) / 2 : band / 6;
  return { at, height: Math.min(12, betweenPins), length, turn: Math.atan2(-at.x, at.y) };
}

function felloeOf(s: HelmSizes, piece: RimPiece): Part {
  const base = {
    outer: s.outer,
    inner: s.inner,
    thickness: piece.slab.thickness,
    stock: s.rim.stock.name,
    grained: s.rim.stock.kind === 'board',
  };
  if (cutThrough(piece.slab))
    return looseFelloe({ ...base, between: piece.sweep, lap: lapWidth(s), id: 'felloe-loose', name: 'Loose felloe' });
  return felloe({ ...base, sweep: piece.sweep });
}

/** Pins through all layers, so that every loose piece of the rim has two. */
export function rimPins(s: HelmSizes): Radians[] {
  const pieces = rimPieces(s);
  if (rimSlabs(s).length === 1) return [];
  const margin = (pinDiameter(s.outer - s.inner, s.width) / 2 + PIN_WALL) / s.inner;
  const lap = Math.asin(lapWidth(s) / 2 / s.inner);
  const walls = spokeAngles(s).flatMap(a => [a - lap, a + lap]);
  const inLap = (a: Arc): boolean =>
    spokeAngles(s).some(x => Math.abs(wrap(pieceAngle(a) - x + Math.PI) - Math.PI) < lap);
  const free = arcsBetween([...walls, ...seamsByLayer(s).flat()]).filter(a => !inLap(a) && a.sweep > 2 * margin);
  return pinAngles(pieces, free);
}

/** How many pieces of a built-up rim have no stretch wide enough for a pin. */
export function piecesWithoutPins(s: HelmSizes): number {
  if (rimSlabs(s).length === 1) return 0;
  const pins = rimPins(s);
  return rimPieces(s).filter(piece => !pins.some(angle => holds(piece, angle))).length;
}

function draft(s: HelmSizes, piece: RimPiece, pins: readonly Radians[]): Draft {
  const turn = pieceAngle(piece);
  const lapHalf = Math.asin(lapWidth(s) / 2 / s.inner);
  const laps = seenFrom(piece, spokeAngles(s), lapHalf);
  const marked = seenFrom(piece, spokeAngles(s), Math.PI / s.spokes);
  const lap = {
    inner: s.inner,
    outer: s.outer,
    width: lapWidth(s),
    depth: piece.slab.lap,
    sweep: piece.sweep,
    at: laps,
  };
  const loose = cutThrough(piece.slab);
  const plain = felloeOf(s, piece);
  const lapped = loose || piece.slab.lap === 0 ? plain : lapRim(plain, lap);
  const joined = !loose && s.seam.joint === 'biscuit' ? markBiscuits(lapped, s.inner, s.outer, piece.sweep) : lapped;
  const holes = seenFrom(piece, pins, 0).flatMap(a => pinPair(s.inner, s.outer, Math.PI / 2 + a));
  const pinnedPart = pinned(joined, holes, pinDiameter(s.outer - s.inner, s.width));
  const scored = s.edges.rim
    ? { ...pinnedPart, features: [...pinnedPart.features, ...stopMarks(s, piece, marked)] }
    : pinnedPart;
  return { part: scored, turn, z: piece.slab.z, lettering: letteringOn(s, piece, laps) };
}

/** Every piece of the rim, layer by layer, back to front. */
export function rimDrafts(s: HelmSizes): Draft[] {
  const pins = rimPins(s);
  return rimPieces(s).map(piece => draft(s, piece, pins));
}
