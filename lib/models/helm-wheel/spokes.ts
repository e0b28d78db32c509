import { bounds } from '../../geometry/measure.js';
import type { Point } from '../../geometry/point.js';
import { lapSpoke, splitSpoke } from '../../joints/lap.js';
import { handleEdge } from '../../parts/handle.js';
import type { Part } from '../../parts/part.js';
import { spoke } from '../../parts/spoke.js';
import { shapedOnBothSides } from '../../parts/spoke-side.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import { pinned, pinsAt } from '../registration.js';
import { wallAngle } from '../ring/pins.js';
import { relative } from '../seams.js';
import { coreSizes, screwCircle, spokeWedge } from './core.js';
import { handleOptions, shapedTwice } from './handle.js';
import { cutThrough, type Slab, spokeSlabs } from './layers.js';
import { lapWidth, spokeAngles } from './layout.js';
import type { HelmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';

/** Where the two sides of a handle shaped twice are lined up: the end of its collar, and three quarters of the way to the tip. */
const indexAt = (s: HelmSizes): Mm[] => [s.outer + (handleOptions(s).collar ?? 0), s.outer + 0.75 * (s.tip - s.outer)];

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
  });
  if (!shapedTwice(s)) return part;
  return shapedOnBothSides(part, {
    from: coreSizes(s).flat,
    rim: s.outer,
    face: edge,
    side: handleEdge(handleOptions(s, s.spoke.thickness / 2)),
    index: indexAt(s),
  });
}

function layer(s: HelmSizes, slab: Slab): Part[] {
  const whole = wholeSpoke(s, slab);
  if (cutThrough(slab)) return splitSpoke(whole, { inner: s.inner, outer: s.outer, clearance: s.fit.lap });
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
export function spokeDrafts(s: HelmSizes, pins: HelmPins): Draft[] {
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
