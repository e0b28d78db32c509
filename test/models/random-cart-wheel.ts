/** Random plans of cart wheels, inside inequalities that a shop would keep:
 *
 * - 3 to 36 spokes, 10 to 50 mm wide at the foot, at least 8 mm at the rim; tenons and tongues 4 mm wide or more with 1 mm shoulders
 * - the nave as wide as feet, mortises (3 mm between them, 4 mm long or more) and bore (6 mm round it) ask for, and up to 1.6 times that
 * - at the rim's inner edge at least 14 mm from a tongue's wall to the middle between two spokes, where seams are butted or
 *   fingered; with 22 mm there keys in bands over 40 mm; with 42 mm dowels over 50 mm and biscuits over 90 mm, neither by laser; scarfs where two
 *   thicknesses lie between two tongues, in layers of felloes long enough for pins, by laser with 32 mm
 * - the band wide enough for a tongue of 3 mm and the wood under the tyre
 * - by laser 3 to 5 layers of a sheet of 3 to 9 mm and spokes of an odd or even number of layers as the rim; else 1 to 4 layers of 12 to 25 mm
 * - a drilled tongue at most half as thick as the thinner piece; a captured one three tenths of the spoke or more, with 2 mm over each pocket
 */
import type { Method } from '../../lib/stock/stock.js';
import { type Draw, drawer, seeded } from './random-plan.js';

type Plain = Record<string, unknown>;

const BEARINGS: Readonly<Record<string, readonly [bore: number, outside: number, width: number]>> = {
  '608': [8, 22, 7],
  '6001': [12, 28, 8],
  '6202': [15, 35, 11],
};

const CUTTERS: Readonly<Record<Method, Plain>> = {
  laser: { kind: 'laser', kerf: 0.2 },
  hand: { kind: 'saw', kerf: 1.5 },
  router: { kind: 'router', diameter: 3, reach: 60, pass: 3 },
};

const round = (x: number): number => Math.round(x * 100) / 100;
const up = (x: number): number => Math.ceil(x * 100) / 100;

interface Layers {
  readonly joint: 'captured' | 'drilled';
  /** one layer of the rim, and how many */
  readonly ply: number;
  readonly layers: number;
  /** the spokes' stock, and their thickness */
  readonly sheet: number;
  readonly spoke: number;
  /** a disc of the nave */
  readonly disc: number;
}

/** What rim, spokes and nave are built up from. */
function layersOf(d: Draw, method: Method): Layers {
  if (method === 'laser') {
    const ply = d.one(3, 4, 6, 9);
    const layers = d.whole(3, 5);
    return { joint: 'captured', ply, layers, sheet: ply, spoke: ply * (layers === 4 ? 2 : d.one(1, 3)), disc: ply };
  }
  const ply = d.one(12, 15, 18, 19.05, 25);
  const joint = d.chance(method === 'hand' ? 0.7 : 0.3) ? 'drilled' : 'captured';
  const layers = joint === 'drilled' ? d.whole(1, 2) : d.one(2, 2, 3, 4);
  const spoke = layers === 3 ? ply * d.one(1, 2) : d.one(12, 18, 19.05, 24, 38.1);
  return { joint, ply, layers, sheet: spoke, spoke, disc: spoke / d.one(1, 2) };
}

interface Nave {
  readonly bore: Plain | 'none';
  readonly turns: string;
  /** radius of the bore in the middle, and at the ends */
  readonly middle: number;
  readonly end: number;
  readonly length: number;
}

