import { requireRange } from '../findings/unusable.js';
import { type Outline, solid, type Vertex, vertex } from '../geometry/outline.js';
import { distance } from '../geometry/point.js';
import { SAME_POINT } from '../geometry/tolerance.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

export interface PaddleOptions extends PieceOptions {
  /** across it: the way the water meets it */
  readonly depth: Mm;
  /** along it, between the shoulders of its tabs */
  readonly length: Mm;
  /** tabs on each end: stretches across it, from its middle, in order, within its depth */
  readonly tabs: readonly { readonly from: Mm; readonly to: Mm }[];
  /** how far the tabs stand out */
  readonly tab: Mm;
}

/** The upper end from right to left: shoulders and tabs, the sides of the tabs tagged. */
const upperEnd = ({ depth, length, tabs, tab }: PaddleOptions): Vertex[] => [
  vertex({ x: depth / 2, y: length / 2 }),
  ...[...tabs]
    .reverse()
    .flatMap(({ from, to }) => [
      vertex({ x: to, y: length / 2 }, 0, 'slot'),
      vertex({ x: to, y: length / 2 + tab }),
      vertex({ x: from, y: length / 2 + tab }, 0, 'slot'),
      vertex({ x: from, y: length / 2 }),
    ]),
  vertex({ x: -depth / 2, y: length / 2 }),
];

/** The lower end from left to right: the upper one in a level mirror, run the other way, so that each edge keeps its tag. */
function mirrored(upper: readonly Vertex[]): Vertex[] {
  const last = upper.length - 1;
  return upper.map((_, i) => {
    const { x, y } = upper[last - i]!;
    return vertex({ x, y: -y }, 0, upper[last - i - 1]?.mate);
  });
}

/** Without vertices that the next one lies on, as where a tab starts at the edge. */
const withoutDoubles = (outline: Outline): Outline =>
  outline.filter((v, i) => distance(v, outline[(i + 1) % outline.length]!) > SAME_POINT);

/** A paddle with tabs on both ends: x across it, y along it, its middle at the origin. Grain along it, so that the tabs are strong.
 * The tabs' sides are tagged `slot`. @throws Unusable naming the option. */
export function paddle(o: PaddleOptions): Part {
  requireRange('paddle depth', o.depth, 0.1, 10_000);
  requireRange('paddle length', o.length, 0.1, 20_000);
  requireRange('tab length', o.tab, 0.1, 10_000);
  for (const { from, to } of o.tabs) {
    requireRange('tab', to, -o.depth / 2, o.depth / 2 + SAME_POINT);
    requireRange('tab', from, -o.depth / 2 - SAME_POINT, to);
  }
  const upper = upperEnd(o);
  const region = solid(withoutDoubles([...upper, ...mirrored(upper)]));
  const part = piece('paddle', 'Paddle', { ...o, grained: false }, { region });
  return { ...part, ...((o.grained ?? true) && { grain: Math.PI / 2 }) };
}
