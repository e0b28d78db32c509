import type { Point } from '../../geometry/point.js';
import { convexPieces } from './convex-pieces.js';
import { boxOf, hullOf, ringArea, type Shape, shapeArea } from './polygon.js';
import { type Kind, type Pose, posesOf, sameRings } from './poses.js';
import { type Tables, tablesOf } from './tables.js';

/** A kind of stock: a rectangle, less what of it may not be used. */
export interface Stock {
  readonly width: number;
  readonly height: number;
  /** shapes nothing may lie on: what an outline lacks of its box, and defects */
  readonly forbidden: readonly Shape[];
  /** what of its area may be used; the rectangle less the forbidden shapes unless given */
  readonly room?: number;
  /** how many there are; without it as many as are needed */
  readonly count?: number;
  readonly price: number;
}

/** What a search lays out, and on what. */
export interface Problem {
  readonly kinds: readonly Kind[];
  readonly stocks: readonly Stock[];
}

/** A problem with all its poses worked out; searches of one problem share it. */
export interface Prepared {
  readonly problem: Problem;
  readonly tables: Tables;
  /** poses of kind k: posesFrom[k] up to posesFrom[k + 1] */
  readonly posesFrom: Int32Array;
  /** for each kind the first that looks like it in all its poses: itself, or one before it */
  readonly like: readonly number[];
  /** pose * stocks + stock: 1 where it may lie on it and fits */
  readonly allowed: Uint8Array;
  /** how much a kind's overlap counts */
  readonly scale: Float64Array;
  readonly area: Float64Array;
  readonly hullArea: Float64Array;
  /** by kind of stock, poses of what is forbidden and where they lie */
  readonly forbidden: readonly (readonly { readonly pose: number; readonly at: Point }[])[];
  /** usable area of each kind of stock */
  readonly room: readonly number[];
  readonly touch: number;
}

/** Overlaps thinner than this share of the smallest shape's width are touches. */
const TOUCH = 1e-8;

function forbiddenPose(shape: Shape): Pose {
  const box = boxOf(shape.outline);
  const corner = { x: box.minX, y: box.minY };
  const pieces = convexPieces(shape).map(r => r.map(p => ({ x: p.x - corner.x, y: p.y - corner.y })));
  const area = shapeArea(shape);
  const turn = { angle: 0, mirrored: false };
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  return { kind: -1, turn, corner, width, height, pieces, area, hullArea: area, openings: [] };
}

/** Whether two kinds have the same poses, on the same stocks. */
const alike = (a: readonly Pose[], b: readonly Pose[]): boolean =>
  a.length === b.length &&
  a.every((pose, i) => {
    const other = b[i]!;
    const near = 1e-9 * Math.max(pose.width, pose.height);
    return (pose.turn.on?.join() ?? '') === (other.turn.on?.join() ?? '') && sameRings(pose.pieces, other.pieces, near);
  });

function allowedOn(poses: readonly Pose[], stocks: readonly Stock[], touch: number): Uint8Array {
  const allowed = new Uint8Array(poses.length * stocks.length);
  poses.forEach((p, i) => {
    stocks.forEach((stock, k) => {
      const fits = p.width <= stock.width + touch && p.height <= stock.height + touch;
      if (p.kind >= 0 && fits && (p.turn.on?.includes(k) ?? true)) allowed[i * stocks.length + k] = 1;
    });
  });
  return allowed;
}

/** Works out all poses of a problem. */
export function prepare(problem: Problem): Prepared {
  const { kinds, stocks } = problem;
  const each = kinds.map(posesOf);
  const posesFrom = new Int32Array(kinds.length + 1);
  each.forEach((p, k) => {
    posesFrom[k + 1] = posesFrom[k]! + p.length;
  });
  const poses: Pose[] = each.flat();
  // of no poses at all there is nothing that could touch
  const touch = TOUCH * Math.min(1e9, ...poses.map(p => Math.min(p.width, p.height)));
  const forbidden = stocks.map(stock =>
    stock.forbidden.map(shape => {
      const pose = forbiddenPose(shape);
      poses.push(pose);
      return { pose: poses.length - 1, at: pose.corner };
    }),
  );
  const hullArea = Float64Array.from(kinds, k => ringArea(hullOf(k.shape.outline)));
  return {
    problem,
    tables: tablesOf(poses),
    posesFrom,
    like: each.map((mine, k) => each.findIndex((other, i) => i === k || alike(mine, other))),
    allowed: allowedOn(poses, stocks, touch),
    scale: hullArea.map(a => Math.sqrt(Math.sqrt(a))),
    area: Float64Array.from(kinds, k => shapeArea(k.shape)),
    hullArea,
    forbidden,
    room: stocks.map(s => s.room ?? s.width * s.height - s.forbidden.reduce((sum, f) => sum + shapeArea(f), 0)),
    touch,
  };
}
