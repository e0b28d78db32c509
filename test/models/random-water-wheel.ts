/** Random plans of water wheels, inside inequalities that a shop would keep:
 *
 * - 3 to 12 spokes, 3 to 12 felloes, 3 to 36 paddles; rims of 160 mm to 2 m, of boards or sheets of 12 to 25 mm (laser: layers of 3 to 9 mm)
 * - bands wide enough for their tabs: each slot and each gap at least the wall, the cutter and 2 mm, raked up to 30 degrees
 * - paddles and felloes whose common grid leaves a slot, its rake and twice its wall between seams (two layers: twice as many seams)
 * - paddles no deeper than leaves two thirds of their pitch between their inner edges
 * - hubs over the wedges by 6 mm, wood round the axle, 10 mm inside the rim and clear of the paddles
 */
import type { Method } from '../../lib/stock/stock.js';
import { type Draw, drawer, seeded } from './random-plan.js';

type Plain = Record<string, unknown>;

const CUTTERS: Readonly<Record<Method, Plain>> = {
  laser: { kind: 'laser', kerf: 0.2 },
  hand: { kind: 'saw', kerf: 1.5 },
  router: { kind: 'router', diameter: 3, reach: 60, pass: 3 },
};

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
const up = (x: number): number => Math.ceil(x * 100) / 100;
const down = (x: number): number => Math.floor(x * 100) / 100;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

const wood = (thickness: number, kind: string): Plain => ({
  kind,
  width: 4000,
  length: 9000,
  thickness,
  ...(kind === 'board' && { true: 3 }),
});

interface Rim {
  readonly outer: number;
  readonly inner: number;
  readonly felloes: number;
  readonly layers: number;
}

function drawRim(d: Draw, paddle: number, tabs: number): Rim {
  const wall = Math.min(8, Math.max(3, paddle / 2));
  const band = up(2 * wall + (2 * tabs - 1) * Math.max(wall + 2, 8) + paddle + d.between(0, 60));
  const outer = up(Math.max(80, 1.6 * band) * (1 + d.between(0, 3)));
  return { outer, inner: outer - band, felloes: d.whole(3, 12), layers: d.chance(0.25) ? 2 : 1 };
}

/** Whether a slot finds its place between the seams wherever the common grid of paddles and seams is finest. */
function slotsFit(rim: Rim, count: number, paddle: number, rake: number): boolean {
  const wall = Math.min(8, Math.max(3, paddle / 2));
  const seams = rim.felloes * rim.layers;
  const apart = rim.inner * Math.sin((Math.PI * gcd(count, seams)) / count / seams);
  const half = (paddle + 0.4) / 2 + ((rim.outer - rim.inner) / 2) * Math.tan(Math.abs(rake));
  return apart > half + 2 * wall + 1;
}

interface Middle {
  readonly spokes: number;
  readonly width: number;
  readonly axle: number;
  readonly hub: number;
}

function drawMiddle(d: Draw, { inner }: Rim): Middle | undefined {
  const spokes = d.whole(3, 12);
  const width = d.between(8, 60);
  const corner = width / 2 / Math.tan(Math.PI / spokes);
  const reach = width / 2 / Math.sin(Math.PI / spokes);
  const axle = d.chance(0.7) ? d.between(4, 40) : 0;
  const tip = 1.5 / Math.tan(Math.PI / spokes);
  if (Math.max(axle / 2 + 1, tip) > corner - 2) return undefined;
  const hub = up(Math.max(reach, axle / 2 + 4) + 6 + d.between(0, 50));
  return hub < inner - 10 ? { spokes, width, axle, hub } : undefined;
}

/** Depth of the paddles: none, where the band's is right, or what pitch and hub leave. */
function drawDepth(d: Draw, rim: Rim, count: number, thickness: number, { hub }: Middle): number | undefined {
  const middle = (rim.inner + rim.outer) / 2;
  const pitch = (thickness * 1.5 + 6) / (2 * Math.sin(Math.PI / count));
  const most = down(1.4 * (middle - Math.max(hub + 5, 1.6 * pitch)));
  const band = rim.outer - rim.inner;
  if (most < band * 0.7 + 4) return undefined;
  return Math.min(most, up(band * d.between(0.8, 1.8)));
}

function attempt(d: Draw, method: Method): Plain | undefined {
  const laser = method === 'laser';
  const thick = (): number => (laser ? d.one(3, 4, 6, 9) : d.one(12, 15, 18, 25));
  const [sheet, paddle, spoke, disc] = [thick(), laser ? thick() : d.one(6, 9, 12, 18), thick(), thick()];
  const tabs = d.whole(1, 3);
  const rim = drawRim(d, paddle, tabs);
  const count = d.whole(3, 36);
  const degrees = d.chance(0.3) ? 0 : d.whole(-30, 30);
  if (!slotsFit(rim, count, paddle, radians(degrees))) return undefined;
  const middle = drawMiddle(d, rim);
  if (!middle) return undefined;
  const depth = drawDepth(d, rim, count, paddle, middle);
  const band = rim.outer - rim.inner;
  if (depth === undefined || (tabs > 1 && depth < band)) return undefined;
  const many = rim.layers === 1 ? {} : laser ? { thickness: 2 * sheet } : { layers: 2 };
  // pins of two layers stand between slots and seams, or the tabs hold the layers
  const kind = (): string => (laser ? 'sheet' : d.one('board', 'sheet'));
  return {
    rimwright: 1,
    title: 'Random mill',
    units: 'mm',
    model: 'water-wheel',
    rim: { outside: up(2 * rim.outer), band, felloes: rim.felloes, ...many, stock: 'rim' },
    paddles: {
      count,
      ...(degrees !== 0 && { rake: `${degrees}deg` }),
      ...(d.chance(0.2) && depth >= band ? {} : { depth }),
      tabs: { count: tabs },
      stock: 'paddle',
    },
    spokes: { count: middle.spokes, width: middle.width, stock: 'spoke' },
    hub: { diameter: 2 * middle.hub, ...(middle.axle > 0 && { bore: { axle: middle.axle } }), stock: 'hub' },
    axle: { length: up(2 * disc + d.between(10, 600)) },
    method,
    cutter: CUTTERS[method],
    fit: { slot: d.between(0, 0.4), wedge: d.one(0, 0.1) },
    stock: {
      rim: wood(sheet, kind()),
      paddle: wood(paddle, kind()),
      spoke: wood(spoke, kind()),
      hub: wood(disc, kind()),
    },
  };
}

/** A plan of a water wheel for a seed and a method; the same one every time. */
export function randomWaterWheel(seed: number, method: Method): Plain {
  const d = drawer(seeded(seed));
  for (;;) {
    const plan = attempt(d, method);
    if (plan) return plan;
  }
}
