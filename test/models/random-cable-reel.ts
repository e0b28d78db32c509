/** Random plans of cable reels, inside inequalities that a shop would keep:
 *
 * - 4 to 32 staves of 6 to 25 mm (laser: sheets of 3 to 9 mm), core at least six of their thicknesses across, inner faces 4 mm or more
 * - flanges 15 mm over the core's corners or more; 2 to 10 planks at least 30 mm and six rods wide (with four rods or more, four holes
 *   and their walls); or 3 to 12 segments, 6 mm or more at the bore, whose seams (two layers: twice as many) lie a rod's hole and twice
 *   its wall off every rod, where the common grid of seams and rods is finest; other joints than butt in bands of 90 mm, bores of 30 mm and
 *   with 20 mm between a seam and what a rod takes up; biscuits and dowels in 12 mm and more
 * - rods of 3 to 16 mm whose washers fit between bore and staves twice over; bores that keep 4 mm off plank seams
 * - battens no wider than a seventh of the flange, two of them, or three or four where the outermost planks are wide enough; washers and
 *   a batten's width beside each no more than the flange is wide, half of it with more than two battens
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

const wood = (thickness: number, kind: string): Plain => ({
  kind,
  width: 4000,
  length: 9000,
  thickness,
  ...(kind === 'board' && { true: 3 }),
});

interface Core {
  readonly diameter: number;
  readonly staves: number;
  readonly thickness: number;
  /** from the middle to the inner flats, and to the outer corners */
  readonly inside: number;
  readonly reach: number;
}

function drawCore(d: Draw, thickness: number): Core {
  const staves = d.whole(4, 32);
  const tan = Math.tan(Math.PI / staves);
  const diameter = up(Math.max(6 * thickness, 2 * thickness + 4 / tan, 60) * (1 + d.between(0, 3)));
  return {
    diameter,
    staves,
    thickness,
    inside: diameter / 2 - thickness,
    reach: diameter / 2 / Math.cos(Math.PI / staves),
  };
}

interface Rods {
  readonly count: number;
  readonly diameter: number;
}

/** Room for bore and rods: the bore's radius, and rods whose washers fit between it and the staves twice over. */
function drawMiddle(d: Draw, { inside }: Core, bored: boolean): { readonly axle: number; readonly rods: Rods } {
  const axle = bored || d.chance(0.6) ? up(Math.max(5, d.between(0.1, 0.5) * inside)) : 0;
  const room = inside - axle / 2 - 6;
  const diameter = Math.max(3, Math.floor(Math.min(16, room / 5)));
  const rods = { count: d.whole(2, 5), diameter };
  return { axle, rods };
}

const washersFit = ({ inside }: Core, { count, diameter }: Rods, axle: number): boolean => {
  const most = inside - diameter / 2 - 2.5;
  const washer = 1.55 * diameter + 2;
  return most - (axle + 1) / 2 - washer > 2 && most * Math.sin(Math.PI / count) > washer + 1;
};

/** Battens that the outermost planks reach: widths, and how many. */
function drawBattens(d: Draw, radius: number, pieces: number) {
  const wide = pieces <= 6 && radius > 150;
  const battens = {
    count: wide && d.chance(0.2) ? d.whole(3, 4) : 2,
    width: up(radius * d.between(0.12, 0.28)),
    stock: 'batten',
  };
  return d.chance(0.8) ? battens : undefined;
}

function planks(d: Draw, core: Core, rods: Rods, axle: number): Plain | undefined {
  const radius = up((core.reach + 15) * (1 + d.between(0, 0.9)));
  const pieces = d.whole(2, 10);
  const width = (2 * radius) / pieces;
  if (width < 30 || width < 6 * rods.diameter || (rods.count > 3 && width < 4 * (rods.diameter + 7))) return undefined;
  const bore = (axle + 0.5) / 2;
  const levels = Array.from({ length: pieces - 1 }, (_, i) => Math.abs(radius - (i + 1) * width));
  if (axle > 0 && levels.some(y => Math.abs(y - bore) < 4)) return undefined;
  const battens = drawBattens(d, radius, pieces);
  if (battens?.count === 3 && axle > 0) return undefined;
  const crowd = rods.count * (3.1 * rods.diameter + (battens?.width ?? radius / 4));
  if (crowd > (battens && battens.count > 2 ? 1 : 2) * radius) return undefined;
  return {
    flange: {
      diameter: up(2 * radius),
      ...(d.chance(0.9) ? { build: 'planks', pieces } : { pieces }),
      stock: 'flange',
    },
    ...(battens && { battens }),
  };
}

