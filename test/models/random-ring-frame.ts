/** Random plans of ring frames, inside inequalities that a shop would keep:
 *
 * - full rings (half of them) and arcs of 20 to 350 degrees, 100 mm to 1.6 m; 1 to 16 felloes, none over half a turn
 * - one layer of 12 to 32 mm or two or three of 9 or 12 mm; by laser one to four sheets of 3 to 9 mm
 * - rebates: at most half the band, under layers 0.3 of it less 4 mm; 3.2 mm of wood in front; by laser whole layers
 * - mullions in full rings: 0 to 5 each way, as wide as pitch and corner leave (w <= 2 R / (n + 1) - 6 and the crossing's corner inside R),
 *   3.2 mm of wood in front of them; by laser whole layers, two or more where they cross
 * - legs under arcs of 90 to 270 degrees: higher than their feet's slant, and clear of each other
 * - seams: joints whose smallest size fits beside the nearest notch (see `joints`); finger and scarf clear of the rebate
 */

import type { Method } from '../../lib/stock/stock.js';
import { type Draw, drawer, seeded } from './random-plan.js';

type Plain = Record<string, unknown>;

const CUTTERS: Readonly<Record<Method, Plain>> = {
  router: { kind: 'router', diameter: 3, reach: 40, pass: 3 },
  laser: { kind: 'laser', kerf: 0.2 },
  hand: { kind: 'saw', kerf: 1.2 },
};

const down = (x: number): number => Math.floor(x * 100) / 100;

const wood = (thickness: number, kind: string): Plain =>
  kind === 'sheet'
    ? { kind, width: 4000, length: 8000, thickness }
    : { kind, width: 4000, length: 8000, thickness, true: 3 };

interface Ring {
  readonly laser: boolean;
  readonly full: boolean;
  readonly sweep: number;
  readonly inner: number;
  readonly band: number;
  readonly segments: number;
  readonly layers: number;
  readonly sheet: number;
}

function drawRing(d: Draw, laser: boolean): Ring {
  const full = d.chance(0.5);
  const degrees = full ? 360 : d.one(20, 45, 90, 120, 150, 180, 180, 180, 210, 240, 270, 350);
  const layers = laser ? d.whole(1, 4) : d.one(1, 1, 2, 3);
  const sheet = laser ? d.one(3, 4, 6, 9) : layers > 1 ? d.one(9, 12) : d.one(12, 18, 25, 32);
  const band = d.between(30, 150);
  const inner = d.between(Math.max(40, band / 2), 600);
  const least = Math.max(1, Math.ceil(degrees / 180), full ? 2 : 1);
  return {
    laser,
    full,
    sweep: (degrees * Math.PI) / 180,
    inner,
    band,
    segments: d.whole(least, 16),
    layers,
    sheet,
  };
}

interface Rebate {
  readonly width: number;
  readonly depth: number;
}

/** A rebate, or none where there is no room for one; 0 by 0. @param spare mm of the thickness that something else takes */
function drawRebate(d: Draw, r: Ring, spare: number): Rebate {
  const none = { width: 0, depth: 0 };
  const most = r.layers > 1 ? 0.3 * r.band - 4 : r.band / 2 - 0.1;
  const deepest = r.sheet * r.layers - 3.2 - spare;
  if (most < 4 || !d.chance(0.6)) return none;
  const width = Math.min(down(most), d.between(4, 40));
  if (!r.laser) return deepest < 1 ? none : { width, depth: Math.min(down(deepest), d.between(1, 12)) };
  const taken = Math.min(Math.floor(deepest / r.sheet), r.layers - 1);
  return taken < 1 ? none : { width, depth: r.sheet * d.whole(1, taken) };
}

interface Bars {
  readonly upright: number;
  readonly level: number;
  readonly width: number;
  readonly thickness: number;
}

const placesOf = (n: number, inner: number): number[] =>
  Array.from({ length: n }, (_, i) => -inner + (2 * inner * (i + 1)) / (n + 1));

