import type { Finding } from '../findings/finding.js';
import { difference } from '../geometry/boolean.js';
import { offset } from '../geometry/offset.js';
import { asCircle, type Outline, type Region, reverse, solid } from '../geometry/outline.js';
import { hasMates } from '../parts/mates.js';
import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { cornerNote } from './corner-note.js';
import { centresIn, followsOutside, insideCorners, tightArcs, widestCutter } from './hollow.js';

/** Tool-centre outlines round a part and in its openings, in the part's frame. */
export interface Compensated {
  readonly outside: readonly Outline[];
  readonly inside: readonly Outline[];
  readonly findings: readonly Finding[];
}

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** Turns of the inside corners of a part's outlines. */
const cornersOf = (part: Part): Radians[] =>
  [part.region.outer, ...part.region.openings].flatMap(o => insideCorners(o).map(c => c.turn));

/** Where the cutter is too wide for the outer outline's hollows: a warning, or a stop if another piece meets an edge there. */
function tooWideOutside(part: Part, centres: readonly Region[], radius: Mm): Finding[] {
  const tight = tightArcs(part.region.outer, radius).map(s => s.radius);
  const where = part.id;
  if (tight.length > 0) {
    const value = Math.min(...tight);
    const message = `${part.id} has a hollow of ${mm(value)} radius, the cutter's is ${mm(radius)}: wood stays there; a narrower cutter follows it`;
    return [{ level: 'warn', rule: 'cutter-too-wide', where, message, value, limit: radius }];
  }
  const stays = difference(offset(centres, -radius), [solid(part.region.outer)]);
  const level = stays.some(hasMates) ? 'stop' : 'warn';
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
      ...cornerNote(part.id, 'its outline', cornersOf(part), radius),
      ...(followed ? [] : tooWideOutside(part, centres, radius)),
      ...inside.flatMap(i => i.findings),
    ],
  };
}
