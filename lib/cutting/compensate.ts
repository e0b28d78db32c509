import { type Finding, stops } from '../findings/finding.js';
import { offset } from '../geometry/offset.js';
import { type Outline, reverse, solid } from '../geometry/outline.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { narrowNotch } from './checks/narrow-notch.js';
import { narrowOpening } from './checks/narrow-opening.js';
import { tightRadius } from './checks/tight-radius.js';
import { cornerNote } from './corner-note.js';
import { centresIn, followsOutside, type InsideCorner, insideCorners, tightArcs } from './hollow.js';
import { cornersToOpen, type Opened, openedFrom, type Relief } from './relief.js';
import { keptWhole } from './relief-through.js';
import { withSpurs } from './spur.js';

/** Tool-centre outlines round a part and in its openings, in the part's frame. */
export interface Compensated {
  readonly outside: readonly Outline[];
  readonly inside: readonly Outline[];
  readonly findings: readonly Finding[];
}

/** Inside corners of a part's outlines that stay as the cutter leaves them. */
const cornersLeft = (part: Part, relieved: readonly Opened[]): InsideCorner[] =>
  [part.region.outer, ...part.region.openings].flatMap(o =>
    insideCorners(o).filter(c => !relieved.some(({ corner }) => corner.of.outline === o && corner.vertex === c.vertex)),
  );

/** Tool-centre outlines along one outline of a part, and what is said where the cutter does not follow it. */
interface Followed {
  readonly of: Outline;
  readonly centres: readonly Outline[];
  readonly findings: readonly Finding[];
}

function roundPart(part: Part, radius: Mm): Followed {
  const of = part.region.outer;
  const centres = offset([solid(of)], radius);
  const tight = tightRadius(part, 'its outline', tightArcs(of, radius), radius);
  const follows = tight.length > 0 || followsOutside(solid(of), centres, radius);
  return {
    of,
    centres: centres.flatMap(r => [r.outer, ...r.openings]),
    findings: follows ? tight : narrowNotch(part, centres, radius),
  };
}

/** What is in the file where the cutter does not fit is the finished outline. */
function inOpening(part: Part, of: Outline, radius: Mm): Followed {
  const centres = centresIn(solid(reverse(of)), radius);
  if (!centres) return { of, centres: [of], findings: [narrowOpening(part, of, radius)] };
  const findings = tightRadius(part, 'an opening', tightArcs(of, radius), radius);
  return { of, centres: [reverse(centres.outer), ...centres.openings.map(reverse)], findings };
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