function naveOf(d: Draw, method: Method, { spoke, disc }: Layers): Nave {
  const least = Math.ceil(spoke / disc - 1e-6);
  const long = (most: number): number => round(spoke + 2 * disc * Math.max(least, Math.ceil(most / disc)));
  const kind = d.one('none', 'axle', 'bearing');
  if (kind === 'none') return { bore: 'none', turns: 'fixed', middle: 0, end: 0, length: long(0) };
  if (kind === 'axle') {
    const axle = d.between(4, 25);
    const turns = d.one('shaft', 'bearing', 'fixed');
    return { bore: { axle }, turns, middle: axle / 2 + 0.3, end: axle / 2 + 0.3, length: long(d.between(0, 60)) };
  }
  const name = d.one(...Object.keys(BEARINGS));
  const [, outside, width] = BEARINGS[name]!;
  const seat = method === 'laser' ? 'through' : d.one('through', 'shoulder');
  return {
    bore: { bearing: name, seat },
    turns: 'bearing',
    middle: outside / 2,
    end: outside / 2,
    length: long(width + 1),
  };
}

interface Widths {
  readonly width: number;
  readonly end: number;
  readonly tenon: number;
  readonly tongue: number;
}

function widthsOf(d: Draw, { joint, spoke, ply, layers }: Layers): Widths {
  const width = d.between(10, 50);
  const end = d.between(Math.max(8, 0.6 * width), width);
  const thin = Math.min(spoke, ply * layers);
  const widest = Math.min(thin / 2, end - 4) - 0.02;
  const tongue = joint === 'drilled' ? d.between(Math.min(thin / 3, widest), widest) : d.between(4, end - 2.1);
  return { width, end, tenon: d.between(4, width - 2.1), tongue };
}

/** Felloes that divide the spokes; undefined leaves it to the builder. */
function felloesOf(d: Draw, spokes: number): number | undefined {
  const divisors = Array.from({ length: 34 }, (_, i) => i + 3).filter(f => spokes % f === 0);
  return d.chance(0.4) ? undefined : d.one(...divisors);
}

interface Radii {
  readonly nave: number;
  readonly inner: number;
  readonly band: number;
}

function radiiOf(d: Draw, spokes: number, w: Widths, nave: Nave, fit: number): Radii {
  const step = Math.PI / spokes;
  const feet = (w.width + 1.1) / 2 / Math.sin(step);
  const walls = ((w.tenon + fit) * Math.cos(step) + 3.1) / 2 / Math.sin(step) + 4.5 + fit;
  const radius = up(Math.max(feet, walls, nave.middle + 11, nave.end + 7) * d.between(1, 1.6) + 1);
  const between = (w.tongue / 2 + fit + 14) / Math.sin(step);
  const inner = up(Math.max(radius + 12, between) * d.between(1, 1.8));
  const half = w.tongue / 2 + fit;
  const band = d.between(20 + (1.5 * half * half) / inner, 90 + (1.5 * half * half) / inner);
  return { nave: radius, inner, band: Math.min(band, inner) };
}

/** A captured tongue's length or thickness, now and then: short of the outer edge, and with 2 mm over it in each layer. */
function tongueOf(d: Draw, method: Method, l: Layers, w: Widths, radii: Radii, fit: number): Plain {
  if (l.joint === 'drilled') return {};
  const half = (w.tongue + fit) / 2;
  const within = radii.inner + 0.85 * radii.band - (radii.band < 20 ? 3 : 0);
  const most = Math.sqrt(within * within - half * half) - radii.inner - fit - 0.1;
  const thick = Math.min(l.spoke, 2 * (l.ply - 2));
  return {
    ...(d.chance(0.4) && { length: d.between(3, most) }),
    ...(method !== 'laser' &&
      l.layers % 2 === 0 &&
      thick > 0.3 * l.spoke &&
      d.chance(0.3) && { thickness: d.between(Math.max(3, 0.3 * l.spoke), thick) }),
  };
}

/** Whether scarfs of two thicknesses lie between two tongues, and leave layers room for pins. */
function scarfs(spokes: number, { inner, band }: Radii, tongue: number, { ply, layers }: Layers): boolean {
  const step = (2 * Math.PI) / spokes;
  const between = step - 2 * Math.asin((tongue / 2 + 0.4) / inner) - 6.4 / inner;
  const long = layers === 1 || step * inner > Math.max(14 * ply, 80);
  return (2.1 * ply) / (inner + band / 2) < Math.min(0.8 * step, between) && long;
}

