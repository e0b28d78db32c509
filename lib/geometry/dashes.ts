import type { Mm } from '../units/length.js';
import { pointAlong } from './along.js';
import { segmentLength } from './measure.js';
import { bulgeOf, type Polyline, vertex } from './outline.js';
import { polylineSegments, type Segment } from './segment.js';

/** An edge as dashes with gaps as long, one at each of its ends. @param each length of a dash at most */
function edgeDashes(s: Segment, each: Mm): Polyline[] {
  const pieces = 2 * Math.ceil(segmentLength(s) / (2 * each)) - 1;
  const bulge = s.kind === 'arc' ? bulgeOf(s.sweep / pieces) : 0;
  return Array.from({ length: (pieces + 1) / 2 }, (_, i) => [
    vertex(pointAlong(s, (2 * i) / pieces), bulge),
    vertex(pointAlong(s, (2 * i + 1) / pieces)),
  ]);
}

/** An open run as dashes; every corner is drawn. @param each length of a dash and of a gap, about, mm */
export const dashes = (line: Polyline, each: Mm): Polyline[] =>
  polylineSegments(line).flatMap(s => edgeDashes(s, each));
