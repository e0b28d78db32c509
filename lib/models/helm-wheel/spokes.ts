import { difference } from '../../geometry/boolean.js';
import { bounds } from '../../geometry/measure.js';
import { circle, type Polyline, type Region, reverse, vertex } from '../../geometry/outline.js';
import type { Point } from '../../geometry/point.js';
import { lapSpoke } from '../../joints/lap.js';
import { halfWidthAt, handleEdge } from '../../parts/handle.js';
import type { Part, Score, SideView } from '../../parts/part.js';
import { mirrorClosed, spoke } from '../../parts/spoke.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft, Lettering } from '../drafts.js';
import { pinned, pinsAt } from '../registration.js';
import { wallAngle } from '../ring/pins.js';
import { relative } from '../seams.js';
import { coreSizes, screwCircle, spokeWedge } from './core.js';
import { handleOptions } from './handle.js';
import { cutThrough, type Slab, spokeSlabs } from './layers.js';
import { lapWidth, spokeAngles } from './layout.js';
import { type HelmPins, helmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';

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

function layer(s: HelmSizes, slab: Slab): Part[] {
  const whole = wholeSpoke(s, slab);
  if (cutThrough(slab)) return split(s, whole);
  if (slab.lap === 0) return [whole];
  return [lapSpoke(whole, { inner: s.inner, outer: s.outer, width: s.width, clearance: s.fit.lap, depth: slab.lap })];
}

const onAxis = (x: Mm): Point => ({ x, y: 0 });

/** Holes through a spoke's piece: its own pins, those of the rim that fall on it where it runs through the rim, the hub's screw. */
function drilled(s: HelmSizes, part: Part, angle: Radians, pins: HelmPins): Part {
  const box = bounds(part.region.outer);
  const on = (p: Point): boolean => p.x > box.minX && p.x < box.maxX;
  const own = [...pins.inner, ...pins.handle].map(onAxis).filter(on);
  const whole = box.minX < s.inner && box.maxX > s.outer;
  const inLap = pins.ring.pairs
    .map(pair => ({ ...pair, angle: relative(pair.angle, angle) }))
    .filter(pair => whole && Math.abs(pair.angle) < wallAngle(lapWidth(s), s.outer));
  const rim = inLap.flatMap(pair => pinsAt(s.inner, s.outer, pair.angle, pair.spread));
  const screw = screwCircle(s);
  const held = pinned(part, [...own, ...rim], pins.diameter);
  return screw?.through ? pinned(held, [onAxis(screw.radius)].filter(on), screw.screw.shank) : held;
}

/** Every piece of every spoke, layer by layer, back to front. */
export function spokeDrafts(s: HelmSizes): Draft[] {
  const pins = helmPins(s);
  return spokeSlabs(s).flatMap(slab =>
    layer(s, slab).flatMap(part =>
      spokeAngles(s).map(
        (angle): Draft => ({
          part: drilled(s, part, angle, pins),
          turn: Math.PI / 2 + angle,
          z: slab.z,
          lettering: letteringOn(s, part.id === 'spoke-handle'),
        }),
      ),
    ),
  );
}

/** Lettering sits half way between hub and rim, or in the middle of a handle piece. */
function letteringOn(s: HelmSizes, handle: boolean): Lettering {
  const hub = Math.max(spokeWedge(s).reach, ...s.discs.map(d => d.radius));
  const from = handle ? s.outer : Math.min(hub, s.inner);
  const to = handle ? s.tip : s.inner;
  return { at: onAxis((from + to) / 2), height: Math.min(10, s.width / 3), length: 0.6 * (to - from) };
}
