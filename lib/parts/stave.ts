import { requireRange } from '../findings/unusable.js';
import { rectangle, solid, vertex } from '../geometry/outline.js';
import type { Mm, Radians } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** What the staves of a core with `staves` flat sides come to; mm. */
export interface StaveSizes {
  /** off square, each long edge */
  readonly bevel: Radians;
  /** width of the outer face, and of the inner one */
  readonly outer: Mm;
  readonly inner: Mm;
  /** between the outer corners of neighbours, were the edges left square at the inner face's width */
  readonly gap: Mm;
}

/** Staves of a core that measures `diameter` across its flats, outside.
 * @param staves 3 or more   @param thickness mm, below half the diameter
 * Source: side of a regular polygon about a circle, d tan(180 deg / n), and its mitre, 180 deg / n; Machinery's Handbook, "Areas and
 * dimensions of plane figures", regular polygon. */
export function staveSizes(diameter: Mm, staves: number, thickness: Mm): StaveSizes {
  const bevel = Math.PI / staves;
  const side = (across: Mm): Mm => across * Math.tan(bevel);
  return { bevel, outer: side(diameter), inner: side(diameter - 2 * thickness), gap: 2 * thickness * Math.sin(bevel) };
}

export interface StaveOptions extends PieceOptions {
  /** of its widest face */
  readonly width: Mm;
  readonly length: Mm;
  /** off square, each long edge, the back narrower; 0 for square edges */
  readonly bevel: Radians;
}

/** One stave of a core, front face outwards: x across it, from its middle; y along it, from 0. Grain along it.
 * @throws Unusable naming the option, also when the bevels leave nothing of the back. */
export function stave(o: StaveOptions): Part {
  requireRange('stave width', o.width, 0.1, 10_000);
  requireRange('stave length', o.length, 0.1, 10_000);
  requireRange('stave bevel', o.bevel, 0, Math.atan2(o.width / 2, o.thickness), 'rad');
  const outline = rectangle(-o.width / 2, 0, o.width / 2, o.length);
  // edges 1 and 3 run along it
  const region = solid(outline.map((v, i) => (i % 2 === 1 && o.bevel > 0 ? vertex(v, 0, 'seam') : v)));
  const part = piece('stave', 'Stave', { ...o, grained: false }, { region });
  return { ...part, ...((o.grained ?? true) && { grain: Math.PI / 2 }), ...(o.bevel > 0 && { bevel: o.bevel }) };
}
