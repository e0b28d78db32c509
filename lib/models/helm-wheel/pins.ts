import { halfWidthAt, handleEdge } from '../../parts/handle.js';
import type { Mm, Radians } from '../../units/length.js';
import {
  type Arc,
  arcsBetween,
  holds,
  middleOf,
  PIN_SIZES,
  PIN_WALL,
  type PinPair,
  pinPairs,
} from '../registration.js';
import { coreSizes, screwCircle, spokeWedge } from './core.js';
import { handleOptions } from './handle.js';
import { cutThrough, rimSlabs } from './layers.js';
import { lapHalf, type RimPiece, relative, rimPieces, seamsByLayer, spokeAngles } from './layout.js';
import type { HelmSizes } from './sizes.js';

/** Registration of a wheel built up from layers; lengths mm. */
export interface HelmPins {
  readonly diameter: Mm;
  /** pairs of pins across the rim's band */
  readonly rim: readonly PinPair[];
  /** distances from the wheel's centre of pins along each spoke: inside the rim, and in the handle */
  readonly inner: readonly Mm[];
  readonly handle: readonly Mm[];
  /** rim pieces that have no stretch wide enough for a pin */
  readonly unpinned: number;
}

/** What a rim piece covers for sure: a loose one ends at the lap walls, which are widest apart, by angle, at the inner edge. */
function stretch(s: HelmSizes, piece: RimPiece): Arc {
  const off = cutThrough(piece.slab) ? lapHalf(s, s.inner) : 0;
  return { from: piece.from + off, sweep: piece.sweep - 2 * off };
}

/** Stretches of the rim clear of every seam and lap wall, wide enough for a pin: between laps, or within one (through the spoke). */
function clearStretches(s: HelmSizes, margin: Radians): Arc[] {
  const [wide, narrow] = [lapHalf(s, s.inner), lapHalf(s, s.outer)];
  const walls = spokeAngles(s).flatMap(a => [a - wide, a - narrow, a + narrow, a + wide]);
  const onWall = (a: Arc): boolean =>
    spokeAngles(s).some(x => {
      const apart = Math.abs(relative(middleOf(a), x));
      return apart > narrow && apart < wide;
    });
  return arcsBetween([...walls, ...seamsByLayer(s).flat()]).filter(a => a.sweep > 2 * margin && !onWall(a));
}

/** Two places along a stretch of the spoke where a pin keeps its wall, as far apart as they go. */
function pinPlaces(from: Mm, to: Mm, clear: (x: Mm) => boolean): Mm[] {
  const steps = 60;
  const places = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps).filter(clear);
  return places.length < 2 ? [] : [places[0]!, places.at(-1)!];
}

/** Pins along a spoke's layers: two inside the rim, clear of the hub's screws, and two in the handle. */
function alongSpoke(s: HelmSizes, diameter: Mm): Pick<HelmPins, 'inner' | 'handle'> {
  if (s.spoke.layers === 1) return { inner: [], handle: [] };
  const room = diameter / 2 + PIN_WALL;
  const c = s.fit.lap / 2;
  const edge = handleEdge(handleOptions(s));
  const screw = screwCircle(s);
  const clearOfScrew = (x: Mm): boolean =>
    !screw || Math.abs(x - screw.radius) > (screw.screw.shank + diameter) / 2 + PIN_WALL;
  const inHandle = (x: Mm): boolean =>
    [x - room, x, x + room].every(at => at < s.tip && halfWidthAt(edge, at - s.outer) >= room);
  const chord = Math.sqrt((s.inner - c) * (s.inner - c) - room * room);
  const apart = (places: Mm[]): Mm[] =>
    places.length === 2 && places[1]! - places[0]! >= diameter + PIN_WALL ? places : [];
  return {
    inner: apart(pinPlaces(Math.max(spokeWedge(s).corner, coreSizes(s).flat + room), chord - room, clearOfScrew)),
    handle: apart(pinPlaces(s.outer + c + room, s.tip - room, inHandle)),
  };
}

function pinsOf(s: HelmSizes, diameter: Mm): HelmPins {
  const pieces = rimPieces(s).map(piece => stretch(s, piece));
  const margin = (diameter / 2 + PIN_WALL) / s.inner;
  const rim = pinPairs(pieces, clearStretches(s, margin), margin);
  const unpinned = pieces.filter(piece => !rim.some(pair => holds(piece, pair.angle))).length;
  return { diameter, rim, ...alongSpoke(s, diameter), unpinned };
}

const everyPiece = (s: HelmSizes, p: HelmPins): boolean =>
  p.unpinned === 0 && (s.spoke.layers === 1 || (p.inner.length === 2 && p.handle.length === 2));

/** Two pins through every loose piece of a built-up wheel, the largest that find room: at most a fifth of the rim's band and a third of
 * the spoke, so that each leaves its own width of wood on either side. None where the rim is one layer. */
export function helmPins(s: HelmSizes): HelmPins {
  if (rimSlabs(s).length === 1) return { diameter: PIN_SIZES[0]!, rim: [], inner: [], handle: [], unpinned: 0 };
  const sizes = PIN_SIZES.filter(d => d <= (s.outer - s.inner) / 5 && d <= s.width / 3);
  const tried = (sizes.length > 0 ? sizes : PIN_SIZES.slice(-1)).map(d => pinsOf(s, d));
  return tried.find(p => everyPiece(s, p)) ?? tried.at(-1)!;
}
