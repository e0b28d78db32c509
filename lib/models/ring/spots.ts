import { distance, type Point, polar } from '../../geometry/point.js';
import type { SeamPoint } from '../../joints/seam-joint.js';
import type { Mm, Radians } from '../../units/length.js';
import { type Arc, PIN_WALL } from '../registration.js';
import type { RingOptions } from '../ring-options.js';
import { relative } from '../seams.js';
import type { LayerSeams } from './joined.js';

// Places for single pins in pieces that have no room for a pair of them clear of everything all across the band: looked for one by one,
// between fingers, beside keys, through scarfed halves.

/** A pin's place in the ring: from the centre, and angle from +y. */
export interface PinSpot {
  readonly angle: Radians;
  readonly radius: Mm;
}

/** Where across the band pins are tried, as shares of it. */
const SHARES = [0.3, 0.7, 0.5, 0.2, 0.8];
/** A run whose ends are nearer than this is closed, mm. */
const CLOSED: Mm = 1e-6;
/** Places tried along a piece. */
const STEPS = 24;

function fromSegment(p: SeamPoint, a: SeamPoint, b: SeamPoint): Mm {
  const du = b.u - a.u;
  const dv = b.v - a.v;
  const length = du * du + dv * dv;
  const t = length > 0 ? Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.v - a.v) * dv) / length)) : 0;
  return Math.hypot(p.u - a.u - t * du, p.v - a.v - t * dv);
}

/** Whether a run is closed round a point, by its crossings of a ray. */
function within(line: readonly SeamPoint[], p: SeamPoint): boolean {
  const [first, last] = [line[0]!, line.at(-1)!];
  if (Math.hypot(first.u - last.u, first.v - last.v) > CLOSED) return false;
  const crossings = line.slice(1).filter((b, i) => {
    const a = line[i]!;
    return a.v > p.v !== b.v > p.v && p.u < a.u + ((p.v - a.v) / (b.v - a.v)) * (b.u - a.u);
  });
  return crossings.length % 2 === 1;
}

/** Whether a pin stands clear of a layer's seams. @param room from its middle to any edge */
function clearOfSeams({ seams, joined }: LayerSeams, spot: PinSpot, room: Mm): boolean {
  return seams.every(seam => {
    const apart = relative(spot.angle, seam);
    if (Math.abs(apart) > Math.PI / 2) return true;
    const p = { u: spot.radius * Math.cos(apart), v: spot.radius * Math.sin(apart) };
    if (Math.abs(p.v) > joined.reach + room) return true;
    return joined.lines.every(
      line => !within(line, p) && line.slice(1).every((b, i) => fromSegment(p, line[i]!, b) >= room),
    );
  });
}

/** Whether a pin stands beside whatever crosses the ring, not in it. */
const clearOfCrossings = (o: RingOptions, spot: PinSpot, room: Mm): boolean =>
  (o.crossings ?? []).every(c =>
    c.at.every(at => {
      const apart = Math.abs(relative(spot.angle, at));
      return apart > Math.PI / 2 || spot.radius * Math.sin(apart) - c.width / 2 >= room;
    }),
  );

/** Where a spot lies in the ring's plane, up being +y. */
export const spotAt = ({ angle, radius }: PinSpot): Point => polar(radius, Math.PI / 2 + angle);

function candidates(o: RingOptions, piece: Arc): PinSpot[] {
  const band = o.outer - o.inner;
  return SHARES.flatMap(share =>
    Array.from({ length: STEPS - 1 }, (_, i) => ({
      angle: piece.from + ((i + 1) / STEPS) * piece.sweep,
      radius: o.inner + share * band,
    })),
  );
}

/** The two places on a piece that are farthest apart, clear of the seams of every layer, of what crosses the ring, of its edges and of other
 * pins; none where there are not two. @param piece what it covers for sure   @param taken pins there are already */
export function spotsOn(
  o: RingOptions,
  piece: Arc,
  layers: readonly LayerSeams[],
  diameter: Mm,
  taken: readonly Point[],
): PinSpot[] {
  const room = diameter / 2 + PIN_WALL;
  const between = diameter + PIN_WALL;
  const inBand = (s: PinSpot): boolean => s.radius - o.inner - (o.rebate ?? 0) >= room && o.outer - s.radius >= room;
  const inPiece = (s: PinSpot): boolean =>
    Math.min(s.angle - piece.from, piece.from + piece.sweep - s.angle) * s.radius >= room;
  const fit = candidates(o, piece)
    .filter(s => inBand(s) && inPiece(s) && clearOfCrossings(o, s, room))
    .filter(s => layers.every(l => clearOfSeams(l, s, room)))
    .map(spot => ({ spot, at: spotAt(spot) }))
    .filter(({ at }) => taken.every(t => distance(at, t) >= between));
  let best: { readonly spots: PinSpot[]; readonly apart: Mm } = { spots: [], apart: between };
  fit.forEach((a, i) => {
    for (const b of fit.slice(i + 1)) {
      const apart = distance(a.at, b.at);
      if (apart > best.apart + 1e-6) best = { spots: [a.spot, b.spot], apart };
    }
  });
  return best.spots;
}
