import { isFree } from './clash.js';
import { put, type Search } from './search.js';
import { HEAD, makePair } from './tables.js';

/** Places tried for one shape and pose while a bay is filled. */
const TRIALS = 160;

interface Found {
  pose: number;
  x: number;
  y: number;
  end: number;
}

/** Keeps a place if the shape ends further left there than at the best so far, or lower at the same end, and the place is free. */
function offer(s: Search, b: number, best: Found, pose: number, px: number, py: number): void {
  const bay = s.bays[b]!;
  const x = Math.max(bay.x, px);
  const y = Math.max(bay.y, py);
  const end = x + s.tables.width[pose]!;
  if (end > bay.x + bay.width + s.touch || y + s.tables.height[pose]! > bay.y + bay.height + s.touch) return;
  if (end > best.end + s.touch || (end > best.end - s.touch && y >= best.y)) return;
  if (!isFree(s, pose, x, y, b)) return;
  best.pose = pose;
  best.x = x;
  best.y = y;
  best.end = end;
}

/** A corner of a polygon the shape may not lie in beside shape j. */
function offerCorner(s: Search, b: number, best: Found, pose: number, j: number): void {
  const { tables } = s;
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
  const vx = (data[e + 2]! * data[f + 1]! - data[f + 2]! * data[e + 1]!) / det;
  const vy = (data[e]! * data[f + 2]! - data[f]! * data[e + 2]!) / det;
  offer(s, b, best, pose, s.x[j]! - vx, s.y[j]! - vy);
}

/** The middle of an opening of shape j. */
function offerOpening(s: Search, b: number, best: Found, pose: number, j: number): void {
  const { openings } = s.tables.poses[s.pose[j]!]!;
  const w = s.tables.width[pose]!;
  const h = s.tables.height[pose]!;
  for (const o of openings) {
    if (o.width < w || o.height < h) return;
    for (const dy of [0, -(o.height - h) / 4, (o.height - h) / 4])
      offer(s, b, best, pose, s.x[j]! + o.x - w / 2, s.y[j]! + o.y - h / 2 + dy);
  }
}

function offerAll(s: Search, b: number, best: Found, pose: number): void {
  const bay = s.bays[b]!;
  const roomX = bay.width - s.tables.width[pose]!;
  const roomY = bay.height - s.tables.height[pose]!;
  offer(s, b, best, pose, bay.x, bay.y);
  offer(s, b, best, pose, bay.x, bay.y + roomY);
  const from = b * s.count;
  const many = s.filled[b]!;
  for (let k = 0; k < many; k++) offerOpening(s, b, best, pose, s.members[from + k]!);
  for (let k = 0; k < TRIALS; k++) {
    // every other time one of the last few laid, next to which most places are
    const last = Math.min(many, 12);
    const pick = k & 1 ? many - 1 - Math.floor(s.random() * last) : Math.floor(s.random() * many);
    if (many > 0 && k % 4 !== 3) offerCorner(s, b, best, pose, s.members[from + pick]!);
    else
      offer(
        s,
        b,
        best,
        pose,
        bay.x + s.random() * Math.min(roomX, Math.max(0, best.end - bay.x)),
        bay.y + s.random() * roomY,
      );
  }
}

/** Moves a found place left and down as far as halving steps find it free. */
function settle(s: Search, b: number, best: Found): void {
  for (let round = 0; round < 2; round++)
    for (const down of [false, true]) {
      let step = (down ? s.tables.height[best.pose]! : s.tables.width[best.pose]!) / 2;
      for (let k = 0; k < 14; k++) {
        const before = down ? best.y : best.x;
        const x = down ? best.x : best.x - step;
        const y = down ? best.y - step : best.y;
        const bay = s.bays[b]!;
        if (x >= bay.x && y >= bay.y && isFree(s, best.pose, x, y, b)) {
          best.x = x;
          best.y = y;
        }
        if ((down ? best.y : best.x) === before) step /= 2;
      }
    }
}

/** Lays a shape in a bay, as far left as it is found to go. @returns whether there was a place */
export function layInBay(s: Search, i: number, b: number): boolean {
  const best: Found = { pose: -1, x: 0, y: 0, end: Infinity };
  const kind = s.kind[i]!;
  const stock = s.bays[b]!.stock;
  for (let pose = s.posesFrom[kind]!; pose < s.posesFrom[kind + 1]!; pose++)
    if (s.allowed[pose * s.stocks + stock] === 1) offerAll(s, b, best, pose);
  if (best.pose < 0) return false;
  settle(s, b, best);
  put(s, i, best.pose, best.x, best.y, b);
  return true;
}
