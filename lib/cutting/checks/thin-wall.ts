import type { Finding } from '../../findings/finding.js';
import { facing } from '../../geometry/facing.js';
import { cross, distance, dot, midpoint, type Point, scale, subtract } from '../../geometry/point.js';
import { ON_BOUNDARY } from '../../geometry/tolerance.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import { type Bank, type Wood, woodOf } from './banks.js';

/** A wall: where two banks of the wood are locally nearest. */
export interface Wall {
  readonly thickness: Mm;
  /** in the middle of it, in the part's frame */
  readonly at: Point;
  readonly between: readonly [string, string];
}

/** Cosine of how far off square to its sides a wall is still measured: 10 degrees. Sides that lean more make a point, not a wall. */
const SQUARE = Math.cos(Math.PI / 18);

/** Into the wood, square to an edge. */
function normal({ edge }: Bank, p: Point): Point {
  if (edge.kind === 'arc') return scale(subtract(edge.center, p), Math.sign(edge.sweep) / edge.radius);
  const along = subtract(edge.to, edge.from);
  return scale({ x: -along.y, y: along.x }, 1 / Math.hypot(along.x, along.y));
}

/** Whether a direction lies between the normals of two edges at a corner that stands into the wood. */
const between = (first: Point, second: Point, u: Point): boolean =>
  cross(first, second) < 0 && cross(first, u) <= 0 && cross(second, u) >= 0;

const same = (p: Point, q: Point): boolean => distance(p, q) < ON_BOUNDARY;

/** Whether a bank faces a direction at one of its points. */
function faces(bank: Bank, p: Point, u: Point): boolean {
  const n = normal(bank, p);
  if (dot(n, u) >= SQUARE) return true;
  return (
    (same(p, bank.edge.from) && between(bank.before, n, u)) || (same(p, bank.edge.to) && between(n, bank.after, u))
  );
}

/** The thinnest wood between two banks, if it is thinner than a limit. */
function wallBetween(a: Bank, b: Bank, limit: Mm, wood: Wood): Wall | undefined {
  const [low, high] = [Math.max(a.low, b.low), Math.min(a.high, b.high)];
  if (high - low < ON_BOUNDARY) return undefined;
  let best: Wall | undefined;
  for (const [p, q] of facing(a.edge, b.edge)) {
    const thickness = distance(p, q);
    if (thickness >= (best?.thickness ?? limit - ON_BOUNDARY) || thickness < ON_BOUNDARY) continue;
    const u = scale(subtract(q, p), 1 / thickness);
    const at = midpoint(p, q);
    if (faces(a, p, u) && faces(b, q, scale(u, -1)) && wood.has(at, low, high))
      best = { thickness, at, between: [a.of, b.of] };
  }
  return best;
}

/** Every pair of edges between which a part's wood is thinner than a limit once everything is cut, exactly for lines and arcs.
 * Limits: points, which get thinner until they end, are no walls; relief of corners is not looked at. */
export function thinWalls(part: Part, limit: Mm): Wall[] {
  const wood = woodOf(part);
  const banks = [...wood.banks].sort((a, b) => a.box.minX - b.box.minX);
  return banks.flatMap((a, i) => {
    const walls: Wall[] = [];
    for (let k = i + 1; k < banks.length && banks[k]!.box.minX < a.box.maxX + limit; k++) {
      const b = banks[k]!;
      if (b.box.minY >= a.box.maxY + limit || a.box.minY >= b.box.maxY + limit) continue;
      const wall = wallBetween(a, b, limit, wood);
      if (wall) walls.push(wall);
    }
    return walls;
  });
}

const mm = (value: Mm): string => `${Number(value.toFixed(2))} mm`;

/** Wood that stays thinner than a limit between openings, pockets, holes and the outline, at its thinnest. */
export function thinWall(part: Part, limit: Mm): Finding[] {
  const [first, ...more] = thinWalls(part, limit);
  if (!first) return [];
  const wall = more.reduce((a, b) => (b.thickness < a.thickness ? b : a), first);
  const [one, other] = wall.between;
  const { x, y } = wall.at;
  const sides = one === other ? `two sides of ${one.replace(/^its/, 'its own')}` : `${one} and ${other}`;
  const message = `${part.id} keeps a wall of ${mm(wall.thickness)} between ${sides} at (${mm(x)}, ${mm(y)}); allowed: least.wall, ${mm(limit)}, or more`;
  const place = { part: part.id, at: wall.at };
  return [{ level: 'warn', rule: 'thin-wall', where: part.id, message, value: wall.thickness, limit, place }];
}