function drawBars(d: Draw, r: Ring): Bars | undefined {
  const total = r.sheet * r.layers;
  const most = r.laser ? Math.floor((total - 3.2) / r.sheet) * r.sheet : total - 3.2;
  if (!r.full || most < 3 || !d.chance(0.6)) return undefined;
  const [upright, level] = d.one<[number, number]>(
    [1, 0],
    [0, 1],
    [1, 1],
    [d.whole(0, 5), d.whole(1, 5)],
    [d.whole(1, 5), d.whole(0, 5)],
  );
  const both = upright > 0 && level > 0;
  if (both && r.laser && most < 2 * r.sheet) return undefined;
  const thickness = r.laser
    ? r.sheet * d.whole(both ? 2 : 1, Math.round(most / r.sheet))
    : Math.min(down(most), d.between(both ? 4 : 3, 20));
  const [a, b] = [upright, level].map(n => placesOf(n, r.inner).at(-1) ?? 0);
  const pitch = (2 * r.inner) / (Math.max(upright, level) + 1) - 6;
  const room = r.inner - 1;
  const corner = both ? Math.sqrt(Math.max(0, 2 * room * room - (a! - b!) ** 2)) - (a! + b!) : Infinity;
  const widest = Math.min(pitch, corner, 60) - 0.6;
  if (widest < 7) return undefined;
  return { upright, level, width: down(d.between(7, Math.max(7, widest))), thickness };
}

/** Half the widest stretch between the seams' places, as seen modulo a felloe, that no notch takes: how far a seam may be from notches. */
function clearAngle(r: Ring, bars: Bars | undefined, hold: number): number {
  const step = r.sweep / r.segments;
  if (!bars) return step / 2;
  const half = (bars.width + 0.4) / 2;
  const lines = [...placesOf(bars.upright, r.inner), ...placesOf(bars.level, r.inner)].map(Math.abs);
  const wide = Math.max(
    ...lines.map(x => Math.asin((x + half) / r.inner) - Math.asin((x - half) / (r.inner + hold))),
    ...lines.map(x => Math.asin((x + half) / (r.inner + hold)) - Math.asin((x - half) / r.inner)),
  );
  const at = [
    ...placesOf(bars.upright, r.inner).flatMap(x => [Math.asin(x / r.inner), Math.PI - Math.asin(x / r.inner)]),
    ...placesOf(bars.level, r.inner).flatMap(y => [
      Math.PI / 2 - Math.asin(y / r.inner),
      Math.asin(y / r.inner) - Math.PI / 2,
    ]),
  ];
  const folded = at.map(a => ((((a % step) + step) % step) + 1e-9) % step).sort((x, y) => x - y);
  const gap = Math.max(...folded.map((x, i) => (folded[i + 1] ?? folded[0]! + step) - x));
  return gap / 2 - wide;
}

/** Fingers the library makes of itself: about as wide as the felloe is thick, an odd number, three at least. */
function fingers(band: number, thickness: number): number {
  const about = Math.floor(band / Math.max(thickness, 12));
  return Math.max(3, about % 2 === 1 ? about : about - 1);
}

function joints(r: Ring, rebate: Rebate, clear: number, edge: number, bars: boolean): string[] {
  const { laser, band, sheet, layers, inner } = r;
  const step = r.sweep / r.segments;
  const free = inner * Math.tan(Math.min(clear, step / 2, 1.4));
  const kept = Math.max(rebate.width, edge);
  const taken = rebate.depth > sheet ? 1 : rebate.depth / sheet;
  const mid = inner + band / 2;
  // layers under mullions have pins on the stretches that joints and notches leave
  if (bars && layers > 1) return ['butt'];
  const biscuit = band - 2 * kept >= 100 && sheet >= 16 && free > 32;
  const dowel = !laser && sheet >= 12 && sheet <= 25.4 && band - 2 * kept >= 60 && free > 38;
  const finger = taken < 0.7 && free > 5 + (0.4 * band) / fingers(band, sheet);
  const key = band >= 50 + 3 * kept && free > 8 + band / 6 && (laser ? layers > 1 : sheet >= 7);
  const thin = rebate.depth > sheet / 2 - 2;
  const scarf = laser ? layers > 1 : !thin && (2.2 * sheet) / mid < Math.min(0.8 * step, 2 * (clear - 4 / inner));
  return [
    'butt',
    ...(biscuit ? ['biscuit'] : []),
    ...(dowel ? ['dowel'] : []),
    ...(finger ? ['finger'] : []),
    ...(key ? ['key'] : []),
    ...(scarf ? ['scarf'] : []),
  ];
}

