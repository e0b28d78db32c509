import { endDirection, startDirection } from '../../geometry/along.js';
import { windingOfEdges } from '../../geometry/locate.js';
import { type Box, segmentBounds } from '../../geometry/measure.js';
import { circle, type Outline, type Region, reverse, solid } from '../../geometry/outline.js';
import type { Point } from '../../geometry/point.js';
import { type Segment, segments } from '../../geometry/segment.js';
import type { Drill, Feature, Part, Pocket } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';

/** Where wood ends: an edge of a part or of a hollow in it, with the wood on the left. */
export interface Bank {
  readonly edge: Segment;
  readonly box: Box;
  /** what it bounds, in words: 'its outline' */
  readonly of: string;
  /** into the wood, square to the edge before at its end and to the edge after at its start */
  readonly before: Point;
  readonly after: Point;
  /** heights between which it stands, over the back face */
  readonly low: Mm;
  readonly high: Mm;
}

const left = (v: Point): Point => ({ x: -v.y, y: v.x });

function banksOf(outline: Outline, of: string, low: Mm, high: Mm): Bank[] {
  const edges = segments(outline);
  return edges.map((edge, i) => ({
    edge,
    box: segmentBounds(edge),
    of,
    before: left(endDirection(edges.at(i - 1)!)),
    after: left(startDirection(edges[(i + 1) % edges.length]!)),
    low,
    high,
  }));
}

/** What is taken out of a part from a face, or through it. */
interface Hollow {
  readonly of: string;
  readonly area: Region;
  readonly low: Mm;
  readonly high: Mm;
}

function hollow(part: Part, f: Pocket | Drill): Hollow {
  const side = f.kind === 'pocket' ? f.face : f.from;
  return {
    of: f.kind === 'pocket' ? 'a pocket' : 'a hole',
    area: f.kind === 'pocket' ? f.area : solid(circle(f.diameter / 2, f.at)),
    low: side === 'front' ? part.thickness - f.depth : 0,
    high: side === 'back' ? f.depth : part.thickness,
  };
}

const isHollow = (f: Feature): f is Pocket | Drill => f.kind === 'pocket' || f.kind === 'drill';

/** Wood of a part and where it ends. */
export interface Wood {
  readonly banks: readonly Bank[];
  /** whether there is wood at a point at some height between two, all openings, pockets and holes made */
  readonly has: (p: Point, low: Mm, high: Mm) => boolean;
}

const inside = (edges: readonly Segment[], p: Point): boolean => windingOfEdges(edges, p) !== 0;

/** A part's wood once everything is cut. */
export function woodOf(part: Part): Wood {
  const { outer, openings } = part.region;
  const hollows = part.features.filter(isHollow).map(f => hollow(part, f));
  const whole = [outer, ...openings].flatMap(o => segments(o));
  const voids = hollows.map(h => ({ ...h, edges: [h.area.outer, ...h.area.openings].flatMap(o => segments(o)) }));
  return {
    banks: [
      ...banksOf(outer, 'its outline', 0, part.thickness),
      ...openings.flatMap(o => banksOf(o, 'an opening', 0, part.thickness)),
      ...hollows.flatMap(h =>
        [h.area.outer, ...h.area.openings].flatMap(o => banksOf(reverse(o), h.of, h.low, h.high)),
      ),
    ],
    has: (p, low, high) => inside(whole, p) && !voids.some(v => v.low <= low && v.high >= high && inside(v.edges, p)),
  };
}
