import { bounds } from '../../geometry/measure.js';
import { movePoint, turning } from '../../geometry/motion.js';
import { type CrossLap, halfLapped, lapPieces } from '../../joints/cross-lap.js';
import { mullion } from '../../parts/mullion.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import { type Bar, bars, crossedAt } from './bars.js';
import { type FrameSizes, type Mullions, mullionReach } from './sizes.js';

const lapOf = (s: FrameSizes, m: Mullions, bar: Bar): CrossLap => ({
  at: crossedAt(s, bar),
  width: m.width,
  clearance: s.fit.lap,
});

/** A bar before the others cross it. */
const plainBar = (s: FrameSizes, m: Mullions, { way, off }: Bar, thickness: Mm): Part =>
  mullion({
    width: m.width,
    reach: mullionReach(s),
    off,
    thickness,
    stock: m.stock.name,
    grained: m.stock.kind === 'board',
    id: `mullion-${way}`,
    name: `Mullion, ${way}`,
  });

/** In the middle of the longest stretch between what crosses it. */
function lettering(part: Part, crossed: readonly Mm[], width: Mm): Lettering {
  const { minX, maxX, minY, maxY } = bounds(part.region.outer);
  const cuts = [minX, ...crossed.filter(x => x > minX && x < maxX), maxX];
  const gaps = cuts.slice(1).map((to, i) => ({ at: (to + cuts[i]!) / 2, long: to - cuts[i]! }));
  const longest = gaps.reduce((l, g) => (g.long > l.long + 1e-9 ? g : l));
  const height = Math.min(10, width / 3);
  return { at: { x: longest.at, y: (minY + maxY) / 2 }, height, length: Math.max(1, longest.long - 2 * width) };
}

function placed(s: FrameSizes, m: Mullions, bar: Bar, part: Part, up: Mm): Draft {
  const { turn, off } = bar;
  const at = movePoint({ x: 0, y: off }, turning(turn));
  const crossed = crossedAt(s, bar);
  return { part, turn, ...at, z: s.rebate.depth + up, lettering: lettering(part, crossed, m.width) };
}

/** Whole bars, halved where they cross: uprights from the back, level ones from the front. */
function lappedBar(s: FrameSizes, m: Mullions, bar: Bar): Draft[] {
  const lap = lapOf(s, m, bar);
  const part = halfLapped(plainBar(s, m, bar, m.thickness), lap, bar.way === 'upright' ? 'back' : 'front');
  return [placed(s, m, bar, part, 0)];
}

/** Layers of a bar: level bars run through in the back half of them, uprights in the others. */
function layeredBar(s: FrameSizes, m: Mullions, bar: Bar): Draft[] {
  const sheet = m.stock.thickness;
  const layers = Math.max(1, Math.round(m.thickness / sheet));
  const lap = lapOf(s, m, bar);
  const whole = plainBar(s, m, bar, sheet);
  const cut = lapPieces(whole, lap).map(
    (part): Part => ({ ...part, id: `${whole.id}-piece`, name: `${whole.name}, piece` }),
  );
  return Array.from({ length: layers }, (_, i) => i).flatMap(i => {
    const through = lap.at.length === 0 || (bar.way === 'level') === i < Math.floor(layers / 2);
    return (through ? [whole] : cut).map(part => placed(s, m, bar, part, i * sheet));
  });
}

/** Every mullion in its place. */
export function mullionDrafts(s: FrameSizes): Draft[] {
  const { mullions } = s;
  if (!mullions) return [];
  return bars(s).flatMap(bar => (s.method === 'laser' ? layeredBar : lappedBar)(s, mullions, bar));
}
