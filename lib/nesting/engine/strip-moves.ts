import { put, type Search } from './search.js';

const hullArea = (s: Search, i: number): number => s.tables.poses[s.posesFrom[s.kind[i]!]!]!.hullArea;

/** Movable shapes, largest convex hull first. */
export const largestFirst = (s: Search): number[] =>
  Array.from({ length: s.movable }, (_, i) => i).sort((a, b) => hullArea(s, b) - hullArea(s, a) || a - b);

const within = (v: number, low: number, high: number): number => Math.max(low, Math.min(v, high));

/** How far right the shapes reach in the first bay. */
export function usedLength(s: Search): number {
  let used = 0;
  for (let i = 0; i < s.movable; i++) used = Math.max(used, s.right[i]! - s.bays[0]!.x);
  return used;
}

/** A pose of shape i no wider than a length; its own if that will do, -1 if none will. */
function poseWithin(s: Search, i: number, length: number): number {
  const own = s.pose[i]!;
  if (s.tables.width[own]! <= length) return own;
  const kind = s.kind[i]!;
  const stock = s.bays[0]!.stock;
  for (let p = s.posesFrom[kind]!; p < s.posesFrom[kind + 1]!; p++)
    if (s.tables.width[p]! <= length && s.allowed[p * s.stocks + stock] === 1) return p;
  return -1;
}

/** Makes the first bay shorter: what lies right of a line moves left by as much, and nothing sticks out.
 * @returns false, with nothing changed, if a shape cannot lie in so short a bay */
export function shorten(s: Search, length: number): boolean {
  const bay = s.bays[0]!;
  for (let i = 0; i < s.movable; i++) if (poseWithin(s, i, length) < 0) return false;
  const by = bay.width - length;
  const line = bay.x + s.random() * bay.width;
  bay.width = length;
  for (let i = 0; i < s.movable; i++) {
    const p = poseWithin(s, i, length);
    const x = (s.x[i]! + s.right[i]!) / 2 > line ? s.x[i]! - by : s.x[i]!;
    const y = within(s.y[i]!, bay.y, bay.y + bay.height - s.tables.height[p]!);
    put(s, i, p, within(x, bay.x, bay.x + length - s.tables.width[p]!), y, 0);
  }
  return true;
}

/** The large shapes that make up three quarters of all: swapping small ones changes little. */
function largeOnes(s: Search): number[] {
  const order = largestFirst(s);
  const total = order.reduce((sum, i) => sum + hullArea(s, i), 0);
  let before = 0;
  return order.filter(i => {
    before += hullArea(s, i);
    return before - hullArea(s, i) < 0.75 * total;
  });
}

/** Puts a shape with its box's middle at a place, any way round that fits. */
function center(s: Search, i: number, x: number, y: number): void {
  const bay = s.bays[0]!;
  const from = s.posesFrom[s.kind[i]!]!;
  const any = from + Math.floor(s.random() * (s.posesFrom[s.kind[i]! + 1]! - from));
  const fits =
    s.tables.height[any]! <= bay.height &&
    s.tables.width[any]! <= bay.width &&
    s.allowed[any * s.stocks + bay.stock] === 1;
  const pose = fits ? any : s.pose[i]!;
  const w = s.tables.width[pose]!;
  const h = s.tables.height[pose]!;
  put(s, i, pose, within(x - w / 2, bay.x, bay.x + bay.width - w), within(y - h / 2, bay.y, bay.y + bay.height - h), 0);
}

/** Swaps two large shapes of different kinds: a jolt that leads out of a dead end. */
export function swapLarge(s: Search): void {
  const large = largeOnes(s);
  const a = large[Math.floor(s.random() * large.length)]!;
  const different = large.filter(i => s.kind[i] !== s.kind[a]);
  const others = different.length > 0 ? different : large.filter(i => i !== a);
  if (others.length === 0) return;
  const b = others[Math.floor(s.random() * others.length)]!;
  const [ax, ay] = [(s.x[a]! + s.right[a]!) / 2, (s.y[a]! + s.top[a]!) / 2];
  const [bx, by] = [(s.x[b]! + s.right[b]!) / 2, (s.y[b]! + s.top[b]!) / 2];
  center(s, a, bx, by);
  center(s, b, ax, ay);
}
