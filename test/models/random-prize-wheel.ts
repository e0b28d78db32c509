/** Random plans of prize wheels, inside inequalities that a shop would keep:
 *
 * - faces of 200 to 1400 mm, in one piece or up to 8 segments; sheets of 4 to 9 mm by laser, 9 to 18 mm else, boards where it is one layer
 * - 2 to 40 sectors, equal or not; pegs at least 2.5 of their diameters apart and no more than a thirtieth of the face across
 * - the hub at most 0.55 of the pegs' radius, at least 8 mm past the hole of the face and the bearing; seats with a shoulder only where 2 mm
 *   are left under them, never by laser
 * - segments: butt seams; biscuits, dowels and keys where the face is 15 mm or more and the nearest peg leaves them 30 mm (no keys by laser);
 *   fingers where it leaves them 25 mm and one and a half thicknesses; neither where the face's hole is under 35 or 40 mm in radius; the middle of a seam at least a peg's diameter and 4 mm from every peg,
 *   wherever it is best put
 * - one layer, or two or three; longer pegs, wider and taller plates, thinner bolts now and then
 */
import type { Method } from '../../lib/stock/stock.js';
import { type Draw, drawer, seeded } from './random-plan.js';

type Plain = Record<string, unknown>;

const BEARINGS: Readonly<Record<string, readonly [bore: number, outside: number, width: number]>> = {
  '608': [8, 22, 7],
  '6000': [10, 26, 8],
  '6202': [15, 35, 11],
};

const CUTTERS: Readonly<Record<Method, Plain>> = {
  laser: { kind: 'laser', kerf: 0.2 },
  hand: { kind: 'saw', kerf: 1.5 },
  router: { kind: 'router', diameter: 3, reach: 40, pass: 3 },
};

/** Angles of sectors, degrees, a full turn in all. */
function angles(d: Draw): number[] {
  const count = d.whole(2, 16);
  const shares = Array.from({ length: count }, () => d.between(1, 3));
  const sum = shares.reduce((a, b) => a + b, 0);
  const all = shares.map(s => Math.round((s * 36000) / sum) / 100);
  const rest = all.slice(1).reduce((a, b) => a + b, 0);
  return [Math.round((360 - rest) * 100) / 100, ...all.slice(1)];
}

function lines(sectors: readonly number[]): number[] {
  let at = sectors[0]! / 2;
  return sectors.map(a => {
    const line = at;
    at -= a;
    return (((line % 360) + 360) % 360) as number;
  });
}

/** How far the best place for a ring of seams lies from every line, degrees. */
function widest(segments: number, at: readonly number[]): number {
  const step = 360 / segments;
  const folded = [...new Set(at.map(a => Math.round((a % step) * 1e6) / 1e6))].sort((a, b) => a - b);
  const gaps = folded.map((a, i) => (folded[i + 1] ?? folded[0]! + step) - a);
  return Math.max(...gaps) / 2;
}

interface Middle {
  readonly bore: Plain;
  readonly turns: string;
  readonly wide: number;
}

function middle(d: Draw, method: Method, thickness: number, face: number): Middle {
  const small = face < 300;
  if (small || d.chance(0.4)) {
    const axle = d.between(4, small ? 10 : 20);
    return { bore: { axle }, turns: d.one('shaft', 'fixed', 'bearing'), wide: axle / 2 };
  }
  const name = d.one(...Object.keys(BEARINGS));
  const [, outside, width] = BEARINGS[name]!;
  const seat = method !== 'laser' && thickness >= width + 2 ? d.one('through', 'shoulder') : 'through';
  return { bore: { bearing: name, seat }, turns: d.one('bearing', 'shaft', 'fixed'), wide: outside / 2 };
}

const wood = (thickness: number, kind: string): Plain => ({
  kind,
  width: 4000,
  length: 9000,
  thickness,
  ...(kind === 'board' && { true: 3 }),
});

/** A joint that a segment takes: by its thickness, by what the nearest peg leaves it, by its band. */
function seam(d: Draw, method: Method, thickness: number, room: number, band: number, hole: number): Plain | undefined {
  const deep = thickness >= 15 && room > 30 && band > 200 && hole > 40;
  const joint = d.one(
    'butt',
    ...(deep ? ['biscuit', 'dowel'] : []),
    ...(deep && method !== 'laser' ? ['key'] : []),
    ...(room > Math.max(25, 1.5 * thickness) && hole > 35 ? ['finger'] : []),
  );
  if (joint === 'butt') return undefined;
  return joint === 'key' ? { joint, length: 50, width: 40 } : { joint };
}