/** Joints whose smallest size fits between the bore, the edge and the rods. @param room from a seam to a rod's wall */
function joints(
  radius: number,
  axle: number,
  pieces: number,
  layers: number,
  method: Method,
  thickness: number,
  room: number,
): string[] {
  const laser = method === 'laser';
  const band = radius - axle / 2;
  const sweep = (2 * Math.PI) / pieces;
  const wide = axle > 30 && band > 90 && room > 20;
  const halved = (2.1 * thickness) / (axle / 2 + band / 2) < 0.8 * sweep;
  return [
    'butt',
    ...(wide && thickness >= 12 ? ['biscuit', ...(laser || thickness > 25 ? [] : ['dowel'])] : []),
    ...(wide ? ['finger'] : []),
    ...(wide && (laser ? layers > 1 : thickness >= 6) ? ['key'] : []),
    ...(wide && halved && (laser ? layers > 1 : thickness >= 6) ? ['scarf'] : []),
  ];
}

function segments(d: Draw, core: Core, rods: Rods, axle: number, method: Method, sheet: number): Plain | undefined {
  const radius = up((core.reach + 15) * (1 + d.between(0, 0.9)));
  const pieces = d.whole(3, 12);
  const layers = d.chance(0.3) ? 2 : 1;
  const seams = pieces * layers;
  if (axle * Math.sin(Math.PI / pieces) < 6) return undefined;
  const circle = core.inside - rods.diameter / 2 - 3;
  const apart = circle * Math.sin((Math.PI * gcd(rods.count, seams)) / rods.count / seams);
  const hole = rods.diameter + 0.5;
  if (apart < hole / 2 + 2 * Math.max(3, hole / 4)) return undefined;
  // pins of two layers: as wide a stretch again at three tenths of the band
  const inner = axle / 2 + 0.3 * (radius - axle / 2);
  if (layers === 2 && inner * Math.sin(Math.PI / seams) < 8) return undefined;
  const joint = d.one(...joints(radius, axle, pieces, layers, method, sheet, apart - hole / 2 - Math.max(3, hole / 4)));
  const many = method === 'laser' ? { thickness: layers * sheet } : layers === 2 ? { layers } : {};
  return {
    flange: { diameter: up(2 * radius), build: 'segments', pieces, ...many, seam: { joint }, stock: 'flange' },
  };
}

function attempt(d: Draw, method: Method): Plain | undefined {
  const laser = method === 'laser';
  const thick = (): number => (laser ? d.one(3, 4, 6, 9) : d.one(6, 12, 18, 22, 25));
  const [stave, flange, batten] = [thick(), thick(), thick()];
  const core = drawCore(d, stave);
  const segmented = d.chance(0.35);
  const { axle, rods } = drawMiddle(d, core, segmented);
  if (!washersFit(core, rods, axle)) return undefined;
  const built = segmented ? segments(d, core, rods, axle, method, flange) : planks(d, core, rods, axle);
  if (!built) return undefined;
  const kind = (): string => (laser ? 'sheet' : d.one('board', 'sheet'));
  return {
    rimwright: 1,
    title: 'Random reel',
    units: 'mm',
    model: 'cable-reel',
    ...built,
    core: { diameter: core.diameter, staves: core.staves, length: d.between(10, 900), stock: 'stave' },
    rods,
    ...(axle > 0 ? { bore: { axle } } : d.chance(0.5) ? { bore: 'none' } : {}),
    method,
    cutter: CUTTERS[method],
    fit: { bore: 0.5, rod: 0.5 },
    stock: { flange: wood(flange, kind()), batten: wood(batten, kind()), stave: wood(stave, kind()) },
  };
}

/** A plan of a cable reel for a seed and a method; the same one every time. */
export function randomCableReel(seed: number, method: Method): Plain {
  const d = drawer(seeded(seed));
  for (;;) {
    const plan = attempt(d, method);
    if (plan) return plan;
  }
}
