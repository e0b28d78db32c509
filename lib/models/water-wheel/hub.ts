import { SCREW_EDGE } from '../../joints/laid-screws.js';
import { type Bore, hubDisc } from '../../parts/hub-disc.js';
import type { Part } from '../../parts/part.js';
import { type Screw, screwLength, screws } from '../../stock/screws.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { takesScrews } from '../glues.js';
import type { Lettering } from '../lettering.js';
import { spokeWedge, type WaterSizes, wheelHeight } from './sizes.js';

/** A screw of a length, mm. */
export interface Driven {
  readonly screw: Screw;
  readonly length: Mm;
}

/** The thickest screw used; the least a thread bites, in diameters; wood its point stays short of the far face by. Common practice, no source. */
const MOST_GAUGE = 8;
const BITE = 2;
const SHORT_OF: Mm = 3;

/** The thickest screw, of those at most `most` thick, that goes through `before` and bites in `last` without coming through, mm. */
export function drivenScrew(most: Mm, before: Mm, last: Mm): Driven | undefined {
  const fitting = screws.flatMap((screw): Driven[] => {
    const length = screwLength(screw, before + last - SHORT_OF);
    const bites = length !== undefined && length - before >= BITE * screw.diameter;
    return bites && screw.gauge <= MOST_GAUGE && screw.diameter <= most ? [{ screw, length }] : [];
  });
  return fitting.at(-1);
}

/** Screws from the outer disc through every spoke into the inner disc, between wedges and edge; none where there is no room. */
export interface HubCircle extends Driven {
  readonly radius: Mm;
}

export function hubCircle(s: WaterSizes): HubCircle | undefined {
  const { hub, spokes } = s;
  const { reach } = spokeWedge(s);
  const room = (hub.radius - reach) / 2;
  const most = Math.min(room / SCREW_EDGE, spokes.width / (2 * SCREW_EDGE));
  const driven = drivenScrew(most, hub.thickness + spokes.thickness, hub.thickness);
  if (!takesScrews(hub.stock, spokes.stock)) return undefined;
  return driven && { ...driven, radius: reach + room };
}

export const hubBore = ({ axle, fit }: WaterSizes): Mm => (axle > 0 ? axle + fit.bore : 0);

/** Below the bore, inside the circle of screws. */
function lettering(s: WaterSizes, edge: Mm): Lettering {
  const hole = hubBore(s) / 2;
  const middle = (hole + edge) / 2;
  return { at: { x: 0, y: -middle }, height: Math.min(10, (edge - hole) / 3), length: 1.2 * middle };
}

function disc(s: WaterSizes, side: 'outer' | 'inner'): Part {
  const { hub, spokes } = s;
  const circle = side === 'outer' ? hubCircle(s) : undefined;
  const holes = circle && {
    count: spokes.count,
    radius: circle.radius,
    diameter: circle.screw.shank,
    from: Math.PI / 2,
  };
  const bore: Bore = s.axle > 0 ? { kind: 'through', diameter: hubBore(s) } : { kind: 'none' };
  return hubDisc({
    diameter: 2 * hub.radius,
    bore,
    thickness: hub.thickness,
    stock: hub.stock.name,
    grained: hub.stock.kind === 'board',
    id: `hub-disc-${side}`,
    name: `Hub disc, ${side}`,
    ...(holes && { holes }),
  });
}

/** Four discs: on each set of spokes one outside, one inside between them and the middle of the wheel. */
export function hubDrafts(s: WaterSizes): Draft[] {
  const { hub, spokes } = s;
  const [outer, inner] = [disc(s, 'outer'), disc(s, 'inner')];
  const circle = hubCircle(s);
  const front = wheelHeight(s);
  const draft = (part: Part, z: Mm, edge: Mm): Draft => ({ part, turn: 0, z, lettering: lettering(s, edge) });
  const inside = circle ? circle.radius - circle.screw.shank : hub.radius;
  return [
    draft(outer, -spokes.thickness - hub.thickness, inside),
    draft(inner, 0, hub.radius),
    draft(inner, front - hub.thickness, hub.radius),
    draft(outer, front + spokes.thickness, inside),
  ];
}
