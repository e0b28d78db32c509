import { type Motion, moveOutline, moveRegion } from '../geometry/motion.js';
import { circle, type Outline, type Region, reverse } from '../geometry/outline.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Model, Piece } from '../models/model.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { laidOn } from './wood.js';

/** A piece in its place in the assembled prop, seen from the front. */
export interface Placed {
  readonly part: Part;
  readonly motion: Motion;
  /** its outline with what stays open in it: openings, and the screw holes of what is laid on */
  readonly region: Region;
  /** ends of the pins in it */
  readonly pins: readonly Outline[];
  /** height of its front face */
  readonly top: Mm;
}

/** Heights closer than this are one height: layers are stacked by addition, which rounds. */
const SAME_HEIGHT: Mm = 1e-6;

function placed(piece: Piece, part: Part): Placed {
  const motion: Motion = { turn: piece.turn, x: piece.x, y: piece.y };
  const { outer, openings } = moveRegion(part.region, motion);
  const holes = part.features.flatMap(f =>
    f.kind === 'drill' && f.from === 'through' ? [moveOutline(circle(f.diameter / 2, f.at), motion)] : [],
  );
  const top = piece.z + part.thickness;
  // holes right through a disc or a trim segment are for screws; those through rim and spokes line up their layers on pins
  if (laidOn(part.kind))
    return { part, motion, region: { outer, openings: [...openings, ...holes.map(reverse)] }, pins: [], top };
  return { part, motion, region: { outer, openings }, pins: holes, top };
}

/** Of two pieces that are flush in front, the one with pockets in its front lies behind: the other's tongue fills them. */
const tonguesFirst = (p: Placed): number =>
  p.part.features.some(f => f.kind === 'pocket' && f.face === 'front') ? 0 : 1;

/** All pieces, the rearmost front face first. */
export function placedPieces(model: Model): Placed[] {
  const parts = new Map(model.parts.map(p => [p.id, p]));
  const pieces = model.pieces.flatMap(piece => {
    const part = parts.get(piece.part);
    return part ? [placed(piece, part)] : [];
  });
  const gap = (a: Placed, b: Placed): number => (Math.abs(a.top - b.top) < SAME_HEIGHT ? 0 : a.top - b.top);
  return pieces.sort((a, b) => gap(a, b) || tonguesFirst(a) - tonguesFirst(b));
}

/** How far an edge reaches from the origin, mm: an arc to its farthest point, a line (a flat tip) as measured over its middle. */
function reach(s: Segment): Mm {
  const ends = Math.max(Math.hypot(s.from.x, s.from.y), Math.hypot(s.to.x, s.to.y));
  if (s.kind === 'line') return Math.hypot(s.from.x + s.to.x, s.from.y + s.to.y) / 2;
  const away = Math.atan2(s.center.y, s.center.x);
  const turn = 2 * Math.PI;
  const along = s.sweep > 0 ? away - s.start : s.start - away;
  const on = ((along % turn) + turn) % turn <= Math.abs(s.sweep);
  return on ? Math.hypot(s.center.x, s.center.y) + s.radius : ends;
}

/** Half the overall diameter: how far the prop reaches from its centre, mm. */
export const overallRadius = (pieces: readonly Placed[]): Mm =>
  Math.max(0, ...pieces.flatMap(p => segments(p.region.outer).map(reach)));

/** Edges of outlines, each once, however many pieces meet along it: two pieces' sides of a seam are one line. */
export function distinctEdges(outlines: readonly Outline[]): Outline[] {
  const place = (n: number): number => Math.round(n * 20);
  const seen = new Map<string, Outline>();
  for (const outline of outlines) {
    outline.forEach((from, i) => {
      const to = outline[(i + 1) % outline.length] ?? from;
      const ends = [from, to].map(v => `${place(v.x)},${place(v.y)}`).sort();
      const key = `${ends.join(' ')} ${Math.round(Math.abs(from.bulge) * 1e4)}`;
      if (!seen.has(key)) seen.set(key, [from, { ...to, bulge: 0 }]);
    });
  }
  return [...seen.values()];
}
