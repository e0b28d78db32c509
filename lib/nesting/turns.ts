import type { CutPart } from '../cutting/cut-part.js';
import { bounds, boundsOfAll } from '../geometry/measure.js';
import { moveRegion, turning } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import { type Outline, type Region, solid } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Stock } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import { type Silhouette, silhouette } from './silhouette.js';

/** A part's room on the stock, turned one of the ways it may lie. */
export interface Turned {
  readonly turn: Radians;
  readonly silhouette: Silhouette;
  /** lower left corner of its room's box in the turned frame */
  readonly corner: Point;
}

const QUARTER = Math.PI / 2;

/** Directions a part may lie in, anticlockwise from its first face's frame: its grain along the stock's either way, or, where one of them
 * has none, quarter turns. @param runs the way the stock's grain runs, x being along */
export function allowedTurns(cut: CutPart, runs: Stock['grain'] = 'along'): Radians[] {
  const { grain } = cut.part;
  if (grain === undefined || runs === 'none') return [0, QUARTER, 2 * QUARTER, 3 * QUARTER];
  const seen = cut.first.face === 'front' ? grain : Math.PI - grain;
  const along = runs === 'along' ? 0 : QUARTER;
  // -0 would be one more direction
  return [along - seen, along + Math.PI - seen];
}

const near = (a: Mm, b: Mm): boolean => Math.abs(a - b) < 1e-6;

/** Whether two ways to lie take the same room. */
function alike(a: Silhouette, b: Silhouette): boolean {
  if (!near(a.width, b.width) || !near(a.height, b.height) || a.strips.length !== b.strips.length) return false;
  return a.strips.every((s, i) => near(s.left, b.strips[i]!.left) && near(s.right, b.strips[i]!.right));
}

function lay(room: readonly Region[], turn: Radians): Turned {
  const outlines: Outline[] = room.map(r => moveRegion(r, turning(turn)).outer);
  const box = boundsOfAll(outlines.map(bounds));
  return { turn, silhouette: silhouette(outlines), corner: { x: box.minX, y: box.minY } };
}

/** The ways a part may lie, with the room it needs: its finished outline grown by half the gap, so that rooms side by side keep the gap.
 * Ways that take the same room as an earlier one are left out. @param gap between finished outlines, mm, above 0 */
export function waysToLie(cut: CutPart, gap: Mm, runs?: Stock['grain']): Turned[] {
  const room = offset([solid(cut.finished.outer)], gap / 2);
  const ways: Turned[] = [];
  for (const turn of allowedTurns(cut, runs)) {
    const way = lay(room, turn);
    if (!ways.some(w => alike(w.silhouette, way.silhouette))) ways.push(way);
  }
  return ways;
}
