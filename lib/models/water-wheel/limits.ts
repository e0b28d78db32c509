import type { Finding } from '../../findings/finding.js';
import { barReach, tabRoom } from '../../joints/raked-slot.js';
import { printMm } from '../../units/print-length.js';
import { fromTo, stated, stop } from '../helm-wheel/limit.js';
import { type OneThick, thicknessFindings } from '../named-stock.js';
import {
  clearOfSeams,
  type PaddlePlaces,
  paddleBar,
  paddlePlaces,
  paddlesApart,
  paddleTabs,
  type RimSeams,
  slotWall,
} from './layout.js';
import { spokeWedge, type WaterSizes, wedgeFlat } from './sizes.js';

/** Parts of one thickness of their stock, by the plan's field. The rims see to themselves. */
export const oneThick = ({ paddles, spokes, hub }: WaterSizes): OneThick[] => [
  { where: 'paddles.thickness', ...paddles },
  { where: 'spokes.thickness', ...spokes },
  { where: 'hub.thickness', ...hub },
];

/** What a hub disc covers past the wedges' corners, what it stays inside the rim by, wood round its bore, and the flank a wedge keeps;
 * common practice, no source. */
const HUB_COVER = 4;
const HUB_AIR = 2;
const BORE_WALL = 6;
const LEAST_FLANK = 1;
/** Between the paddles' inner edges and the axle; common practice, no source. */
const AXLE_AIR = 2;

function spokesFit(s: WaterSizes): Finding[] {
  const { corner, reach } = spokeWedge(s);
  const found: Finding[] = [];
  if (!(corner <= s.inner - 1)) {
    const what = `the wedges of ${s.spokes.count} spokes reach ${stated(corner)} mm from the centre, to the rim's inside at ${stated(s.inner)} mm; allowed: narrower or fewer spokes`;
    found.push(stop('spoke-crowding', 'spokes.width', s.spokes.width, s.spokes.width, what));
  }
  const end = Math.sqrt(Math.max(0, s.outer * s.outer - s.inner * s.inner));
  if (!(s.spokes.width / 2 < 0.9 * end)) {
    const what = `its end would not reach across the band; allowed: less than ${stated(1.8 * end)} mm`;
    found.push(stop('spoke-width', 'spokes.width', s.spokes.width, 1.8 * end, what));
  }
  if (!(wedgeFlat(s) <= corner - LEAST_FLANK)) {
    const what = `the wedges are cut back to ${stated(wedgeFlat(s))} mm from the centre and would keep no flank; it must be at most ${stated(corner - LEAST_FLANK)} mm; allowed: wider spokes, more of them, or a thinner axle`;
    found.push(stop('wedge-flank', 'spokes.width', s.spokes.width, s.spokes.width, what));
  }
  const least = Math.max(reach + HUB_COVER, s.axle > 0 ? (s.axle + s.fit.bore) / 2 + BORE_WALL : 0);
  const most = s.inner - HUB_AIR;
  if (!(s.hub.radius >= least && s.hub.radius <= most)) {
    const what = `it must cover the wedges, which reach ${stated(reach)} mm from the centre, keep wood round its bore and stay inside the rim; allowed: ${fromTo(2 * least, 2 * most, 'narrower or fewer spokes, a thinner axle, or a larger rim')}`;
    found.push(stop('hub-cover', 'hub.diameter', 2 * s.hub.radius, 2 * (s.hub.radius < least ? least : most), what));
  }
  return found;
}

function hubThickness(s: WaterSizes): Finding[] {
  const most = s.rim.thickness + s.length / 2;
  if (s.hub.thickness <= most) return [];
  const what = `the two inner discs meet inside the wheel; allowed: at most ${stated(most)} mm`;
  return [stop('hub-thickness', 'hub.thickness', s.hub.thickness, most, what)];
}

