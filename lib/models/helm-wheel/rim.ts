import { vertex } from '../../geometry/outline.js';
import { type Point, polar } from '../../geometry/point.js';
import { markBiscuits } from '../../joints/biscuit.js';
import { lapRim } from '../../joints/lap.js';
import { felloe, looseFelloe } from '../../parts/felloe.js';
import type { Face, Part, Score } from '../../parts/part.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft, Lettering } from '../drafts.js';
import { type Arc, middleOf, pinned, pinsAt } from '../registration.js';
import { cutThrough, rimSlabs } from './layers.js';
import { lapHalf, lapWidth, largestBit, type RimPiece, rimPieces, seenFrom, spokeAngles } from './layout.js';
import { type HelmPins, helmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';

/** Faces of a piece that stay open once the layers are glued up. */
function showing(s: HelmSizes, { slab }: RimPiece): Face[] {
  const slabs = rimSlabs(s);
  return [
    ...(slab.z === slabs.at(-1)!.z ? ['front' as const] : []),
    ...(slab.z === slabs[0]!.z ? ['back' as const] : []),
  ];
}

/** Where the router must stop before a lap: short marks on both edges of the rim and both faces, parallel to the spoke. */
function stopMarks(s: HelmSizes, piece: RimPiece, spokes: readonly Radians[]): Score[] {
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
  return showing(s, piece).flatMap(face =>
    kept.map((m): Score => ({ kind: 'score', face, line: m.map(p => vertex(p)) })),
  );
}

/** Lettering goes in the middle of the widest stretch of a piece that no lap crosses. */
function letteringOn(s: HelmSizes, piece: Arc, laps: readonly Radians[], pin: Mm): Lettering {
  const cuts = [-piece.sweep / 2, ...laps.filter(a => Math.abs(a) < piece.sweep / 2), piece.sweep / 2];
  const gaps = cuts.slice(1).map((to, i) => ({ at: (to + cuts[i]!) / 2, width: to - cuts[i]! }));
  const clear = gaps.reduce((w, g) => (g.width > w.width + 1e-9 ? g : w));
  const at = polar((s.inner + s.outer) / 2, Math.PI / 2 + clear.at);
  const length = (rimSlabs(s).length > 1 ? 0.45 : 0.8) * (s.inner * clear.width - lapWidth(s));
  const band = s.outer - s.inner;
  const betweenPins = rimSlabs(s).length > 1 ? (0.4 * band - pin) / 2 : band / 6;
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

function draft(s: HelmSizes, piece: RimPiece, pins: HelmPins): Draft {
  const half = lapHalf(s, s.inner);
  const laps = seenFrom(piece, spokeAngles(s), half);
  const loose = cutThrough(piece.slab);
  const plain = felloeOf(s, piece);
  const depth = piece.slab.lap;
  const lapped =
    loose || depth === 0
      ? plain
      : lapRim(plain, { inner: s.inner, outer: s.outer, width: lapWidth(s), depth, sweep: piece.sweep, at: laps });
  const joined = !loose && s.seam.joint === 'biscuit' ? markBiscuits(lapped, s.inner, s.outer, piece.sweep) : lapped;
  const holes = pins.rim.flatMap(({ angle, spread }) =>
    seenFrom(piece, [angle], loose ? -half : 0).flatMap(a => pinsAt(s.inner, s.outer, Math.PI / 2 + a, spread)),
  );
  const marks = s.edges.rim ? stopMarks(s, piece, seenFrom(piece, spokeAngles(s), Math.PI / s.spokes)) : [];
  const part = pinned({ ...joined, features: [...joined.features, ...marks] }, holes, pins.diameter);
  return { part, turn: middleOf(piece), z: piece.slab.z, lettering: letteringOn(s, piece, laps, pins.diameter) };
}

/** Every piece of the rim, layer by layer, back to front. */
export function rimDrafts(s: HelmSizes): Draft[] {
  const pins = helmPins(s);
  return rimPieces(s).map(piece => draft(s, piece, pins));
}
