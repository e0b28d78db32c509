import { type Bore, hubDisc } from '../../parts/hub-disc.js';
import { shoulderHole } from '../../stock/bearings.js';
import { type Screw, screwLength, screws } from '../../stock/screws.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { takesScrews } from '../glues.js';
import type { Lettering } from '../lettering.js';
import { type PrizeSizes, RUNNING, seatRadius, shaftOf } from './sizes.js';

/** The hole in a hub disc: the bearing's seat from its outer face where the wheel turns on it, else a hole for what runs through it. */
export function discBore(s: PrizeSizes, face: 'front' | 'back'): Bore {
  const { axis } = s.hub;
  if (s.turns !== 'bearing' || axis.kind === 'axle')
    return { kind: 'through', diameter: shaftOf(axis) + s.fit.bore + (s.turns === 'bearing' ? RUNNING : 0) };
  const diameter = axis.bearing.outside + s.fit.bore;
  if (axis.seat === 'through') return { kind: 'through', diameter };
  return { kind: 'seat', diameter, depth: axis.bearing.width, face, shoulder: shoulderHole(axis.bearing) };
}

/** The hole in the stand plate: the bearing's seat where the shaft turns in it, else the axle locked in it. */
export function plateBore(s: PrizeSizes): Bore {
  const { axis } = s.hub;
  if (s.turns !== 'shaft') return { kind: 'through', diameter: shaftOf(axis) + s.fit.bore };
  if (axis.kind === 'axle') return { kind: 'through', diameter: axis.diameter + s.fit.bore + RUNNING };
  const diameter = axis.bearing.outside + s.fit.bore;
  if (axis.seat === 'through') return { kind: 'through', diameter };
  return { kind: 'seat', diameter, depth: axis.bearing.width, face: 'back', shoulder: shoulderHole(axis.bearing) };
}

/** Screws from behind through the hub into the face. */
export interface HubScrews {
  readonly screw: Screw;
  readonly count: number;
  readonly radius: Mm;
  readonly from: Radians;
  readonly length: Mm;
}

/** Thickest screw of a hub; from a screw's middle to any edge, and least a thread bites, in its diameters; common practice, no source. */
const MOST_GAUGE = 8;
const EDGE = 2.5;
const BITE = 2;
const SHORT_OF: Mm = 2;
/** Screws of a face in one piece. */
const COMMON = 6;

/** Two screws for every segment, as far from its seams as they go; none where there is no room for them, and where screws do not hold.
 * @param seam angle of one seam of the rearmost layer */
export function hubScrews(s: PrizeSizes, seam: Radians): HubScrews | undefined {
  const { hub, face } = s;
  if (!takesScrews(hub.stock, face.stock)) return undefined;
  const inside = Math.max(face.hole, seatRadius(hub.axis));
  const count = face.segments === 1 ? COMMON : 2 * face.segments;
  const radius = (inside + hub.radius) / 2;
  const found = screws.flatMap(screw => {
    const length = screwLength(screw, hub.thickness + face.thickness - SHORT_OF);
    const room = hub.radius - inside >= 2 * EDGE * screw.diameter;
    const apart = radius * Math.sin(Math.PI / count) >= EDGE * screw.diameter;
    const bites = length !== undefined && length - hub.thickness >= BITE * screw.diameter;
    return screw.gauge <= MOST_GAUGE && room && apart && bites ? [{ screw, length }] : [];
  });
  const last = found.at(-1);
  return last && { ...last, count, radius, from: Math.PI / 2 + seam + Math.PI / count };
}

/** Between the bore and the screws, or the edge. */
function lettering(bore: Bore, outside: Mm): Lettering {
  const hole = bore.kind === 'none' ? 0 : bore.diameter / 2;
  const middle = (hole + outside) / 2;
  return { at: { x: 0, y: -middle }, height: Math.min(10, (outside - hole) / 3), length: 1.2 * middle };
}

/** The hub disc behind the face, and the one in front of it where there are two. */
export function hubDrafts(s: PrizeSizes, screwed: HubScrews | undefined): Draft[] {
  const { radius, thickness, stock, faces } = s.hub;
  const disc = (face: 'front' | 'back'): Draft => {
    const bore = discBore(s, face);
    const holes = face === 'back' ? screwed : undefined;
    const part = hubDisc({
      diameter: 2 * radius,
      bore,
      thickness,
      stock: stock.name,
      grained: stock.kind === 'board',
      id: `hub-disc-${face}`,
      name: `Hub disc, ${face}`,
      ...(holes && {
        holes: { count: holes.count, radius: holes.radius, diameter: holes.screw.shank, from: holes.from },
      }),
    });
    const outside = holes ? holes.radius - holes.screw.shank : radius;
    return {
      part,
      turn: 0,
      z: face === 'front' ? s.face.thickness : -thickness,
      lettering: lettering(bore, outside),
    };
  };
  return faces === 'both' ? [disc('back'), disc('front')] : [disc('back')];
}
