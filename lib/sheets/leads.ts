import { pointAlong, spin, startDirection } from '../geometry/along.js';
import { encloses } from '../geometry/locate.js';
import { type Box, segmentLength } from '../geometry/measure.js';
import { type Outline, type Polyline, vertex } from '../geometry/outline.js';
import { add, type Point, scale } from '../geometry/point.js';
import { polylineSegments, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { FEED, type Feed, type Leads } from './finishing.js';
import { type Cut, cutOf, isNear } from './room.js';
import { roundsCorner, starts } from './start.js';
import type { Profile } from './work.js';

/** A lead keeps at least so far from every other cut: beyond that cut's own path nothing is touched. */
const CLEAR: Mm = 0.3;
/** Points of a lead looked at lie so near each other that no cut passes between two of them unseen: closer than 2 * CLEAR. */
const STEP: Mm = 0.5;
/** A lead that finds no room is tried at these shares of its length. */
const SHORTER = [1, 0.5, 0.25] as const;

const QUARTER_TURN = Math.tan(Math.PI / 8);

/** The lead to and from a start. @param scrap +1 where the waste lies on the left of the travel, -1 on the right */
function leadAt(at: Point, along: Point, scrap: 1 | -1, { shape, length }: Leads): NonNullable<Profile['lead']> {
  const away = spin(along, (scrap * Math.PI) / 2);
  const reach = shape === 'arc' ? length : length / Math.SQRT2;
  const out = add(at, scale(away, reach));
  const bulge = shape === 'arc' ? scrap * QUARTER_TURN : 0;
  return {
    in: [vertex(add(out, scale(along, -reach)), bulge), vertex(at)],
    out: [vertex(at, bulge), vertex(add(out, scale(along, reach)))],
  };
}

/** Points along a lead, from its far end to the profile. */
function sampled(line: Polyline): Point[] {
  return polylineSegments(line).flatMap(s => {
    const steps = Math.ceil(segmentLength(s) / STEP);
    return Array.from({ length: steps + 1 }, (_, i) => pointAlong(s, i / steps));
  });
}

/** What a lead has to keep clear of. */
export interface Surroundings {
  /** the sheet's other cuts */
  readonly others: readonly Cut[];
  /** the stock */
  readonly stock: Box;
}

const isOn = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point): boolean =>
  x >= minX && x <= maxX && y >= minY && y <= maxY;

/** Whether a lead keeps to the waste of the stock: off other cuts all along, off its own in its far half. */
function hasRoom(
  lead: NonNullable<Profile['lead']>,
  profile: Outline,
  inside: boolean,
  { others, stock }: Surroundings,
): boolean {
  const own = cutOf(-1, profile);
  return [lead.in, [...lead.out].reverse()].every((line, i) => {
    // the way out backwards: its bulge then stands at its other end, turned
    const run = i === 0 ? line : [{ ...line[0]!, bulge: -line[1]!.bulge }, line[1]!];
    const points = sampled(run);
    const far = points.slice(0, Math.ceil(points.length / 2));
    return (
      points.every(p => isOn(stock, p) && others.every(cut => !isNear(cut, p, CLEAR))) &&
      far.every(p => !isNear(own, p, CLEAR / 2) && encloses(profile, p) === inside)
    );
  });
}

/** Whether a cut may start with a lead where an outline begins: no other piece meets it there. */
function isFree(outline: Outline, radius: Mm): boolean {
  const [first] = segments(outline);
  return outline[0]?.mate === undefined && first !== undefined && !roundsCorner(first, radius);
}

/** A profile begun where its lead has room, away from faces that meet another piece; without a lead where no such place has.
 * @param radius of the cutter, mm */
export function withLead(profile: Profile, leads: Leads, radius: Mm, around: Surroundings, feed: Feed = FEED): Profile {
  const scrap = feed === 'conventional' ? -1 : 1;
  for (const share of SHORTER)
    for (const outline of starts(profile.outline, radius)) {
      if (!isFree(outline, radius)) continue;
      const along = startDirection(segments(outline)[0]!);
      const lead = leadAt(outline[0]!, along, scrap, { ...leads, length: leads.length * share });
      if (hasRoom(lead, outline, profile.kind === 'inside', around)) return { ...profile, outline, lead };
    }
  return profile;
}
