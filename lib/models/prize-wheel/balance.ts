import type { Finding } from '../../findings/finding.js';
import { angleOf, polar } from '../../geometry/point.js';
import type { Stock } from '../../stock/stock.js';
import { densityOf } from '../../stock/weighed.js';
import { type Mm, type Radians, toDegrees } from '../../units/length.js';
import { stated } from '../helm-wheel/limit.js';
import { combined, type Mass, pieceMass } from '../mass.js';
import type { Figure, Model } from '../model.js';
import { stockNamed } from '../named-stock.js';
import { wrap } from '../seams.js';
import { sectorLines } from './sectors.js';
import type { PrizeSizes } from './sizes.js';

/** How a wheel that turns is balanced. */
export interface Balance {
  /** of everything that turns, kg */
  readonly weight: number;
  /** distance of the centre of mass from the axle, mm */
  readonly off: Mm;
  /** direction of its heavy side, from +y, anticlockwise */
  readonly heavy: Radians;
  /** sector the heavy side lies in, and the one opposite to it, from 1 */
  readonly sector: number;
  readonly opposite: number;
  /** what cures it on the peg circle, opposite the heavy side, kg: weight times off-centre over the circle's radius */
  readonly counterweight: number;
}

/** Nearer to the axle than this the centre of mass is on it: rounding. */
const CENTRED: Mm = 1e-6;
/** Worth curing from here, kg: about a washer; common practice, no source. */
export const WORTH = 0.001;

/** A peg on every line. */
function pegMasses(s: PrizeSizes): Mass[] {
  const { radius, diameter, length, density } = s.pegs;
  const weight = (Math.PI * diameter * diameter * length * density) / 4;
  return sectorLines(s.sectors).map(line => ({ weight, ...polar(radius, Math.PI / 2 + line), z: length / 2 }));
}

/** Number of the sector an angle lies in. */
function sectorAt(s: PrizeSizes, angle: Radians): number {
  const clockwise = wrap(s.sectors[0]! / 2 - angle);
  let end = 0;
  const found = s.sectors.findIndex(a => {
    end += a;
    return clockwise < end;
  });
  return Math.max(found, 0) + 1;
}

const turns = (kind: string): boolean => kind !== 'stand-plate' && kind !== 'flapper';

/** The centre of mass of everything that turns: pieces less their holes, pegs; from their real shapes and what they are made of. */
export function balance(
  s: PrizeSizes,
  { parts, pieces }: Pick<Model, 'parts' | 'pieces'>,
  stock: readonly Stock[],
): Balance {
  const own = pieces.flatMap(piece => {
    const part = parts.find(p => p.id === piece.part)!;
    return turns(part.kind) ? [pieceMass(piece, part, densityOf(stockNamed(stock, 'stock', part.stock)))] : [];
  });
  const { weight, x, y } = combined([...own, ...pegMasses(s)]);
  const off = Math.hypot(x, y);
  const heavy = off < CENTRED ? 0 : wrap(angleOf({ x, y }) - Math.PI / 2);
  return {
    weight,
    off: off < CENTRED ? 0 : off,
    heavy,
    sector: sectorAt(s, heavy),
    opposite: sectorAt(s, heavy + Math.PI),
    counterweight: off < CENTRED ? 0 : (weight * off) / s.pegs.radius,
  };
}

/** The balance as figures. */
export const balanceFigures = (b: Balance): Figure[] => [
  { name: 'weight that turns', value: b.weight, unit: 'kg' },
  { name: 'balance: centre of mass off centre', value: b.off, unit: 'mm' },
  { name: 'balance: heavy side, anticlockwise from the top', value: toDegrees(b.heavy), unit: 'deg' },
  { name: 'balance: counterweight on the peg circle', value: b.counterweight, unit: 'kg' },
];

/** Where the counterweight goes. */
export const cure = (b: Balance, s: PrizeSizes): string =>
  `${Math.round(b.counterweight * 1000)} g behind sector ${b.opposite}, ${stated(s.pegs.radius)} mm from the middle`;

/** A note where a wheel would stop by its own weight more often in one place than in another. */
export function balanceFindings(b: Balance, s: PrizeSizes): Finding[] {
  if (b.counterweight < WORTH) return [];
  return [
    {
      level: 'note',
      rule: 'balance',
      where: 'sectors',
      message: `the centre of mass lies ${stated(b.off)} mm off the axle towards sector ${b.sector}: that side comes to rest below, and sector ${b.opposite} wins oftener than its share; ${cure(b, s)} cures it`,
      value: b.off,
      limit: 0,
    },
  ];
}
