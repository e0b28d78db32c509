import { distance, polar } from '../../geometry/point.js';
import { type Bore, hubDisc } from '../../parts/hub-disc.js';
import type { Face } from '../../parts/part.js';
import { shoulderHole } from '../../stock/bearings.js';
import { type Screw, screwLength, screws } from '../../stock/screws.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { takesScrews } from '../glues.js';
import { SHORT_OF } from '../helm-wheel/core.js';
import type { Lettering } from '../lettering.js';
import { PIN_WALL } from '../registration.js';
import { axle, boreRadii } from './bore.js';
import { navePins } from './layout.js';
import { aboutMiddle, type CapSizes, type CartSizes } from './sizes.js';

/** The thickest screw a cap takes; common practice, no source. */
const MOST_GAUGE = 8;
/** From a screw's middle to any edge, in screw diameters: edge distance of wood screws, NDS commentary (from memory). */
const EDGE = 2.5;
/** Least a thread bites, in screw diameters; common practice, no source. */
const BITE = 2;
/** Caps wider than this take six screws, narrower ones four; common practice, no source. */
const WIDE: Mm = 100;
/** Places tried for the first screw, between one screw and the next. */
const TURNS = 12;
/** Between the axle and the hole in a cap; common practice, no source. */
const AIR: Mm = 1;

/** Screws that hold a cap on the end of the nave. */
export interface CapScrews {
  readonly screw: Screw;
  readonly length: Mm;
  readonly count: number;
  readonly radius: Mm;
  readonly from: Radians;
}

/** Diameter of the hole in a cap; 0 for none: clear of the axle, and of a bearing's inner ring. */
export function capHole(s: CartSizes, cap: CapSizes, face: Face): Mm {
  const { axis } = s.nave;
  if (axis.kind === 'none' || (face === 'front' && !cap.open)) return 0;
  return axis.kind === 'bearing' ? shoulderHole(axis.bearing) : axle(s) + 2 * AIR;
}

/** How far the screws turn from up so that none meets a pin; undefined where there is no such place. */
function clearOfPins(s: CartSizes, radius: Mm, count: number, shank: Mm): Radians | undefined {
  const pins = navePins(s);
  const tried = Array.from({ length: TURNS }, (_, i) => ((i / TURNS) * 2 * Math.PI) / count);
  return tried.find(from =>
    Array.from({ length: count }, (_, i) => polar(radius, from + (2 * Math.PI * i) / count)).every(
      p => !pins || pins.at.every(pin => distance(p, pin) >= (shank + pins.diameter) / 2 + PIN_WALL),
    ),
  );
}

/** The thickest screws there is room for between the bore and the cap's edge, as long as the discs behind it take; none where there is none,
 * and where screws do not hold. */
export function capScrews(s: CartSizes, cap: CapSizes): CapScrews | undefined {
  if (!takesScrews(cap.stock, s.nave.stock)) return undefined;
  const inside = Math.max(boreRadii(s).end, ...cap.faces.map(face => capHole(s, cap, face) / 2));
  const outside = cap.radius - (s.edges.cap?.radius ?? 0);
  const radius = (inside + outside) / 2;
  const count = 2 * cap.radius > WIDE ? 6 : 4;
  for (const screw of screws.filter(x => x.gauge <= MOST_GAUGE).reverse()) {
    if (outside - inside < 2 * EDGE * screw.diameter) continue;
    const length = screwLength(screw, cap.thickness + s.nave.sides.thickness - SHORT_OF);
    if (length === undefined || length - cap.thickness < BITE * screw.diameter) continue;
    const from = clearOfPins(s, radius, count, screw.shank);
    if (from !== undefined) return { screw, length, count, radius, from };
  }
  return undefined;
}

function letteringOn(cap: CapSizes, hole: Mm, screwed: CapScrews | undefined): Lettering {
  if (hole === 0) return { at: { x: 0, y: 0 }, height: Math.min(10, cap.radius / 3), length: cap.radius };
  const edge = screwed ? screwed.radius - screwed.screw.shank : cap.radius;
  const middle = (hole / 2 + edge) / 2;
  return { at: { x: 0, y: -middle }, height: Math.min(10, (edge - hole / 2) / 3), length: 1.2 * middle };
}

function draft(s: CartSizes, cap: CapSizes, face: Face): Draft {
  const { low, high } = aboutMiddle(s, s.nave.middle.thickness + 2 * s.nave.sides.thickness);
  const hole = capHole(s, cap, face);
  const bore: Bore = hole > 0 ? { kind: 'through', diameter: hole } : { kind: 'none' };
  const screwed = capScrews(s, cap);
  const part = hubDisc({
    diameter: 2 * cap.radius,
    bore,
    thickness: cap.thickness,
    stock: cap.stock.name,
    grained: cap.stock.kind === 'board',
    kind: 'hub-cap',
    id: `hub-cap-${face}`,
    name: `Hub cap, ${face}`,
    ...(screwed && { holes: { ...screwed, diameter: screwed.screw.shank } }),
  });
  return {
    part,
    turn: 0,
    z: face === 'front' ? high : low - cap.thickness,
    lettering: letteringOn(cap, hole, screwed),
  };
}

/** The caps on the nave's ends. */
export const capDrafts = (s: CartSizes): Draft[] => {
  const { cap } = s;
  return cap ? cap.faces.map(face => draft(s, cap, face)) : [];
};
