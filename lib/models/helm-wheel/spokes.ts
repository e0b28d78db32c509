import { difference } from '../../geometry/boolean.js';
import { bounds } from '../../geometry/measure.js';
import { circle, type Polyline, type Region, reverse, vertex } from '../../geometry/outline.js';
import type { Point } from '../../geometry/point.js';
import { lapSpoke } from '../../joints/lap.js';
import { type HandleOptions, halfWidthAt, handleEdge } from '../../parts/handle.js';
import type { Part, Score, SideView } from '../../parts/part.js';
import { mirrorClosed, spoke, type Wedge, wedge } from '../../parts/spoke.js';
import type { Mm } from '../../units/length.js';
import type { Draft, Lettering } from '../drafts.js';
import { PIN_WALL, pinDiameter, pinned } from '../registration.js';
import { coreSizes, screwCircle } from './core.js';
import { cutThrough, type Slab, spokeSlabs } from './layers.js';
import { spokeAngles } from './rim.js';
import type { HelmSizes } from './sizes.js';

/** A handle stays straight past the shoulder of its lap by this much. */
const COLLAR: Mm = 1;

/** The wedge on the spokes' inner ends. */
export const spokeWedge = (s: HelmSizes): Wedge => wedge({ count: s.spokes, width: s.width, clearance: s.fit.wedge });

/** Sizes of the handle past the rim, seen on the face (half the width) or on the second side (half the thickness). */
export function handleOptions(s: HelmSizes, half: Mm = s.width / 2): HandleOptions {
  const share = half / (s.width / 2);
  const { profile, shape } = s.handle;
  return {
    length: s.tip - s.outer,
    half,
    collar: Math.max(0, s.fit.lap / 2) + COLLAR,
    ...(profile ? { profile: profile.map(([x, y]): [Mm, Mm] => [x, y * share]) } : { shape }),
  };
}

const across = (x: Mm, half: Mm): Polyline => [vertex({ x, y: -half }), vertex({ x, y: half })];

/** Where the two sides of a handle shaped twice are lined up: the end of its collar, and three quarters of the way to the tip. */
const indexAt = (s: HelmSizes): Mm[] => [s.outer + (handleOptions(s).collar ?? 0), s.outer + 0.75 * (s.tip - s.outer)];

/** The view a quarter turn about the spoke's axis, for handles shaped on both sides. */
function sideView(s: HelmSizes): SideView {
  const half = s.spoke.thickness / 2;
  const edge = handleEdge(handleOptions(s, half)).map(v => vertex({ x: v.x + s.outer, y: v.y }, v.bulge));
  const flat = coreSizes(s).flat;
  const outline = mirrorClosed([vertex({ x: flat, y: half }), ...edge.slice(1)]);
  return {
    outline,
    marks: indexAt(s).map(x => across(x, halfWidthAt(handleEdge(handleOptions(s, half)), x - s.outer))),
  };
}

/** Two sides can be shaped where the spoke is one solid piece that can be turned. */
const shapedTwice = (s: HelmSizes): boolean => s.handle.faces === 2 && s.method !== 'laser';

function wholeSpoke(s: HelmSizes, slab: Slab): Part {
  const edge = handleEdge(handleOptions(s));
  const part = spoke({
    count: s.spokes,
    width: s.width,
    clearance: s.fit.wedge,
    flat: coreSizes(s).flat,
    rim: s.outer,
    handle: edge,
    thickness: slab.thickness,
    stock: s.spoke.stock.name,
    grained: s.spoke.stock.kind === 'board',
    ...(shapedTwice(s) && { side: sideView(s) }),
  });
  if (!shapedTwice(s)) return part;
  const marks = indexAt(s).map(
    (x): Score => ({ kind: 'score', face: 'back', line: across(x, halfWidthAt(edge, x - s.outer)) }),
  );
  return { ...part, features: [...part.features, ...marks] };
}

