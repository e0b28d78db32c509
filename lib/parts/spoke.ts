import { refuse, requireRange } from '../findings/unusable.js';
import { bulgeOf, type Outline, type Polyline, reversePolyline, solid, vertex } from '../geometry/outline.js';
import { segmentFrom } from '../geometry/segment.js';
import { SAME_POINT } from '../geometry/tolerance.js';
import type { Mm, Radians } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

export interface WedgeOptions {
  /** spokes in the wheel, 3 to 36: the wedge's apex is a full turn over it */
  readonly count: number;
  /** spoke width, mm */
  readonly width: Mm;
  /** clearance between neighbouring flanks, mm; half of it on each flank; negative presses. 0 unless given */
  readonly clearance?: Mm;
}

/** The wedge on a spoke's inner end, spoke along +x from the wheel's centre; mm. */
export interface Wedge {
  /** half the apex angle, from the centre line to a flank */
  readonly angle: Radians;
  /** x at which both flanks would meet */
  readonly apex: Mm;
  /** x at which the flanks reach the full width */
  readonly corner: Mm;
  /** farthest point of the flanks from the centre: what a hub disc must cover */
  readonly reach: Mm;
}

/** Source: spokes side by side touch at w / (2 tan(180 deg / N)), corner at w / (2 sin(180 deg / N)), plane trigonometry. */
export function wedge(o: WedgeOptions): Wedge {
  const angle = Math.PI / o.count;
  const half = o.width / 2;
  const apex = (o.clearance ?? 0) / 2 / Math.sin(angle);
  const corner = apex + half / Math.tan(angle);
  return { angle, apex, corner, reach: Math.hypot(corner, half) };
}

export interface SpokeOptions extends WedgeOptions, PieceOptions {
  /** x at which the wedge is cut back flat, mm from the wheel's centre: past its apex, short of its corner */
  readonly flat: Mm;
  /** where the handle starts: the rim's outer radius, mm */
  readonly rim: Mm;
  /** the handle's upper edge from the rim on (see handleEdge) */
  readonly handle: Polyline;
}

/** A closed outline, anticlockwise, from its upper edge and the mirror of that in the x axis. */
export function mirrorClosed(upper: Polyline): Outline {
  const lower = upper.map(v => vertex({ x: v.x, y: -v.y }, v.bulge === 0 ? 0 : -v.bulge, v.mate));
  const back = reversePolyline(upper);
  const tip = upper.at(-1)!;
  if (tip.y > 0) return [...lower.slice(0, -1), vertex(lower.at(-1)!), ...back];
  const last = segmentFrom(upper.at(-2)!, tip);
  if (last.kind === 'line' || Math.abs(last.center.y) > SAME_POINT) return [...lower.slice(0, -1), ...back];
  // a round tip about the axis is one arc
  const before = lower.at(-2)!;
  const round = vertex(before, Math.min(1, bulgeOf(2 * Math.abs(last.sweep))), before.mate);
  return [...lower.slice(0, -2), round, ...back.slice(1)];
}

/** One spoke along +x, wheel centre at the origin: wedge, straight shaft, handle; symmetric; grain along it.
 * @throws Unusable naming the option; in particular when the flat leaves no flank on the wedge. */
export function spoke(o: SpokeOptions): Part {
  requireRange('count', o.count, 3, 36, 'spokes');
  requireRange('width', o.width, 1, 1000);
  const w = wedge(o);
  requireRange('flat', o.flat, w.apex, w.corner);
  if (!(o.rim > w.corner)) refuse('rim', `${o.rim} mm`, `more than the wedge's corner, ${w.corner} mm`);
  const flank = (o.flat - w.apex) * Math.tan(w.angle);
  const upper: Polyline = [
    vertex({ x: o.flat, y: flank }, 0, 'wedge'),
    vertex({ x: w.corner, y: o.width / 2 }),
    ...pastRim(o.handle).map(v => vertex({ x: v.x + o.rim, y: v.y }, v.bulge)),
  ];
  return piece('spoke', 'Spoke', o, { region: solid(mirrorClosed(upper)) });
}

/** The rim's crossing is no corner where the handle starts straight on. */
function pastRim(handle: Polyline): Polyline {
  const [first, second] = handle;
  return first?.bulge === 0 && first.y === second?.y ? handle.slice(1) : handle;
}
