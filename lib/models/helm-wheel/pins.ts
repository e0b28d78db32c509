import { halfWidthAt, handleEdge } from '../../parts/handle.js';
import type { Mm } from '../../units/length.js';
import { PIN_SIZES, PIN_WALL } from '../registration.js';
import { layerSeamed } from '../ring/joined.js';
import { pinSizes, pinsOf, type RingPins } from '../ring/pins.js';
import { coreSizes, screwCircle, spokeWedge } from './core.js';
import { handleOptions } from './handle.js';
import { rimLayout, rimOptions } from './layout.js';
import type { HelmSizes } from './sizes.js';

/** Registration of a wheel built up from layers; lengths mm. */
export interface HelmPins {
  readonly diameter: Mm;
  /** pairs of pins across the rim's band */
  readonly ring: RingPins;
  /** distances from the wheel's centre of pins along each spoke: inside the rim, and in the handle */
  readonly inner: readonly Mm[];
  readonly handle: readonly Mm[];
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

const everyPiece = (s: HelmSizes, p: HelmPins): boolean =>
  p.ring.unpinned === 0 && (s.spoke.layers === 1 || (p.inner.length === 2 && p.handle.length === 2));

/** Two pins through every loose piece of a built-up wheel, the largest that find room: at most a fifth of the rim's band and a third of
 * the spoke, so that each leaves its own width of wood on either side. None where the rim is one layer. */
export function helmPins(s: HelmSizes): HelmPins {
  const o = rimOptions(s);
  const layout = rimLayout(s);
  if (layout.layers.length === 1) {
    const diameter = PIN_SIZES[0]!;
    return { diameter, ring: { diameter, pairs: [], unpinned: 0 }, inner: [], handle: [] };
  }
  const layers = layerSeamed(o, layout);
  const tried = pinSizes(o, s.width / 3).map((diameter): HelmPins => {
    const ring = pinsOf(o, layout, diameter, layers);
    return { diameter, ring, ...alongSpoke(s, diameter) };
  });
  return tried.find(p => everyPiece(s, p)) ?? tried.at(-1)!;
}
