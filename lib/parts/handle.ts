import { refuse, requireRange } from '../findings/unusable.js';
import { arcVertices, bulgeOf, type Polyline, vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { smoothProfile } from '../geometry/profile.js';
import { polylineSegments, type Segment } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';

export type HandleShape = 'plain' | 'tapered' | 'turned';

export interface HandleOptions {
  /** plain unless given: straight to the tip; tapered: narrowing to a rounded tip; turned: neck, swell and knob of tangent arcs */
  readonly shape?: HandleShape;
  /** [distance past the rim, half width] of an own shape, mm; a smooth curve through them; instead of `shape` */
  readonly profile?: readonly (readonly [Mm, Mm])[];
  /** past the rim, mm, above 0 */
  readonly length: Mm;
  /** half the spoke's width where the handle starts, mm */
  readonly half: Mm;
  /** straight at full width from the rim on at least this far, mm; 0 unless given */
  readonly collar?: Mm;
}

/** Stations of a turned handle: share of its length, share of the spoke's half width; level at each. */
const LONG: readonly Station[] = [
  [0.1, 1],
  [0.2, 0.6],
  [0.5, 0.95],
  [0.8, 0.5],
];
/** A shorter one has a single neck. */
const SHORT: readonly Station[] = [
  [0.1, 1],
  [0.45, 0.6],
];
type Station = readonly [number, number];

/** In half widths of the spoke: from here on there is room for neck, swell and neck. */
const LONG_FROM = 6;
/** In half widths: shorter than this no curve between two stations stays below 45 degrees. */
const LEAST = 2;
/** Width of a tapered handle at its tip over the spoke's. */
const TAPER = 0.66;

/** An S of two equal tangent arcs from a point to another, level at both ends: radius (dx² + dy²) / (4 |dy|). */
function ogee(from: Point, to: Point): Polyline {
  if (from.y === to.y) return [vertex(from)];
  const sweep = 2 * Math.atan2(to.y - from.y, to.x - from.x);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return [vertex(from, bulgeOf(sweep)), vertex(middle, bulgeOf(-sweep))];
}

const plain = (length: Mm, half: Mm): Polyline => [vertex({ x: 0, y: half }), vertex({ x: length, y: half })];

/** A straight taper, then a quarter arc tangent to it that meets the axis at the tip. */
function tapered(length: Mm, half: Mm): Polyline {
  const slope = Math.atan2(half * (1 - TAPER), length);
  // tip circle: centre on the axis, tangent to the flank y = half - x tan(slope), touching x = length
  const radius = (half * Math.cos(slope) - length * Math.sin(slope)) / (1 - Math.sin(slope));
  return [
    vertex({ x: 0, y: half }),
    ...arcVertices({ x: length - radius, y: 0 }, radius, Math.PI / 2 - slope, slope - Math.PI / 2),
    vertex({ x: length, y: 0 }),
  ];
}

/** Collar, neck, swell, neck and a round knob at the tip; a short one without the swell. */
function turned(length: Mm, half: Mm): Polyline {
  const long = length >= LONG_FROM * half;
  const knob = long ? Math.min(0.75 * half, 0.1 * length) : Math.min(0.8 * half, 0.3 * length);
  const stations = (long ? LONG : SHORT).map(([x, y]): Point => ({ x: x * length, y: y * half }));
  const stops = [...stations, { x: length - knob, y: knob }];
  return [
    vertex({ x: 0, y: half }),
    ...stops.slice(1).flatMap((to, i) => ogee(stops[i]!, to)),
    ...arcVertices({ x: length - knob, y: 0 }, knob, Math.PI / 2, -Math.PI / 2),
    vertex({ x: length, y: 0 }),
  ];
}

const rounded = (mm: Mm): number => Math.round(mm * 1000) / 1000;

/** The maker's own points, a smooth curve through them; a step where the first is not as wide as the spoke. */
function own(profile: readonly (readonly [Mm, Mm])[], length: Mm, half: Mm, collar: Mm): Polyline {
  if (profile.length < 2) refuse('spokes.handle.profile', `${profile.length} points`, 'two points or more');
  profile.forEach(([x, y], i) => {
    const last = i === profile.length - 1;
    requireRange(`spokes.handle.profile[${i}] distance`, x, i === 0 ? 0 : profile[i - 1]![0] + 1e-3, length + 0.05);
    requireRange(`spokes.handle.profile[${i}] half width`, y, last ? 0 : 0.5, 1e4);
  });
  const end = profile.at(-1)![0];
  if (Math.abs(end - length) > 0.05)
    refuse(
      'spokes.handle.profile',
      `a curve that ends ${rounded(end)} mm past the rim`,
      `a last point at the tip, ${rounded(length)} mm past the rim`,
    );
  const points = profile.map(([x, y], i) => ({ x: i === profile.length - 1 ? length : Math.max(x, collar), y }));
  const rising = points.filter((p, i) => i === 0 || p.x > points[i - 1]!.x);
  // as wide as the spoke at its start: the curve leaves it level, without a corner
  const curve = smoothProfile(rising, rising[0]!.y === half ? { startTangent: 0 } : {});
  const start = curve[0]!;
  const joined = start.y === half ? [] : [vertex({ x: start.x, y: half })];
  const lead = start.x > 0 ? [vertex({ x: 0, y: half })] : [];
  return [...lead, ...joined, ...curve];
}

/** The upper edge of a handle: from (0, half) at the rim to the tip, x the distance past the rim, y the half width, mm.
 * Ends on the axis (round tips) or above it (a flat end). @throws Unusable naming what does not fit. */
export function handleEdge(o: HandleOptions): Polyline {
  const collar = o.collar ?? 0;
  requireRange('half width', o.half, 0.5, 1e4);
  requireRange(
    'handle length',
    o.length,
    collar + leastHandle(o.profile ? 'plain' : (o.shape ?? 'plain'), o.half),
    1e5,
  );
  if (o.profile) return withoutIdle(own(o.profile, o.length, o.half, collar));
  const shaped = shapes[o.shape ?? 'plain'](o.length - collar, o.half).map(v =>
    vertex({ x: v.x + collar, y: v.y }, v.bulge),
  );
  return withoutIdle([vertex({ x: 0, y: o.half }), ...shaped]);
}

/** Without vertices in the middle of a level line, or doubled. */
const withoutIdle = (edge: Polyline): Polyline =>
  edge.filter((v, i) => {
    const [before, after] = [edge[i - 1], edge[i + 1]];
    if (!before || !after) return true;
    const level = before.bulge === 0 && v.bulge === 0 && before.y === v.y && v.y === after.y;
    return !level && !(v.x === after.x && v.y === after.y);
  });

const shapes: Readonly<Record<HandleShape, (length: Mm, half: Mm) => Polyline>> = { plain, tapered, turned };

/** Least length of a shape's handle past its collar, for a spoke of the given half width, mm. */
export const leastHandle = (shape: HandleShape, half: Mm): Mm => (shape === 'plain' ? 0.1 : LEAST * half);

function heightAt(s: Segment, x: Mm): Mm {
  if (s.kind === 'line') {
    const span = s.to.x - s.from.x;
    return span === 0 ? Math.min(s.from.y, s.to.y) : s.from.y + ((s.to.y - s.from.y) * (x - s.from.x)) / span;
  }
  const dx = x - s.center.x;
  const rise = Math.sqrt(Math.max(0, s.radius * s.radius - dx * dx));
  return s.sweep < 0 ? s.center.y + rise : s.center.y - rise;
}

/** Half width of a handle's edge at a distance past the rim, mm. */
export function halfWidthAt(edge: Polyline, x: Mm): Mm {
  const on = polylineSegments(edge).filter(s => s.from.x <= x && x <= s.to.x);
  return on.length > 0 ? Math.min(...on.map(s => heightAt(s, x))) : 0;
}
