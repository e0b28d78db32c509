import type { Finding } from '../../findings/finding.js';
import { bounds } from '../../geometry/measure.js';
import { scale } from '../../geometry/point.js';
import { battenReach, battenScrews } from '../../joints/battens.js';
import { drillRods } from '../../joints/through-rods.js';
import { batten } from '../../parts/batten.js';
import { discPlank } from '../../parts/disc-plank.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import type { Ring } from '../ring.js';
import { battenCircle, battenScrew, type Fixings, plankLevels, rodHole, rodsAt } from './fixings.js';
import { segmentRing } from './segments.js';
import { boreRadius, type ReelSizes, reelHeight } from './sizes.js';

/** In the middle of the plank, or to the left of what is bored through its middle. */
function lettering({ region }: Part, bore: Mm): Lettering {
  const { minX, maxX, minY, maxY } = bounds(region.outer);
  const [height, middle] = [(maxY - minY) / 3, (minY + maxY) / 2];
  const bored = region.openings.length > 0 || Math.abs(middle) < bore;
  const x = bored && minX < 0 && maxX > 0 ? (minX - bore) / 2 : (minX + maxX) / 2;
  return { at: { x, y: middle }, height: Math.min(12, height), length: (maxX - minX) / 4 };
}

/** The planks of one flange, bottom to top. Those of the upper half are the lower ones turned half way round. */
function planks(s: ReelSizes, fixed: Fixings): Draft[] {
  const { flange } = s;
  const levels = plankLevels(s);
  const rods = rodsAt(s, fixed);
  return levels.slice(1).flatMap((top, i) => {
    const upper = 2 * i >= flange.pieces;
    const [from, to] = upper ? [-top, -levels[i]!] : [levels[i]!, top];
    const whole = discPlank({
      radius: flange.radius,
      from,
      to,
      bore: boreRadius(s),
      thickness: flange.thickness,
      stock: flange.stock.name,
      grained: flange.stock.kind === 'board',
    });
    return whole.map((plank): Draft => {
      const part = drillRods(plank, upper ? rods.map(p => scale(p, -1)) : rods, rodHole(s));
      return { part, turn: upper ? Math.PI : 0, z: 0, lettering: lettering(part, boreRadius(s)) };
    });
  });
}

/** The battens of one flange, left to right. */
function battens(s: ReelSizes, fixed: Fixings): Draft[] {
  const own = s.battens;
  if (!own) return [];
  const screw = battenScrew(s);
  return fixed.battens.map((x): Draft => {
    const reach = battenReach({ width: own.width, radius: battenCircle(s) }, x);
    const part = batten({
      length: 2 * reach,
      width: own.width,
      holes: screw ? battenScrews(plankLevels(s), reach, screw.screw.diameter) : [],
      diameter: screw?.screw.shank ?? 0,
      thickness: own.thickness,
      stock: own.stock.name,
      grained: own.stock.kind === 'board',
    });
    const gap = (2 * reach) / s.flange.pieces;
    return {
      part,
      turn: Math.PI / 2,
      x,
      z: 0,
      lettering: { at: { x: s.flange.pieces % 2 === 0 ? 0 : gap / 2, y: 0 }, height: own.width / 4, length: 0.6 * gap },
    };
  });
}

const raised = (drafts: readonly Draft[], z: Mm): Draft[] => drafts.map(d => ({ ...d, z: d.z + z }));

/** Two flanges, and what a flange of segments says of itself. */
export interface Flanges {
  readonly drafts: readonly Draft[];
  /** of one flange; absent for planks */
  readonly ring?: Ring;
  readonly findings: readonly Finding[];
}

/** Both flanges, back first, each with its battens on its outer face. */
export function flanges(s: ReelSizes, fixed: Fixings): Flanges {
  const height = reelHeight(s);
  const raise = height - s.flange.thickness;
  if (fixed.flange) {
    const { value: ring, findings } = segmentRing(fixed.flange, rodsAt(s, fixed), rodHole(s));
    return { drafts: [...ring.drafts, ...raised(ring.drafts, raise)], ring, findings };
  }
  const flange = planks(s, fixed);
  const bars = battens(s, fixed);
  const behind = raised(bars, -(s.battens?.thickness ?? 0));
  return { drafts: [...flange, ...behind, ...raised(flange, raise), ...raised(bars, height)], findings: [] };
}