/** What a shop would change of flapper, pegs and plate; sizes that only grow leave every margin. */
function extras(
  d: Draw,
  face: number,
  pegs: Plain,
): { readonly pegs: Plain; readonly flapper: Plain; readonly plate: Plain } {
  return {
    pegs: {
      ...pegs,
      ...(d.chance(0.2) && { length: d.between(70, 120) }),
      ...(d.chance(0.2) && { species: 'white ash' }),
    },
    flapper: { stock: 'leaf', ...(d.chance(0.2) && { bolt: d.between(2, 5) }) },
    plate: {
      stock: 'plate',
      ...(d.chance(0.2) && { width: d.between(1, 1.5) * face }),
      ...(d.chance(0.2) && { height: d.between(1.5, 2) * face }),
    },
  };
}

function attempt(d: Draw, method: Method): Plain | undefined {
  const laser = method === 'laser';
  const thick = (): number => (laser ? d.one(4, 6, 9) : d.one(9, 12, 15, 18));
  const [sheet, hub, plate] = [thick(), thick(), thick()];
  const diameter = d.between(200, 1400);
  const radius = diameter / 2;
  const equal = d.chance(0.5);
  const count = d.whole(2, 40);
  const sectors = equal ? Array.from({ length: count }, () => 360 / count) : angles(d);
  const peg = d.between(Math.max(3, diameter / 100), Math.min(14, diameter / 30));
  const edge = d.chance(0.3) ? d.between(1, sheet / 2 - 0.1) : 0;
  const circle = Math.round(2 * (radius - edge - 1.05 * peg - d.between(0, 0.03 * diameter)) * 100) / 100 - 0.01;
  const least = (Math.min(...sectors, 180) * Math.PI) / 360;
  if (circle * Math.sin(least) < 2.5 * peg) return undefined;
  const inner = middle(d, method, Math.min(hub, plate), diameter);
  const core = Math.round(d.between(inner.wide + 9, (0.55 * circle) / 2) * 100) / 100;
  if (core < 1.35 * inner.wide + 8 || core > (0.55 * circle) / 2) return undefined;
  const segments = d.chance(0.4) ? 1 : d.whole(2, 8);
  const room = (circle / 2) * Math.sin((Math.min(90, widest(segments, lines(sectors))) * Math.PI) / 180);
  if (segments > 1 && room < peg + 4) return undefined;
  const layers = d.chance(0.2) ? d.whole(2, 3) : 1;
  const joint = segments > 1 ? seam(d, method, sheet, room - peg, radius - core / 3, core / 3) : undefined;
  const own = extras(d, diameter, { circle, diameter: peg });
  const leaf = laser ? d.one(3, 4) : d.one(3, 4, 6);
  return {
    rimwright: 1,
    title: 'Random prize wheel',
    units: 'mm',
    model: 'prize-wheel',
    face: { diameter, segments, stock: 'face', ...(layers > 1 && { layers }), ...(joint && { seam: joint }) },
    sectors: equal ? { count } : { angles: sectors.map(a => `${a}deg`) },
    pegs: own.pegs,
    flapper: own.flapper,
    hub: { diameter: 2 * core, faces: d.one('back', 'both'), bore: inner.bore, stock: 'hub' },
    plate: own.plate,
    ...(edge > 0 && { edges: { face: { radius: edge, faces: d.one('front', 'both') } } }),
    turns: inner.turns,
    method,
    cutter: CUTTERS[method],
    fit: { peg: d.between(-0.1, 0.2) },
    stock: {
      face: wood(sheet, laser ? 'sheet' : d.one('board', 'sheet')),
      hub: wood(hub, 'sheet'),
      plate: wood(plate, laser ? 'sheet' : d.one('board', 'sheet')),
      leaf: wood(leaf, 'sheet'),
    },
  };
}

/** A plan of a prize wheel for a seed and a method; the same one every time. */
export function randomPrizeWheel(seed: number, method: Method): Plain {
  const d = drawer(seeded(seed));
  for (;;) {
    const plan = attempt(d, method);
    if (plan) return plan;
  }
}