function drawLegs(d: Draw, r: Ring): number | undefined {
  if (r.full || Math.abs(r.sweep - Math.PI) > Math.PI / 2 + 1e-9 || !d.chance(0.7)) return undefined;
  const slant = r.band / 2 / Math.abs(Math.tan(r.sweep / 2));
  const inwards = -Math.cos(r.sweep / 2);
  const most = inwards > 1e-9 ? (r.inner * Math.sin(r.sweep / 2) - 6) / inwards - slant : 2000;
  const least = slant + 2;
  return most < least + 2 ? undefined : down(least + (Math.min(most, 2000) - least) * d.between(0.05, 0.95));
}

/** Whether a recess leaves less than 1.6 mm of the layer it ends in. */
const thinRest = (depth: number, sheet: number): boolean => {
  const rest = Math.ceil(depth / sheet - 1e-6) * sheet - depth;
  return rest > 1e-6 && rest < 1.6;
};

function attempt(d: Draw, method: Method): Plain | undefined {
  const r = drawRing(d, method === 'laser');
  const bars = drawBars(d, r);
  const rebate = drawRebate(d, r, bars?.thickness ?? 0);
  const step = r.sweep / r.segments;
  if (!r.laser && r.layers > 1 && [rebate.depth, rebate.depth + (bars?.thickness ?? 0)].some(h => thinRest(h, r.sheet)))
    return undefined;
  const hold = rebate.width > 0 ? rebate.width : Math.min(12, r.band / 2);
  const clear = clearAngle(r, bars, hold);
  // two pins of each layer's felloes stand between seams and notches
  const pinned = bars ? 3.5 * bars.width + 40 : 24;
  if (r.layers > 1 && (r.inner * step) / 2 < pinned) return undefined;
  if (r.inner * step < 16) return undefined;
  // seams of every layer find room between notches
  if (bars && (r.layers > 1 ? clear - step / 8 : clear) * r.inner < 3.5) return undefined;
  const total = r.sheet * r.layers;
  const front = total - rebate.depth - (bars?.thickness ?? 0);
  const edge = r.laser || !d.chance(0.3) ? 0 : down(Math.min(front - 0.1, total / 2, r.band / 4, 6));
  const joint = d.one(...joints(r, rebate, clear, edge, bars !== undefined));
  const legs = drawLegs(d, r);
  const many = r.layers === 1 ? {} : d.chance(0.5) ? { thickness: total, layers: r.layers } : { layers: r.layers };
  const kind = (): string => (r.laser ? 'sheet' : d.one('board', 'sheet'));
  return {
    rimwright: 1,
    title: 'Random frame',
    units: 'mm',
    model: 'ring-frame',
    ring: {
      outside: Number((2 * (r.inner + r.band)).toFixed(2)),
      band: r.band,
      ...(!r.full && { sweep: `${Math.round((r.sweep * 180) / Math.PI)}deg` }),
      segments: r.segments,
      ...many,
      seam: { joint },
      stock: 'ring',
    },
    ...(rebate.width > 0 && { rebate }),
    ...(bars && {
      mullions: {
        ...(bars.upright > 0 && { upright: bars.upright }),
        ...(bars.level > 0 && { level: bars.level }),
        width: bars.width,
        ...(r.laser && { thickness: bars.thickness }),
        stock: 'bar',
      },
    }),
    ...(legs !== undefined && { legs: { height: legs } }),
    ...(edge > 0.3 && {
      edges: { ring: { shape: d.one('round', 'chamfer'), radius: edge, faces: d.one('front', 'both') } },
    }),
    method,
    cutter: CUTTERS[method],
    fit: { lap: d.between(0, 0.4), mullion: d.between(0, 0.4), pane: d.one(1, 2, 3) },
    stock: { ring: wood(r.sheet, kind()), bar: wood(r.laser ? r.sheet : (bars?.thickness ?? 10), kind()) },
  };
}

/** A plan of a ring frame for a seed and a method; the same one every time. */
export function randomRingFrame(seed: number, method: Method): Plain {
  const d = drawer(seeded(seed));
  for (;;) {
    const plan = attempt(d, method);
    if (plan) return plan;
  }
}
