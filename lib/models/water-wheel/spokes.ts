import type { Point } from '../../geometry/point.js';
import { laidScrews, SCREW_EDGE } from '../../joints/laid-screws.js';
import { type Stretch, slotsAt } from '../../joints/raked-slot.js';
import { laidSpoke } from '../../parts/laid-spoke.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { takesScrews } from '../glues.js';
import type { Lettering } from '../lettering.js';
import { pinned } from '../registration.js';
import { relative } from '../seams.js';
import { type Driven, drivenScrew, hubCircle } from './hub.js';
import { type PaddlePlaces, paddleAngles, paddleBar, type RimSeams, spokeAngles } from './layout.js';
import { spokeWedge, type WaterSizes, wedgeFlat, wheelHeight } from './sizes.js';

/** Paddles and seams farther from a spoke than this cannot lie under it. */
const NEAR: Radians = Math.PI / 3;

/** The screw from a spoke into the rim; none in thin ones, and where screws do not hold. */
export function rimScrew(s: WaterSizes): Driven | undefined {
  if (!takesScrews(s.spokes.stock, s.rim.stock)) return undefined;
  const most = Math.min(s.spokes.width, s.outer - s.inner) / (2 * SCREW_EDGE);
  return drivenScrew(most, s.spokes.thickness, s.rim.thickness);
}

/** Where a spoke is screwed to the rim, the spoke along +x. */
function screwsOn(
  s: WaterSizes,
  tabs: readonly Stretch[],
  seams: RimSeams,
  places: PaddlePlaces,
  angle: Radians,
): Point[] {
  const driven = rimScrew(s);
  if (!driven) return [];
  const near = (all: readonly Radians[]): Radians[] => all.map(a => relative(a, angle)).filter(a => Math.abs(a) < NEAR);
  return laidScrews({
    inner: s.inner,
    outer: s.outer,
    width: s.spokes.width,
    diameter: driven.screw.diameter,
    seams: near(seams.at),
    // angles of slots are from +y
    slots: near(paddleAngles(s, places)).flatMap(a => slotsAt(paddleBar(s), tabs, a - Math.PI / 2)),
  });
}

/** Half way between hub and rim. */
function lettering(s: WaterSizes): Lettering {
  const from = Math.min(Math.max(s.hub.radius, spokeWedge(s).reach), s.inner);
  return {
    at: { x: (from + s.inner) / 2, y: 0 },
    height: Math.min(10, s.spokes.width / 3),
    length: 0.6 * (s.inner - from),
  };
}

/** Every spoke of both rims, laid on their outer faces, back first. */
export function spokeDrafts(s: WaterSizes, tabs: readonly Stretch[], seams: RimSeams, places: PaddlePlaces): Draft[] {
  const { spokes } = s;
  const plain = laidSpoke({
    count: spokes.count,
    width: spokes.width,
    clearance: s.fit.wedge,
    flat: wedgeFlat(s),
    inner: s.inner,
    outer: s.outer,
    thickness: spokes.thickness,
    stock: spokes.stock.name,
    grained: spokes.stock.kind === 'board',
  });
  const circle = hubCircle(s);
  const held = circle ? pinned(plain, [{ x: circle.radius, y: 0 }], circle.screw.shank, 'screw') : plain;
  const shank = rimScrew(s)?.screw.shank ?? 0;
  const drawn = spokeAngles(s).map((angle): Draft => {
    const part = pinned(held, screwsOn(s, tabs, seams, places, angle), shank, 'screw');
    return { part, turn: Math.PI / 2 + angle, z: -spokes.thickness, lettering: lettering(s) };
  });
  const raise: Mm = wheelHeight(s) + spokes.thickness;
  return [...drawn, ...drawn.map(d => ({ ...d, z: d.z + raise }))];
}