function paddlesFit(s: WaterSizes): Finding[] {
  const { depth, count } = s.paddles;
  const discs = s.hub.thickness > s.rim.thickness ? s.hub.radius : 0;
  const least = Math.max(s.axle / 2, discs) + AXLE_AIR;
  const reach = barReach(paddleBar(s));
  if (!(reach >= least)) {
    const what = `paddles come within ${stated(reach)} mm of the centre, where hub and axle need ${stated(least)} mm; allowed: shallower paddles`;
    return [stop('paddle-depth', 'paddles.depth', depth, depth, what)];
  }
  if (paddlesApart(s)) return [];
  const message = `paddles.count is ${count}: neighbours ${stated(depth)} mm deep touch; allowed: fewer or shallower paddles, or less rake`;
  return [{ level: 'stop', rule: 'paddle-crowding', where: 'paddles.count', message, value: count, limit: count - 1 }];
}

/** A slot pressed on by more than this share of its tab is no slot; common practice, no source. */
const MOST_PRESS = 0.1;

function tabsFit(s: WaterSizes): Finding[] {
  const tabs = paddleTabs(s);
  const narrowest = Math.min(s.paddles.thickness, ...(tabs ?? []).map(t => t.to - t.from));
  if (-s.fit.slot > MOST_PRESS * narrowest) {
    const what = `a tab ${stated(narrowest)} mm thick or wide cannot be pressed so; allowed: at least ${stated(-MOST_PRESS * narrowest)} mm`;
    return [stop('slot-fit', 'fit.slot', s.fit.slot, -MOST_PRESS * narrowest, what)];
  }
  if (tabs) return [];
  const { from, to } = tabRoom(paddleBar(s));
  const { count, width } = s.paddles.tabs;
  const wanted = width === undefined ? `${count} tabs` : `${count} tabs ${stated(width)} mm wide`;
  const what = `${wanted} need more than the ${stated(Math.max(0, to - from))} mm in which a slot keeps ${stated(slotWall(s))} mm of wood to the edges of the band; allowed: fewer or narrower tabs, a wider band, thinner paddles, or less rake`;
  return [stop('tab-room', 'rim.band', s.outer - s.inner, s.outer - s.inner, what)];
}

const all = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
/** Numbers of paddles offered instead are this near to the one asked for. */
const OFFERED = 6;

/** Slots clear of seams. Call only with tabs that fit. */
export function slotFindings(s: WaterSizes, seams: RimSeams, places: PaddlePlaces): Finding[] {
  const tabs = paddleTabs(s);
  const { count } = s.paddles;
  const need = slotWall(s) + seams.reach;
  if (!tabs) return [];
  if (clearOfSeams(s, seams, places)) {
    if (places.fromSpokes > 0) return [];
    const message = `paddles.count is ${count}: with ${s.spokes.count} spokes some tabs end under a spoke, where glue does not show and no wedge can be driven; a number of paddles that ${s.spokes.count} divides keeps clear`;
    return [
      { level: 'note', rule: 'slot-spoke', where: 'paddles.count', message, value: count, limit: s.spokes.count },
    ];
  }
  const others = all(Math.max(3, count - OFFERED), Math.min(60, count + OFFERED)).filter(n =>
    clearOfSeams(s, seams, paddlePlaces(s, tabs, seams, n)),
  );
  const offered = others.length > 0 ? `${others.join(', ')} paddles, or ` : '';
  const message = `paddles.count is ${count}: wherever the first stands, a slot comes within ${printMm(places.fromSeams)} of a seam of the rim's ${s.felloes} felloes and their joints, and ${printMm(need)} is needed; allowed: ${offered}another number of felloes, less rake, narrower tabs`;
  return [{ level: 'stop', rule: 'slot-seam', where: 'paddles.count', message, value: places.fromSeams, limit: need }];
}

/** Independent limits first; those that need a wheel with sound spokes and rims only where the first hold. */
export function waterLimits(s: WaterSizes): Finding[] {
  const first = [...oneThick(s).flatMap(p => thicknessFindings(p, s.method)), ...spokesFit(s), ...hubThickness(s)];
  return first.length > 0 ? first : [...paddlesFit(s), ...tabsFit(s)];
}
