/** Random plans of helm wheels for property tests: everything a plan may vary, inside inequalities that a shop would keep.
 *
 * 3 <= spokes <= 36, 3 <= felloes <= 24, 12 <= width <= 45 mm, all methods, handles, bores, faces, seams. A plan keeps to:
 * - hub radius >= wedge reach + 6 mm, + what the bore takes; rim inner radius >= hub radius + 15 mm
 * - at the rim's inner edge at least 12 mm of wood between two laps, and none of a seam's 4 mm beside a lap
 * - handles at least 2.2 spoke widths and thicknesses long; boards wider than felloe and trim need
 * - seams: see random-seam.ts
 * - half laps in a rim of one layer, or of layers with the spokes as thick as the rim; layered laps in 2 to 4 layers; bridles in 3 to 5
 * - felloes of a rim of layers at least 45 mm long inside
 * - plugs at least four plug diameters and 40 mm apart, on trim of 8 mm or more
 */

import type { Method } from '../../lib/stock/stock.js';
import { randomSeam } from './random-seam.js';

export type Random = () => number;

/** A small seeded generator (mulberry32, public domain algorithm by T. Ettinger), 0 to 1. */
export function seeded(seed: number): Random {
  let s = seed >>> 0;
  return () => {
    s = (s + 0x6d2b79f5) >>> 0;
    let t = Math.imul(s ^ (s >>> 15), s | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const round = (x: number): number => Math.round(x * 100) / 100;

export interface Draw {
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  one<T>(...of: readonly T[]): T;
  chance(share: number): boolean;
}

export function drawer(random: Random): Draw {
  return {
    between: (low, high) => round(low + random() * (high - low)),
    whole: (low, high) => low + Math.floor(random() * (high - low + 1)),
    one: (...of) => of[Math.floor(random() * of.length)]!,
    chance: share => random() < share,
  };
}

const BEARINGS: Readonly<Record<string, readonly [number, number, number]>> = {
  '608': [8, 22, 7],
  '6000': [10, 26, 8],
  '6202': [15, 35, 11],
};

type Plain = Record<string, unknown>;

interface Hub {
  readonly bore: Plain | 'none';
  readonly radius: number;
  readonly turns: string;
  readonly faces: string;
}

function hub(d: Draw, spokes: number, width: number, laser: boolean): Hub {
  const reach = width / 2 / Math.sin(Math.PI / spokes);
  const flank = width / 2 / Math.tan(Math.PI / spokes);
  const shaft = Math.max(3, Math.min(15, flank - 4));
  const kind = d.one('none', 'axle', 'bearing');
  const name = d.one(...Object.keys(BEARINGS));
  const bearing = BEARINGS[name]!;
  const fits = kind === 'bearing' && bearing[1] / 2 + 3 < flank;
  const bore = fits
    ? { bearing: name, seat: laser ? 'through' : d.one('through', 'shoulder') }
    : kind === 'none' || (shaft < 7 && !laser) // no opening for a cutter of 6 mm
      ? 'none'
      : { axle: round(shaft) };
  const wide = fits ? bearing[1] / 2 : shaft / 2;
  const turns = bore === 'none' ? 'fixed' : fits ? d.one('shaft', 'bearing') : d.one('shaft', 'fixed');
  const faces = turns === 'fixed' ? 'front' : turns === 'bearing' ? 'both' : d.one('front', 'back', 'both');
  return { bore, turns, faces, radius: round(Math.max(reach, wide) + 7 + d.between(0, 40)) };
}

/** How spokes cross the rim, and the layers it takes; mm. */
interface Crossing {
  readonly lap: string;
  readonly layers: number;
  /** of one layer of the rim */
  readonly sheet: number;
  readonly spoke: { readonly thickness: number; readonly stock: Plain };
  /** layers that have seams, and whether laps are pockets in them */
  readonly seamed: number;
  readonly pockets: boolean;
}

function crossing(d: Draw, laser: boolean): Crossing {
  const lap = d.one('half', 'half', 'half', 'layered', 'bridle');
  const built = laser || lap !== 'half' || d.chance(0.25);
  const sheet = laser ? d.one(3, 4, 6, 9) : built ? d.one(6, 9, 12) : d.one(16, 19.05, 25);
  const kind = laser ? 'sheet' : d.one('board', 'sheet');
  if (lap === 'bridle') {
    const layers = d.whole(3, 5);
    const thickness = sheet * d.whole(1, layers - 2);
    const seamed = layers - thickness / sheet;
    return {
      lap,
      layers,
      sheet,
      spoke: { thickness, stock: board(laser ? sheet : thickness, kind) },
      seamed,
      pockets: false,
    };
  }
  const layers = built ? d.whole(2, 4) : 1;
  const thickness = sheet * layers;
  const seamed = layers - Math.floor(layers / 2);
  if (laser || lap === 'layered')
    return { lap, layers, sheet, spoke: { thickness, stock: board(sheet, kind) }, seamed, pockets: false };
  const own = layers === 1 && d.chance(0.2) ? 22 : thickness;
  return {
    lap,
    layers,
    sheet,
    spoke: { thickness: own, stock: board(own, 'board') },
    seamed,
    pockets: layers % 2 === 1,
  };
}

/** Shortest felloe, at its inner edge, in a rim of layers: room for pins; mm. */
const LEAST_FELLOE = 45;

/** One plan, as the object its YAML or JSON would hold; undefined where the draw broke an inequality (draw again). */
function attempt(d: Draw, wanted?: Method): Plain | undefined {
  const method = wanted ?? d.one('router', 'laser', 'hand');
  const laser = method === 'laser';
  const spokes = d.whole(3, 36);
  const felloes = d.whole(3, 24);
  const width = d.between(12, 45);
  const middle = hub(d, spokes, width, laser);
  const crowd = (width + 0.5 + 12) / 2 / Math.sin(Math.PI / spokes);
  const inner = round(Math.max(crowd, middle.radius + 15) * (1 + d.between(0.02, 0.8)));
  const band = d.between(30, Math.min(120, inner));
  const outer = inner + band;
  const { lap, layers, sheet, spoke, seamed, pockets } = crossing(d, laser);
  const edged = !laser && d.chance(0.5);
  const shape = d.one('plain', 'tapered', 'turned', 'profile');
  const length = round(Math.max(width, spoke.thickness) * d.between(2.2, 6) + 2);
  const half = width / 2;
  const profile = [
    [5, half],
    [round(length * 0.3), round(half * 0.6)],
    [round(length * 0.7), round(half * 0.95)],
    [length, round(half * 0.5)],
  ];
  const trimBand = round(band * d.between(0.4, 0.7));
  const segments = d.whole(3, 24);
  const each = Math.min(4, Math.floor((2 * Math.PI * (inner + band / 2)) / segments / 52));
  const trimThick = laser ? sheet : d.one(9, 12);
  const radius = Math.min(6, round((band - trimBand) / 2 - 0.02), round((sheet * layers) / 2 - 0.5));
  const edge = edged ? radius : 0;
  const room = {
    method,
    felloes,
    spokes,
    inner,
    band,
    lap: width + 0.5,
    thickness: sheet,
    layers,
    seamed,
    pockets,
    edge,
  };
  if (layers > 1 && (2 * Math.PI * inner) / felloes < LEAST_FELLOE) return undefined;
  const joint = randomSeam(d, room);
  if (!joint) return undefined;
  const trim =
    d.chance(0.6) && middle.radius < inner + (band - trimBand) / 2
      ? {
          faces: d.one('front', 'back', 'both'),
          band: trimBand,
          segments,
          stock: 'thin',
          ...(!laser &&
            each > 0 &&
            trimBand > 24 &&
            d.chance(0.5) && { plugs: { diameter: 9.5, each: d.whole(1, each) } }),
        }
      : undefined;
  return {
    rimwright: 1,
    title: 'Random wheel',
    units: 'mm',
    model: 'helm-wheel',
    rim: {
      outside: round(2 * outer),
      band,
      felloes,
      ...(laser ? { thickness: sheet * layers } : { layers }),
      seam: joint,
      stock: 'rim',
    },
    spokes: {
      count: spokes,
      width,
      overall: round(2 * (outer + length)),
      lap,
      ...(laser && { thickness: spoke.thickness }),
      handle: shape === 'profile' ? { profile } : { shape, faces: laser ? 1 : d.one(1, 2) },
      stock: 'spoke',
    },
    hub: { diameter: round(2 * middle.radius), faces: middle.faces, bore: middle.bore, stock: 'hub' },
    ...(trim && { trim }),
    ...(edged && { edges: { rim: { shape: 'round', radius, faces: 'both' } } }),
    turns: middle.turns,
    method,
    cutter: laser
      ? { kind: 'laser', kerf: 0.2 }
      : method === 'hand'
        ? { kind: 'saw', kerf: 1.5 }
        : { kind: 'router', diameter: 6, reach: 60, pass: 6 },
    fit: { lap: d.between(0, 0.4), wedge: d.one(0, 0.1, 0.3), bore: -0.05, plug: -0.02, seam: d.between(0, 0.3) },
    stock: {
      rim: board(sheet, laser ? 'sheet' : d.one('board', 'sheet')),
      spoke: spoke.stock,
      hub: board(laser ? sheet : 19.05, 'sheet'),
      thin: board(trimThick, 'sheet'),
    },
  };
}

const board = (thickness: number, kind: 'board' | 'sheet'): Plain =>
  kind === 'sheet'
    ? { kind, width: 3000, length: 6000, thickness }
    : { kind, width: 2000, length: 6000, thickness, true: 3 };

/** A plan for a seed; the same one every time. @param method any unless given */
export function randomPlan(seed: number, method?: Method): Plain {
  const d = drawer(seeded(seed));
  for (;;) {
    const plan = attempt(d, method);
    if (plan) return plan;
  }
}
