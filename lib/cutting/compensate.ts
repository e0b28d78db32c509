import { type Finding, stops } from '../findings/finding.js';
import { difference } from '../geometry/boolean.js';
import { offset } from '../geometry/offset.js';
import { asCircle, type Outline, type Region, reverse, solid } from '../geometry/outline.js';
import { hasMates } from '../parts/mates.js';
import type { Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { cornerNote } from './corner-note.js';
import { centresIn, followsOutside, insideCorners, tightArcs, widestCutter } from './hollow.js';
import { cornersToOpen, type Opened, openedFrom, type Relief } from './relief.js';
import { keptWhole } from './relief-through.js';
import { withSpurs } from './spur.js';

/** Tool-centre outlines round a part and in its openings, in the part's frame. */
export interface Compensated {
  readonly outside: readonly Outline[];
  readonly inside: readonly Outline[];
  readonly findings: readonly Finding[];
}

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** Turns of the inside corners of a part's outlines that stay as the cutter leaves them. */
const cornersLeft = (part: Part, relieved: readonly Opened[]): Radians[] =>
  [part.region.outer, ...part.region.openings].flatMap(o =>
    insideCorners(o)
      .filter(c => !relieved.some(({ corner }) => corner.of.outline === o && corner.vertex === c.vertex))
      .map(c => c.turn),
  );

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

/** Tool-centre outlines along one outline of a part, and what is said where the cutter does not follow it. */
interface Followed {
  readonly of: Outline;
  readonly centres: readonly Outline[];
  readonly findings: readonly Finding[];
}

function roundPart(part: Part, radius: Mm): Followed {
  const of = part.region.outer;
  const centres = offset([solid(of)], radius);
  return {
    of,
    centres: centres.flatMap(r => [r.outer, ...r.openings]),
    findings: followsOutside(solid(of), centres, radius) ? [] : tooWideOutside(part, centres, radius),
  };
}

/** What is in the file where the cutter does not fit is the finished outline. */
function inOpening(part: Part, of: Outline, radius: Mm): Followed {
  const centres = centresIn(solid(reverse(of)), radius);
  return centres
    ? { of, centres: [reverse(centres.outer), ...centres.openings.map(reverse)], findings: [] }
    : { of, centres: [of], findings: [tooWideOpening(part, of, radius)] };
}

/** A part's outlines moved off the wood by half the cutter's width: outer outlines out, openings in; arcs stay arcs, radius + or - exactly that.
 * Corners that a square corner goes into are opened.
 * @param radius mm, half the cut's width; 0 leaves the finished outlines */
export function compensate(part: Part, radius: Mm, relief: Relief): Compensated {
  const { outer, openings } = part.region;
  if (radius === 0) return { outside: [outer], inside: openings, findings: [] };
  const round = roundPart(part, radius);
  const inside = openings.map(o => inOpening(part, o, radius));
  const corners = relief === 'none' ? [] : cornersToOpen(part);
  const wanted = [round, ...inside]
    .filter(f => !stops(f.findings))
    .flatMap(f =>
      openedFrom(
        corners.filter(c => c.of.outline === f.of),
        f.centres,
        radius,
        relief,
      ),
    );
  const relieved = keptWhole(part, wanted, radius, relief);
  const spurred = (f: Followed): Outline[] =>
    f.centres.map(o =>
      withSpurs(
        o,
        relieved.opened.filter(r => r.outline === o),
      ),
    );
  return {
    outside: spurred(round),
    inside: inside.flatMap(spurred),
    findings: [
      ...cornerNote(part.id, 'its outline', cornersLeft(part, relieved.opened), radius),
      ...relieved.findings,
      ...[round, ...inside].flatMap(f => f.findings),
    ],
  };
}
