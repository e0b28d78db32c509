import { polar } from '../../geometry/point.js';
import { type Bore, hubDisc } from '../../parts/hub-disc.js';
import { shoulderHole } from '../../stock/bearings.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import { coreSizes, screwCircle, shaftOf } from './core.js';
import { spokeFront, spokeSlabs } from './layers.js';
import type { DiscSizes, HelmSizes } from './sizes.js';

/** Whether a disc carries a bearing: both where the wheel turns on its own; the rearmost one where the shaft turns. */
export function seatsBearing(s: HelmSizes, disc: DiscSizes): boolean {
  if (disc.axis.kind !== 'bearing') return false;
  const others = s.discs.filter(d => d.axis.kind === 'bearing');
  return s.turns !== 'shaft' || disc === others.at(-1);
}

/** The hole in a disc's middle: the bearing's seat, or a hole for what runs through; each with the fit. */
export function discBore(s: HelmSizes, disc: DiscSizes): Bore {
  const { axis } = disc;
  if (axis.kind === 'none') return { kind: 'none' };
  if (axis.kind === 'axle' || !seatsBearing(s, disc)) return { kind: 'through', diameter: shaftOf(axis) + s.fit.bore };
  const diameter = axis.bearing.outside + s.fit.bore;
  if (axis.seat === 'through') return { kind: 'through', diameter };
  return { kind: 'seat', diameter, depth: axis.bearing.width, face: disc.face, shoulder: shoulderHole(axis.bearing) };
}

/** Height of a disc's lower face: on the spokes' fronts, or under their backs. */
function discHeight(s: HelmSizes, disc: DiscSizes): Mm {
  return disc.face === 'front' ? spokeFront(s) : spokeFront(s) - s.spoke.thickness - disc.thickness;
}

/** Lettering below the bore, inside the circle of screws. */
function letteringAt(s: HelmSizes, disc: DiscSizes, bore: Bore): Lettering {
  const screw = screwCircle(s);
  const hole = bore.kind === 'none' ? 0 : bore.diameter / 2;
  const edge = screw && disc.face === 'back' ? screw.radius - screw.screw.shank : disc.radius;
  const middle = (hole + edge) / 2;
  return { at: { x: 0, y: -middle }, height: Math.min(10, (edge - hole) / 3), length: 1.2 * middle };
}

function discDraft(s: HelmSizes, disc: DiscSizes): Draft {
  const bore = discBore(s, disc);
  const screw = screwCircle(s);
  const holes = screw &&
    disc.face === 'back' && { count: s.spokes, radius: screw.radius, diameter: screw.screw.shank, from: Math.PI / 2 };
  const part = hubDisc({
    diameter: 2 * disc.radius,
    bore,
    thickness: disc.thickness,
    stock: disc.stock.name,
    grained: disc.stock.kind === 'board',
    id: `hub-disc-${disc.face}`,
    name: `Hub disc, ${disc.face}`,
    ...(holes && { holes }),
  });
  return {
    part,
    turn: 0,
    z: discHeight(s, disc),
    lettering: letteringAt(s, disc, bore),
  };
}

/** Above the shaft, as long as the plug is wide there. */
function plugLettering(plug: Mm, shaft: Mm): Lettering {
  const at = polar((plug + shaft) / 2, Math.PI / 2);
  const height = Math.min(3, (plug - shaft) / 3);
  const top = at.y + height / 2;
  return { at, height, length: 1.6 * Math.sqrt(plug * plug - top * top) };
}

/** The plug between the discs that is locked to the shaft: as thick as the spokes, in as many layers. */
function plugDrafts(s: HelmSizes): Draft[] {
  const { plug, shaft } = coreSizes(s);
  if (plug === undefined) return [];
  return spokeSlabs(s).map(slab => ({
    part: hubDisc({
      diameter: 2 * plug,
      bore: { kind: 'through', diameter: 2 * shaft + s.fit.bore },
      thickness: slab.thickness,
      stock: s.spoke.stock.name,
      grained: false,
      kind: 'core-plug',
      id: 'core-plug',
      name: 'Core plug',
    }),
    turn: 0,
    z: slab.z,
    lettering: plugLettering(plug, shaft),
  }));
}

/** Every piece of the hub. */
export const hubDrafts = (s: HelmSizes): Draft[] => [...s.discs.map(d => discDraft(s, d)), ...plugDrafts(s)];
