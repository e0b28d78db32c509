import { distance, type Point, polar } from '../../geometry/point.js';
import { boreClear } from '../../joints/bore-clear.js';
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
/** Places tried along a piece. */
const STEPS = 24;

/** A seam near a piece: where it lies, and what its joint takes up. */
interface Near {
  readonly at: Radians;
  readonly joined: LayerSeams['joined'];
}

/** Angles near a piece: within a margin of its ends. */
const nearTo = (piece: Arc, angles: readonly Radians[], margin: Radians): Radians[] =>
  angles.filter(a => Math.abs(relative(a, piece.from + piece.sweep / 2)) < piece.sweep / 2 + margin);

/** Whether a pin stands clear of a seam. @param room from its middle to any edge */
function clearOfSeam({ at, joined }: Near, spot: PinSpot, room: Mm): boolean {
  const apart = relative(spot.angle, at);
  if (Math.abs(apart) > Math.PI / 2) return true;
  return boreClear(joined, { u: spot.radius * Math.cos(apart), v: spot.radius * Math.sin(apart) }, room);
}

/** A wall near a piece: of something that crosses the ring or comes into it, at an angle. */
interface Wall {
  readonly at: Radians;
  readonly half: Mm;
}

/** Whether a pin stands beside what crosses the ring, not in it. */
function clearOfWall({ at, half }: Wall, spot: PinSpot, room: Mm): boolean {
  const apart = Math.abs(relative(spot.angle, at));
  return apart > Math.PI / 2 || spot.radius * Math.sin(apart) - half >= room;
}

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

/** Two places on a piece far apart, clear of the seams of every layer, of what crosses the ring, of its edges and of other
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
  const seams = layers.flatMap(({ seams, joined }) =>
    nearTo(piece, seams, aside(o, joined.reach + room)).map((at): Near => ({ at, joined })),
  );
  const walls = [...(o.crossings ?? []), ...(o.slots ?? [])].flatMap(({ at, width }) =>
    nearTo(piece, at, aside(o, width / 2 + room)).map((angle): Wall => ({ at: angle, half: width / 2 })),
  );
  const fit = candidates(o, piece)
    .filter(s => inBand(s) && inPiece(s) && walls.every(w => clearOfWall(w, s, room)))
    .filter(s => seams.every(n => clearOfSeam(n, s, room)))
    .map((spot): Placed => ({ spot, at: spotAt(spot) }))
    .filter(({ at }) => taken.every(t => distance(at, t) >= between));
  const [first] = fit;
  if (!first) return [];
  const one = farthest(fit, first);
  const other = farthest(fit, one);
  return distance(one.at, other.at) >= between ? [one.spot, other.spot] : [];
}

interface Placed {
  readonly spot: PinSpot;
  readonly at: Point;
}

/** Angle a length takes up at the ring's inner edge. */
const aside = (o: RingOptions, length: Mm): Radians => Math.asin(Math.min(1, length / o.inner));

/** The place farthest from one, the first of several. */
const farthest = (places: readonly Placed[], from: Placed): Placed =>
  places.reduce((best, p) => (distance(p.at, from.at) > distance(best.at, from.at) + 1e-6 ? p : best));
