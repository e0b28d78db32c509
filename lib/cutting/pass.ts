import { type Motion, moveOutline, movePolyline } from '../geometry/motion.js';
import { type Outline, type Polyline, type Region, reverse } from '../geometry/outline.js';
import { distance, type Point } from '../geometry/point.js';

/** A path of the tool's centre inside a pocket; a closed one ends where it begins. */
export interface Pass {
  readonly line: Polyline;
  readonly closed: boolean;
}

/** How a pocket is cleared. */
export interface ClearingOptions {
  /** from one pass to the next, share of the cutter's diameter: 0.05 to 0.95 */
  readonly stepover: number;
  /** rings round the pocket's middle, or strokes along the part's grain and a last pass round the wall */
  readonly run: 'rings' | 'grain';
}

/** What is taken where a plan asks for passes but not how: common practice, no source. */
export const CLEARING: ClearingOptions = { stepover: 0.4, run: 'rings' };

/** A pass moved; mirrored, a closed one still runs the way it did. */
export const movePass = (pass: Pass, motion: Motion): Pass => ({
  line: pass.closed ? moveOutline(pass.line, motion) : movePolyline(pass.line, motion),
  closed: pass.closed,
});

/** Where the tool is when a pass is done. */
export const endOf = (pass: Pass): Point | undefined => (pass.closed ? pass.line[0] : pass.line.at(-1));

/** An outline run from its vertex nearest to a point. */
function fromNearest(outline: Outline, to: Point): Outline {
  const far = outline.map(v => distance(v, to));
  const first = far.indexOf(Math.min(...far));
  return [...outline.slice(first), ...outline.slice(0, first)];
}

/** A closed pass run the other way from where it begins. */
export const turnedRound = (pass: Pass): Pass =>
  pass.closed ? { line: fromNearest(reverse(pass.line), pass.line[0]!), closed: true } : pass;

/** The outlines of a region as passes, its openings' before the outer one, all with the wood they run along on the left; each from the vertex
 * nearest to where the tool is. @param at where the tool is; nowhere unless given */
export function ring({ outer, openings }: Region, at?: Point): Pass[] {
  let here = at;
  return [...openings, outer].map(outline => {
    const line = here ? fromNearest(reverse(outline), here) : reverse(outline);
    here = line[0];
    return { line, closed: true };
  });
}