/** The two pieces left where a layer of the rim runs through the spoke: inner one first. */
function split(s: HelmSizes, whole: Part): Part[] {
  const c = s.fit.lap / 2;
  const rim: Region = { outer: circle(s.outer + c), openings: [reverse(circle(s.inner - c))] };
  const [inner, outer] = difference([whole.region], [rim])
    .slice()
    .sort((a, b) => bounds(a.outer).minX - bounds(b.outer).minX);
  const named = (region: Region, id: string, name: string): Part => ({ ...whole, region, id, name });
  return [named(inner!, 'spoke-inner', 'Spoke, inner piece'), named(outer!, 'spoke-handle', 'Spoke, handle piece')];
}

/** Two places along a stretch of the spoke where a pin keeps its wall, as far apart as they go. */
function pinPlaces(from: Mm, to: Mm, clear: (x: Mm) => boolean): Mm[] {
  const steps = 60;
  const places = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps).filter(clear);
  return places.length < 2 ? [] : [places[0]!, places.at(-1)!];
}

/** Pins through the spokes' layers: two inside the rim, two in the handle; empty where a spoke is solid. */
export function spokePins(s: HelmSizes): { readonly inner: readonly Mm[]; readonly handle: readonly Mm[] } {
  if (s.spoke.layers === 1) return { inner: [], handle: [] };
  const pin = pinDiameter(s.outer - s.inner, s.width);
  const room = pin / 2 + PIN_WALL;
  const c = s.fit.lap / 2;
  const edge = handleEdge(handleOptions(s));
  const screw = screwCircle(s);
  const clearOfScrew = (x: Mm): boolean => !screw || Math.abs(x - screw.radius) > (screw.diameter + pin) / 2 + PIN_WALL;
  const chord = Math.sqrt((s.inner - c) * (s.inner - c) - room * room);
  const apart = (places: Mm[]): Mm[] =>
    places.length === 2 && places[1]! - places[0]! >= pin + PIN_WALL ? places : [];
  return {
    inner: apart(pinPlaces(Math.max(spokeWedge(s).corner, coreSizes(s).flat + room), chord - room, clearOfScrew)),
    handle: apart(
      pinPlaces(s.outer + c + room, s.tip - room, x =>
        [x - room, x, x + room].every(at => at < s.tip && halfWidthAt(edge, at - s.outer) >= room),
      ),
    ),
  };
}

function layer(s: HelmSizes, slab: Slab): Part[] {
  const whole = wholeSpoke(s, slab);
  if (cutThrough(slab)) return split(s, whole);
  if (slab.lap === 0) return [whole];
  return [lapSpoke(whole, { inner: s.inner, outer: s.outer, width: s.width, clearance: s.fit.lap, depth: slab.lap })];
}

const onAxis = (x: Mm): Point => ({ x, y: 0 });

/** Every piece of every spoke, layer by layer, back to front. */
export function spokeDrafts(s: HelmSizes): Draft[] {
  const pins = spokePins(s);
  const all = [...pins.inner, ...pins.handle];
  const screw = screwCircle(s);
  const through = screw?.through ? [onAxis(screw.radius)] : [];
  return spokeSlabs(s).flatMap(slab =>
    layer(s, slab).flatMap(part => {
      const box = bounds(part.region.outer);
      const has = (x: Mm): boolean => x > box.minX && x < box.maxX;
      const drilled = pinned(part, all.filter(has).map(onAxis), pinDiameter(s.outer - s.inner, s.width));
      const screwed = pinned(
        drilled,
        through.filter(p => has(p.x)),
        screw?.diameter ?? 1,
      );
      const lettering = letteringOn(s, part.id === 'spoke-handle');
      return spokeAngles(s).map((angle): Draft => ({ part: screwed, turn: Math.PI / 2 + angle, z: slab.z, lettering }));
    }),
  );
}

/** Lettering sits half way between hub and rim, or in the middle of a handle piece. */
function letteringOn(s: HelmSizes, handle: boolean): Lettering {
  const hub = Math.max(spokeWedge(s).reach, ...s.discs.map(d => d.radius));
  const from = handle ? s.outer : Math.min(hub, s.inner);
  const to = handle ? s.tip : s.inner;
  return { at: onAxis((from + to) / 2), height: Math.min(10, s.width / 3), length: 0.6 * (to - from) };
}
