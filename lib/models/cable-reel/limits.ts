import type { Finding } from '../../findings/finding.js';
import { printMm } from '../../units/print-length.js';
import type { CableReelOptions } from '../cable-reel-options.js';
import { stated, stop, upTo } from '../helm-wheel/limit.js';
import { thicknessFindings } from '../named-stock.js';
import { BITE, fixings, plankLevels, rodSite } from './fixings.js';
import { oneThick } from './guide.js';
import { jointInTheWay } from './rod-joint.js';
import { boreRadius, coreReach, type ReelSizes } from './sizes.js';

/** How far a flange stands over the core at the least; common practice, no source: under it nothing stays wound. */
const OVERHANG = 5;
/** Narrowest inner face of a stave, plank, and tip of a segment; common practice, no source. */
const LEAST_STAVE = 2;
const LEAST_PLANK = 8;
const LEAST_TIP = 5;
/** Wood between the bore and a seam that it does not cross, and how far it crosses one; common practice, no source. */
const BORE_WALL = 3;

/** Keys that belong to the other way of building a flange. */
export function buildFindings({ flange, battens }: CableReelOptions): Finding[] {
  const planks = flange.build !== 'segments';
  const given = planks
    ? [
        ...(flange.layers !== undefined && flange.layers !== 1 ? ['flange.layers'] : []),
        ...(flange.seam ? ['flange.seam'] : []),
      ]
    : battens
      ? ['battens']
      : [];
  return given.map(where => ({
    level: 'stop',
    rule: 'flange-build',
    where,
    message: `${where} is given, but flange.build is ${planks ? 'planks' : 'segments'}; allowed: left out, or flange.build: ${planks ? 'segments' : 'planks'}`,
    value: 'given',
    limit: 'left out',
  }));
}

function coreFits(s: ReelSizes): Finding[] {
  const { core, flange } = s;
  const found: Finding[] = [];
  if (!(core.stave.inner >= LEAST_STAVE)) {
    const most = core.apothem - LEAST_STAVE / 2 / Math.tan(core.stave.bevel);
    const what = `its ${core.staves} staves leave no inner face ${LEAST_STAVE} mm wide; allowed: ${upTo(most, 'fewer staves')}`;
    found.push(stop('stave-thickness', 'core.thickness', core.thickness, most, what));
  }
  if (!(coreReach(s) + OVERHANG <= flange.radius)) {
    const least = 2 * (coreReach(s) + OVERHANG);
    const what = `the core's corners lie ${stated(coreReach(s))} mm from the middle and the flange must stand ${OVERHANG} mm over them; allowed: at least ${stated(least)} mm`;
    found.push(stop('flange-overhang', 'flange.diameter', 2 * flange.radius, least, what));
  }
  return found;
}

function planksFit(s: ReelSizes): Finding[] {
  const width = (2 * s.flange.radius) / s.flange.pieces;
  if (width < LEAST_PLANK) {
    const most = Math.floor((2 * s.flange.radius) / LEAST_PLANK);
    const message = `flange.pieces is ${s.flange.pieces}: planks ${stated(width)} mm wide are under ${LEAST_PLANK} mm; allowed: at most ${most}`;
    return [
      { level: 'stop', rule: 'plank-width', where: 'flange.pieces', message, value: s.flange.pieces, limit: most },
    ];
  }
  const bore = boreRadius(s);
  const near = plankLevels(s).find(y => bore > 0 && Math.abs(Math.abs(y) - bore) < BORE_WALL);
  if (near === undefined) return [];
  const [below, above] = [Math.abs(near) - BORE_WALL, Math.abs(near) + BORE_WALL].map(r => 2 * r - s.fit.bore);
  const what = `its hole all but touches the seam ${stated(Math.abs(near))} mm from the middle; allowed: ${upTo(below!, `at least ${stated(above!)} mm`)}, or another number of planks`;
  return [stop('bore-seam', 'bore.axle', s.axle, above!, what)];
}

function segmentsFit(s: ReelSizes): Finding[] {
  const tip = 2 * boreRadius(s) * Math.sin(Math.PI / s.flange.pieces);
  if (tip >= LEAST_TIP) return [];
  const least = LEAST_TIP / Math.sin(Math.PI / s.flange.pieces) - s.fit.bore;
  const what = `${s.flange.pieces} segments would run out in tips under ${LEAST_TIP} mm wide at the bore; allowed: at least ${stated(least)} mm, or fewer segments, or flange.build: planks`;
  return [stop('segment-tip', 'bore.axle', s.axle, least, what)];
}

function boreFits(s: ReelSizes): Finding[] {
  const most = 2 * (s.core.apothem - s.core.thickness) - s.fit.bore;
  if (s.axle === 0 || s.axle < most) return [];
  const what = `it goes through the core's hollow; allowed: ${upTo(most, 'a larger core.diameter, or thinner staves')}`;
  return [stop('bore-core', 'bore.axle', s.axle, most, what)];
}

function fixingsFit(s: ReelSizes): Finding[] {
  const found = fixings(s);
  if (found === 'no battens') {
    const message = `battens.width is ${stated(s.battens?.width ?? 0)} mm: ${s.battens?.count} battens find no place clear of bore and washers where they hold the outermost planks by ${BITE} mm; allowed: narrower or fewer battens, fewer planks, thinner rods, or flange.build: segments`;
    const value = s.battens?.width ?? 0;
    return [{ level: 'stop', rule: 'batten-place', where: 'battens.width', message, value, limit: 0 }];
  }
  if (found !== 'no rods') return [];
  const joint = jointInTheWay(s);
  if (joint) return [joint];
  const { from, to, wall } = rodSite(s);
  const room =
    to >= from
      ? `no circle ${stated(from)} to ${stated(to)} mm from the middle keeps ${stated(wall)} mm of wood between every hole and every seam`
      : `their washers do not fit round the bore and inside the core`;
  const what = `${s.rods.count} rods: ${room}; allowed: thinner or fewer rods, a larger core, or another number of ${s.flange.build}`;
  return [stop('rod-place', 'rods.diameter', s.rods.diameter, 0, what)];
}

/** A laser cuts square. */
function squareStaves({ core }: ReelSizes): Finding[] {
  if (core.bevelled) return [];
  const { gap } = core.stave;
  return [
    {
      level: 'warn',
      rule: 'stave-bevel',
      where: 'core.staves',
      message: `core.staves is ${core.staves}: a laser cuts no bevel, so the staves are square and as wide as their inner face, ${printMm(core.stave.inner)}; they meet along their inner corners and leave gaps ${printMm(gap)} wide outside. Closed joints: method router or hand`,
      value: gap,
      limit: 0,
    },
  ];
}

/** Independent limits first; where rods and battens go only once those hold. */
export function reelLimits(s: ReelSizes): Finding[] {
  const planked = s.flange.build === 'planks';
  const first = [
    ...oneThick(s).flatMap(p => thicknessFindings(p, s.method)),
    ...coreFits(s),
    ...boreFits(s),
    ...(planked ? planksFit(s) : segmentsFit(s)),
  ];
  return first.length > 0 ? first : [...fixingsFit(s), ...squareStaves(s)];
}
