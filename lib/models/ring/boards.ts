import { bounds } from '../../geometry/measure.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';

/** The least board that holds any piece of a ring with all its joints: each piece lies with its middle across the board, grain along its
 * chord. A plain felloe takes 2 Ro sin(180°/F) by Ro - Ri cos(180°/F); fingers, scarfs and legs more. */
export function felloeBoards(drafts: readonly Draft[]): { readonly length: Mm; readonly width: Mm } {
  const boxes = drafts.filter(d => d.part.kind !== 'key').map(d => bounds(d.part.region.outer));
  return {
    length: Math.max(0, ...boxes.map(b => b.maxX - b.minX)),
    width: Math.max(0, ...boxes.map(b => b.maxY - b.minY)),
  };
}
