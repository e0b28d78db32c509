import { type Wedge, wedge } from '../../parts/spoke.js';
import { type Screw, screwLength, screws } from '../../stock/screws.js';
import type { Mm } from '../../units/length.js';
import { takesScrews } from '../glues.js';
import type { Axis, DiscSizes, HelmSizes } from './sizes.js';

/** What goes on in the wheel's middle, between the hub discs; mm. */
export interface CoreSizes {
  /** radius of the shaft or axle; 0 for none */
  readonly shaft: Mm;
  /** where the spokes' wedges are cut back flat, from the wheel's centre */
  readonly flat: Mm;
  /** radius of the plug that fills the space between the flats and is locked to the shaft; absent where there is none */
  readonly plug?: Mm;
}

/** Wood round the shaft in a core plug: what we like, and what a locking screw needs; common practice, no source. */
const PLUG_WALL: Mm = 8;
const PLUG_WALL_LEAST: Mm = 4;
/** Air between the spokes' flats and what turns past them; common practice, no source. */
const AIR: Mm = 1;
/** Half width of the narrowest tip that survives handling; common practice, no source. */
const FEATHER: Mm = 1.5;
/** Flank left on a wedge so that neighbours still bear on each other; common practice, no source. */
export const LEAST_FLANK: Mm = 1;

/** Diameter of what an axis runs through the wheel. */
export const shaftOf = (axis: Axis): Mm =>
  axis.kind === 'none' ? 0 : axis.kind === 'axle' ? axis.diameter : axis.bearing.bore;

/** Radius a disc's bearing takes up behind the disc, where it is wider than the disc is thick. */
function protruding(disc: DiscSizes): Mm {
  const { axis } = disc;
  return axis.kind === 'bearing' && axis.seat === 'through' && axis.bearing.width > disc.thickness
    ? axis.bearing.outside / 2 + AIR
    : 0;
}

/** The wedge on the spokes' inner ends. */
export const spokeWedge = (s: HelmSizes): Wedge => wedge({ count: s.spokes, width: s.width, clearance: s.fit.wedge });

/** The space the spokes leave in the middle, whether or not the wedges can spare it (see the wedge-flank check). */
export function coreSizes(s: HelmSizes): CoreSizes {
  const { angle, apex, corner } = spokeWedge(s);
  const shaft = Math.max(0, ...s.discs.map(d => shaftOf(d.axis))) / 2;
  const clear = Math.max(apex + FEATHER / Math.tan(angle), shaft > 0 ? shaft + AIR : 0, ...s.discs.map(protruding));
  const wall = Math.min(PLUG_WALL, corner - LEAST_FLANK - shaft);
  if (s.turns !== 'shaft' || shaft === 0 || wall < PLUG_WALL_LEAST) return { shaft, flat: clear };
  const flat = Math.max(clear, shaft + wall);
  return { shaft, flat, plug: flat };
}

/** The circle of screws that holds the discs to the spokes; mm. */
export interface ScrewCircle {
  readonly radius: Mm;
  readonly screw: Screw;
  readonly length: Mm;
  /** whether the screws pass through the spokes, into the front disc */
  readonly through: boolean;
}

/** Wood a screw's point stays short of the far face by; common practice, no source. */
export const SHORT_OF: Mm = 3;
/** Least a thread bites, in screw diameters: under it a screw only fills a hole; common practice, no source. */
const BITE = 2;

/** How far the screws reach: from behind through the spokes into the front disc, or from the back disc into the spokes; none that bite. */
function reach(s: HelmSizes, screw: Screw): Pick<ScrewCircle, 'length' | 'through'> | undefined {
  const thickness = (face: 'front' | 'back'): Mm => s.discs.find(d => d.face === face)?.thickness ?? 0;
  const [front, back] = [thickness('front'), thickness('back')];
  const into = (before: Mm, last: Mm, through: boolean): Pick<ScrewCircle, 'length' | 'through'>[] => {
    const length = last > 0 ? screwLength(screw, before + last - SHORT_OF) : undefined;
    return length !== undefined && length - before >= BITE * screw.diameter ? [{ length, through }] : [];
  };
  return [...into(back + s.spoke.thickness, front, true), ...(back > 0 ? into(back, s.spoke.thickness, false) : [])][0];
}

/** From a screw's middle to any edge, in screw diameters: edge distance of wood screws, NDS commentary (from memory). */
const EDGE = 2.5;

/** Radius of the widest hole in a disc. */
export const widestBore = (axis: Axis): Mm =>
  axis.kind === 'none' ? 0 : axis.kind === 'axle' ? axis.diameter / 2 : axis.bearing.outside / 2;

/** The thickest screw a hub takes, and its share of the spoke's width and thickness; common practice, no source. */
const MOST_GAUGE = 8;
const hubScrew = (s: HelmSizes): Screw | undefined =>
  screws.filter(x => x.gauge <= MOST_GAUGE && x.diameter <= s.width / 4 && x.diameter <= s.spoke.thickness / 3).at(-1);

/** Screws beyond the wedges' corners, one a spoke, half way to the edge of the smaller disc; none where there is no room. */
export function screwCircle(s: HelmSizes): ScrewCircle | undefined {
  if (!takesScrews(s.spoke.stock, ...s.discs.map(d => d.stock))) return undefined;
  const screw = hubScrew(s);
  const held = screw && reach(s, screw);
  if (!held) return undefined;
  const inside = Math.max(spokeWedge(s).reach, ...s.discs.map(d => widestBore(d.axis)));
  const outside = Math.min(...s.discs.map(d => d.radius)) - (s.edges.hub?.radius ?? 0);
  if (outside - inside < 2 * EDGE * screw.diameter) return undefined;
  return {
    radius: (inside + outside) / 2,
    screw,
    ...held,
  };
}
