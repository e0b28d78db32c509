import { levelSpans } from '../geometry/level.js';
import { movePoint, moveRegion, turning } from '../geometry/motion.js';
import { type Region, vertex } from '../geometry/outline.js';
import { polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Drill, Part, Score } from './part.js';

/** Lines to be scored along a disc's radii; angles from +y, lengths from the disc's centre, mm. */
export interface SectorMarks {
  readonly at: readonly Radians[];
  readonly from: Mm;
  readonly to: Mm;
}

type Span = readonly [from: Mm, to: Mm];

/** Left of a mark between it and a hole or a pocket's wall; and the shortest mark worth making; common practice, no source. */
const OFF: Mm = 0.5;
const SHORTEST: Mm = 1;

/** Stretches less other stretches. */
const without = (spans: readonly Span[], [low, high]: Span): Span[] =>
  spans.flatMap(([from, to]): Span[] => {
    if (high <= from || low >= to) return [[from, to]];
    return [[from, low] as const, [high, to] as const].filter(([a, b]) => b > a);
  });

/** Where a ray along +x is over a hole. */
function overHole({ at, diameter }: Drill, turn: Radians): Span[] {
  const { x, y } = movePoint(at, turning(turn));
  const radius = diameter / 2 + OFF;
  if (Math.abs(y) >= radius) return [];
  const half = Math.sqrt(radius * radius - y * y);
  return [[x - half, x + half]];
}

/** Where a ray along +x is over a pocket of the front. */
const overPocket = (area: Region, turn: Radians): Span[] =>
  levelSpans(moveRegion(area, turning(turn)), 0).map(([a, b]) => [a - OFF, b + OFF]);

/** A part of a disc (centre at the origin) with scored radii on its front, as far as they lie on it: off its holes and its pockets. */
export function sectorMarked(part: Part, marks: SectorMarks): Part {
  const scores = marks.at.flatMap((angle): Score[] => {
    const turn = -(Math.PI / 2 + angle);
    const wood = levelSpans(moveRegion(part.region, turning(turn)), 0).map(
      ([a, b]): Span => [Math.max(a, marks.from), Math.min(b, marks.to)],
    );
    const off = part.features.flatMap(f => {
      if (f.kind === 'drill') return overHole(f, turn);
      return f.kind === 'pocket' && f.face === 'front' ? overPocket(f.area, turn) : [];
    });
    const left = off.reduce<readonly Span[]>(without, wood).filter(([a, b]) => b - a >= SHORTEST);
    return left.map(([a, b]) => ({
      kind: 'score',
      face: 'front',
      line: [vertex(polar(a, angle + Math.PI / 2)), vertex(polar(b, angle + Math.PI / 2))],
    }));
  });
  return { ...part, features: [...part.features, ...scores] };
}
