import { clash } from './clash.js';
import { type Contacts, contactList } from './contacts.js';
import { lookAround, pushOut } from './polish.js';
import type { Bay, Search } from './search.js';
import { copySpot, keepBest, noSpot, type Spot } from './spot.js';
import { HEAD, makePair } from './tables.js';

/** How many places are looked at for one move. */
export interface Trials {
  readonly anywhere: number;
  readonly near: number;
  readonly corners: number;
}

export interface Placer {
  readonly best: readonly Spot[];
  readonly spot: Spot;
  readonly contacts: Contacts;
}

export const placer = (): Placer => ({ best: [noSpot(), noSpot(), noSpot()], spot: noSpot(), contacts: contactList() });

function consider(s: Search, p: Placer, i: number, pose: number, bay: number, x: number, y: number): void {
  const bound = p.best[p.best.length - 1]!.cost;
  if (bound <= 0) return;
  const cost = clash(s, i, pose, x, y, bay, bound);
  if (cost < bound) keepBest(p.best, pose, bay, x, y, cost);
}

const anyPose = (s: Search, i: number): number => {
  const kind = s.kind[i]!;
  const from = s.posesFrom[kind]!;
  return from + Math.floor(s.random() * (s.posesFrom[kind + 1]! - from));
};

const mayLie = (s: Search, pose: number, bay: Bay): boolean => s.allowed[pose * s.stocks + bay.stock] === 1;

function considerAnywhere(s: Search, p: Placer, i: number): void {
  const pose = anyPose(s, i);
  const b = s.bays.length === 1 ? 0 : Math.floor(s.random() * s.bays.length);
  const bay = s.bays[b]!;
  if (!mayLie(s, pose, bay)) return;
  const roomX = bay.width - s.tables.width[pose]!;
  const roomY = bay.height - s.tables.height[pose]!;
  if (roomX < 0 || roomY < 0) return;
  consider(s, p, i, pose, b, bay.x + s.random() * roomX, bay.y + s.random() * roomY);
}

const within = (v: number, low: number, high: number): number => Math.max(low, Math.min(v, high));

function considerNear(s: Search, p: Placer, i: number, reach: number): void {
  const b = s.bay[i]!;
  const bay = s.bays[b]!;
  const old = s.pose[i]!;
  const pose = s.random() < 0.7 ? old : anyPose(s, i);
  const { width, height } = s.tables;
  if (!mayLie(s, pose, bay)) return;
  const roomX = bay.width - width[pose]!;
  const roomY = bay.height - height[pose]!;
  if (roomX < 0 || roomY < 0) return;
  const x = s.x[i]! + (width[old]! - width[pose]!) / 2 + (s.random() - 0.5) * reach * width[pose]!;
  const y = s.y[i]! + (height[old]! - height[pose]!) / 2 + (s.random() - 0.5) * reach * height[pose]!;
  consider(s, p, i, pose, b, within(x, bay.x, bay.x + roomX), within(y, bay.y, bay.y + roomY));
}

/** The middle of the largest opening of a shape, with the other in it. @returns whether there is an opening */
function considerOpening(s: Search, p: Placer, i: number, j: number, pose: number): boolean {
  const [opening] = s.tables.poses[s.pose[j]!]!.openings;
  if (!opening || s.tables.width[pose]! > opening.width || s.tables.height[pose]! > opening.height) return false;
  const x = s.x[j]! + opening.x - s.tables.width[pose]! / 2;
  const y = s.y[j]! + opening.y - s.tables.height[pose]! / 2;
  consider(s, p, i, pose, s.bay[j]!, x, y);
  return true;
}

/** A place where a corner of the shape touches a corner of another: a corner of one of the polygons it may not lie in. */
function considerCorner(s: Search, p: Placer, i: number): void {
  const j = Math.floor(s.random() * s.count);
  const b = s.bay[j]!;
  if (j === i || b < 0) return;
  const pose = anyPose(s, i);
  const bay = s.bays[b]!;
  if (!mayLie(s, pose, bay)) return;
  const { tables } = s;
  const hollow = tables.poses[s.pose[j]!]!.openings.length > 0;
  if (hollow && s.random() < 0.25 && considerOpening(s, p, i, j, pose)) return;
  let at = tables.start[pose * tables.count + s.pose[j]!]!;
  if (at < 0) at = makePair(tables, pose, s.pose[j]!);
  const { data } = tables;
  let skip = Math.floor(s.random() * data[at]!);
  for (at++; skip > 0; skip--) at += HEAD + 3 * data[at]!;
  const edges = data[at]!;
  const k = Math.floor(s.random() * edges);
  const e = at + HEAD + 3 * k;
  const f = at + HEAD + 3 * ((k + 1) % edges);
  const det = data[e]! * data[f + 1]! - data[e + 1]! * data[f]!;
  if (Math.abs(det) < 1e-9) return;
  const x = s.x[j]! - (data[e + 2]! * data[f + 1]! - data[f + 2]! * data[e + 1]!) / det;
  const y = s.y[j]! - (data[e]! * data[f + 2]! - data[f]! * data[e + 2]!) / det;
  const farX = bay.x + bay.width - tables.width[pose]!;
  const farY = bay.y + bay.height - tables.height[pose]!;
  if (farX < bay.x || farY < bay.y) return;
  consider(s, p, i, pose, b, within(x, bay.x, farX), within(y, bay.y, farY));
}

/** The cheapest place found for shape i, its present one included; the answer lies in `p.spot`. */
export function findSpot(s: Search, p: Placer, i: number, trials: Trials): Spot {
  const { best, spot } = p;
  const pose = s.pose[i]!;
  for (const b of best) b.cost = Infinity;
  const now = clash(s, i, pose, s.x[i]!, s.y[i]!, s.bay[i]!, Infinity);
  keepBest(best, pose, s.bay[i]!, s.x[i]!, s.y[i]!, now);
  for (let k = 0; k < trials.anywhere; k++) considerAnywhere(s, p, i);
  for (let k = 0; k < trials.corners; k++) considerCorner(s, p, i);
  for (let k = 0; k < trials.near; k++) considerNear(s, p, i, k & 1 ? 1 : 0.25);
  copySpot(spot, best[0]!);
  for (const b of best) {
    if (b.cost === Infinity || spot.cost === 0) break;
    refine(s, p, i, b);
    if (b.cost < spot.cost) copySpot(spot, b);
  }
  return spot;
}

function refine(s: Search, p: Placer, i: number, spot: Spot): void {
  const size = Math.min(s.tables.width[spot.pose]!, s.tables.height[spot.pose]!);
  pushOut(s, p.contacts, i, spot);
  lookAround(s, i, spot, size * 0.1, size * 0.005);
  pushOut(s, p.contacts, i, spot);
}
