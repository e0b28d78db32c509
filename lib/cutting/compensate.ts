import type { Finding } from '../findings/finding.js';
import { offset } from '../geometry/offset.js';
import { asCircle, type Outline, reverse, solid } from '../geometry/outline.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { centresIn, followsOutside, insideCorners, tightArcs, widestCutter, woodLeft } from './hollow.js';

/** Tool-centre outlines round a part and in its openings, in the part's frame. */
export interface Compensated {
  readonly outside: readonly Outline[];
  readonly inside: readonly Outline[];
  readonly findings: readonly Finding[];
}

/** Wood left in a corner is worth a word from here on, mm. */
const WORTH_A_NOTE: Mm = 0.05;

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** One note about the corner that keeps the most wood. */
function cornerNotes(part: Part, radius: Mm): Finding[] {
  const outlines = [part.region.outer, ...part.region.openings];
  const left = outlines
    .flatMap(o => insideCorners(o).map(c => woodLeft(c.turn, radius)))
    .filter(wood => wood >= WORTH_A_NOTE);
  if (left.length === 0) return [];
  const most = Math.max(...left);
  const corners = left.length === 1 ? '1 inside corner' : `${left.length} inside corners`;
  const message = `${part.id}: a round cutter ${mm(2 * radius)} wide leaves up to ${mm(most)} of wood in ${corners}; square them by hand if a piece must fit there`;
  return [{ level: 'note', rule: 'inside-corner', where: part.id, message, value: most, limit: WORTH_A_NOTE }];
}

/** Where the cutter is too wide for the outer outline's hollows: a warning, or a stop if it is an edge another piece meets. */
function tooWideOutside(part: Part, radius: Mm): Finding[] {
  const tight = tightArcs(part.region.outer, radius).map(s => s.radius);
  const where = part.id;
  if (tight.length > 0) {
    const value = Math.min(...tight);
    const message = `${part.id} has a hollow of ${mm(value)} radius, the cutter's is ${mm(radius)}: wood stays there; a narrower cutter follows it`;
    return [{ level: 'warn', rule: 'cutter-too-wide', where, message, value, limit: radius }];
  }
  const level = part.mates.length > 0 ? 'stop' : 'warn';
  const message = `${part.id} has a notch the cutter, ${mm(2 * radius)} wide, cannot get into; a narrower cutter or a wider notch is needed`;
  return [{ level, rule: 'cutter-too-wide', where, message, value: 2 * radius }];
}

function tooWideOpening(part: Part, opening: Outline, radius: Mm): Finding {
  const round = asCircle(opening);
  const value = round ? 2 * round.radius : widestCutter(solid(reverse(opening)), 2 * radius);
  const message = `${part.id} has an opening that a cutter of at most ${mm(value)} gets into; the cutter is ${mm(2 * radius)} wide`;
  return { level: 'stop', rule: 'narrow-opening', where: part.id, message, value, limit: 2 * radius };
}

/** The opening's tool-centre outline; what is in the file where the cutter does not fit is the finished one. */
function inOpening(part: Part, opening: Outline, radius: Mm): { outlines: Outline[]; findings: Finding[] } {
  const centres = centresIn(solid(reverse(opening)), radius);
  return centres
    ? { outlines: [reverse(centres.outer), ...centres.openings.map(reverse)], findings: [] }
    : { outlines: [opening], findings: [tooWideOpening(part, opening, radius)] };
}

/** A part's outlines moved off the wood by half the cutter's width: outer outlines out, openings in; arcs stay arcs, radius + or - exactly that.
 * @param radius mm, half the cut's width; 0 leaves the finished outlines */
export function compensate(part: Part, radius: Mm): Compensated {
  const { outer, openings } = part.region;
  if (radius === 0) return { outside: [outer], inside: openings, findings: [] };
  const centres = offset([solid(outer)], radius);
  const inside = openings.map(o => inOpening(part, o, radius));
  const followed = followsOutside(solid(outer), centres, radius);
  return {
    outside: centres.flatMap(r => [r.outer, ...r.openings]),
    inside: inside.flatMap(i => i.outlines),
    findings: [
      ...cornerNotes(part, radius),
      ...(followed ? [] : tooWideOutside(part, radius)),
      ...inside.flatMap(i => i.findings),
    ],
  };
}