/** A seam joint that has room, by default sizes. Fingers have room between any two spokes drawn. */
function seamOf(d: Draw, method: Method, spokes: number, radii: Radii, tongue: number, l: Layers): Plain {
  const { inner, band } = radii;
  const room = inner * Math.sin(Math.PI / spokes) - tongue / 2;
  const laser = method === 'laser';
  const joints = [
    'butt',
    'finger',
    ...(band > 40 && room > 22 ? ['key'] : []),
    ...((laser ? room > 32 : scarfs(spokes, radii, tongue, l)) ? ['scarf'] : []),
    ...(!laser && band > 50 && room > 42 ? ['dowel'] : []),
    ...(!laser && band > 90 && room > 42 ? ['biscuit', 'biscuit'] : []),
  ];
  return { joint: d.one(...joints) };
}

const wood = (thickness: number, kind: string): Plain => ({
  kind,
  width: 5000,
  length: 9000,
  thickness,
  ...(kind === 'board' && { true: 3 }),
});

function capOf(d: Draw, nave: Nave, radius: number): Plain | undefined {
  if (d.chance(0.4)) return undefined;
  const diameter = d.between(2 * (nave.end + 6.5), 2 * radius);
  return { faces: d.one('front', 'back', 'both', 'none'), diameter, front: d.one('open', 'closed'), stock: 'cap' };
}

function attempt(d: Draw, method: Method): Plain {
  const spokes = d.whole(3, 36);
  const l = layersOf(d, method);
  const nave = naveOf(d, method, l);
  const w = widthsOf(d, l);
  const fit = d.between(0, 0.4);
  const radii = radiiOf(d, spokes, w, nave, fit);
  const felloes = felloesOf(d, spokes);
  const cap = capOf(d, nave, radii.nave);
  const proud = (l.ply * l.layers - l.spoke) / 2;
  const own = method === 'laser' || d.chance(0.3);
  return {
    rimwright: 1,
    title: 'Random cart wheel',
    units: 'mm',
    model: 'cart-wheel',
    rim: {
      outside: round(2 * (radii.inner + radii.band)),
      band: round(radii.band),
      ...(felloes !== undefined && { felloes }),
      layers: l.layers,
      seam: seamOf(d, method, spokes, radii, w.tongue, l),
      stock: 'rim',
    },
    spokes: {
      count: spokes,
      width: w.width,
      taper: round(w.width - w.end),
      thickness: round(l.spoke),
      tenon: { width: w.tenon },
      tongue: {
        joint: l.joint,
        ...(!(own && l.joint === 'drilled') && { width: w.tongue }),
        ...tongueOf(d, method, l, w, radii, fit),
      },
      stock: 'spoke',
    },
    nave: {
      diameter: up(2 * radii.nave),
      ...(d.chance(0.7) || nave.turns === 'bearing' ? { length: nave.length } : {}),
      bore: nave.bore,
      stock: 'nave',
    },
    tyre: d.chance(0.3) ? 'none' : { thickness: d.between(0.5, 8) },
    ...(cap && { cap }),
    ...(proud > 1 &&
      method !== 'laser' &&
      radii.band > 20 && { edges: { rim: { radius: round(Math.min(proud - 0.01, 6)) } } }),
    turns: nave.turns,
    method,
    cutter: CUTTERS[method],
    fit: { mortise: fit, tongue: fit },
    stock: {
      rim: wood(l.ply, method === 'laser' ? 'sheet' : d.one('board', 'sheet')),
      spoke: wood(l.sheet, method === 'laser' ? 'sheet' : d.one('board', 'sheet')),
      nave: wood(l.disc, 'sheet'),
      cap: wood(method === 'laser' ? l.ply : 12, 'sheet'),
    },
  };
}

/** A plan of a cart wheel for a seed and a method; the same one every time. */
export const randomCartWheel = (seed: number, method: Method): Plain => attempt(drawer(seeded(seed)), method);
