import { signedArea } from '../geometry/measure.js';
import { type Vertex, vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Joint } from './ends.js';
import { type End, leaving, lineFrom, type Piece } from './piece.js';

/** The working net: at which joint each end of a piece is, and what meets there. */
export interface Net {
  readonly pieces: readonly Piece[];
  readonly joints: readonly Joint[];
  /** joint of each piece's start and end */
  readonly jointOf: ReadonlyMap<number, readonly [number, number]>;
}

export function netOf(pieces: readonly Piece[], joints: readonly Joint[]): Net {
  const jointOf = new Map<number, [number, number]>();
  joints.forEach((joint, j) => {
    for (const end of joint.ends) {
      const both = jointOf.get(end.piece) ?? [j, j];
      both[end.last ? 1 : 0] = j;
      jointOf.set(end.piece, both);
    }
  });
  return { pieces, joints, jointOf };
}

/** Both ends of a piece. */
export const bothEnds = (piece: number): End[] => [
  { piece, last: false },
  { piece, last: true },
];

/** A way through the net: each piece with the end it is entered by. */
export type Route = readonly End[];

const FULL = 2 * Math.PI;

/** The end to leave a joint by: the first one clockwise from where the way came in, so that the face to the left is followed. */
function nextEnd(net: Net, joint: number, from: End, isFree: (piece: number) => boolean): End | undefined {
  const back = leaving(net.pieces[from.piece]!, from.last);
  const options = net.joints[joint]!.ends.filter(e => isFree(e.piece));
  if (options.length <= 1) return options[0];
  const clockwise = (e: End): number => {
    const turn = (((back.direction - leaving(net.pieces[e.piece]!, e.last).direction) % FULL) + FULL) % FULL;
    return turn < 1e-9 ? FULL : turn;
  };
  const bend = (e: End): number => leaving(net.pieces[e.piece]!, e.last).curvature;
  return options.sort((a, b) => {
    const d = clockwise(a) - clockwise(b);
    return Math.abs(d) > 1e-9 ? d : bend(b) - bend(a);
  })[0];
}

/** Follows free pieces from one of them until back at its start; undefined when the way ends. */
function follow(net: Net, start: End, free: ReadonlySet<number>): Route | undefined {
  const route: End[] = [];
  const taken = new Set<number>();
  const isFree = (piece: number): boolean => free.has(piece) && !taken.has(piece);
  const home = net.jointOf.get(start.piece)![start.last ? 1 : 0];
  for (let at: End | undefined = start; at; ) {
    route.push(at);
    taken.add(at.piece);
    const joint: number = net.jointOf.get(at.piece)![at.last ? 0 : 1];
    if (joint === home) return route;
    at = nextEnd(net, joint, { piece: at.piece, last: !at.last }, isFree);
  }
  return undefined;
}

/** The pieces of a route as one run of vertices, each joint at its own place. Closed routes end where they start. */
export function run(net: Net, route: Route): Vertex[] {
  const place = (e: End, entering: boolean): Point =>
    net.joints[net.jointOf.get(e.piece)![e.last === entering ? 1 : 0]]!.at;
  const vertices = route.flatMap(e => {
    const line = lineFrom(net.pieces[e.piece]!, e.last);
    return [vertex(place(e, true), line[0]!.bulge), ...line.slice(1, -1)];
  });
  return [...vertices, vertex(place(route.at(-1)!, false))];
}

/** Closed routes first: with two ways round, the one that has its face to the left (or the lesser, thin ones apart). */
export function loops(net: Net, free: Set<number>): Route[] {
  const found: Route[] = [];
  for (const piece of [...free]) {
    if (!free.has(piece)) continue;
    const ways = [false, true].map(last => follow(net, { piece, last }, free)).filter(r => r !== undefined);
    const best = ways.find(r => signedArea(run(net, r).slice(0, -1)) > 0) ?? ways[0];
    // a single line whose ends were brought together is no outline
    if (!best || run(net, best).length < 3) continue;
    for (const e of best) free.delete(e.piece);
    found.push(best);
  }
  return found;
}

/** Takes away pieces that lead nowhere until every joint left has two or more. */
export function prune(net: Net, free: Set<number>): void {
  const degree = net.joints.map(j => j.ends.filter(e => free.has(e.piece)).length);
  const queue = [...degree.keys()].filter(j => degree[j] === 1);
  for (let j = queue.pop(); j !== undefined; j = queue.pop()) {
    const end = net.joints[j]!.ends.find(e => free.has(e.piece));
    if (degree[j] !== 1 || !end) continue;
    free.delete(end.piece);
    for (const k of net.jointOf.get(end.piece)!) {
      degree[k] = degree[k]! - 1;
      if (degree[k] === 1) queue.push(k);
    }
  }
}

/** What is left over, strung together from ends with no way on, or from anywhere. */
export function strays(net: Net, left: Set<number>): Route[] {
  const found: Route[] = [];
  const walk = (start: End): void => {
    const route: End[] = [];
    for (let at: End | undefined = start; at; ) {
      route.push(at);
      left.delete(at.piece);
      const options: End[] = net.joints[net.jointOf.get(at.piece)![at.last ? 0 : 1]]!.ends.filter(e =>
        left.has(e.piece),
      );
      at = options.length === 1 ? options[0] : undefined;
    }
    found.push(route);
  };
  const lone = (joint: Joint): End | undefined => {
    const ends = joint.ends.filter(e => left.has(e.piece));
    return ends.length === 1 ? ends[0] : undefined;
  };
  for (const joint of net.joints) {
    const end = lone(joint);
    if (end) walk(end);
  }
  for (const piece of [...left]) if (left.has(piece)) walk({ piece, last: false });
  return found;
}
