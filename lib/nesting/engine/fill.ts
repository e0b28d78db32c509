import { put, type Search } from './search.js';
import { slide } from './slide.js';

/** Heights from which a shape is slid to the left, for one pose. */
const TRIALS = 24;

interface Found {
  pose: number;
  x: number;
  y: number;
  end: number;
}

/** Slides a shape from the right as far left as it goes at a height; kept if it ends further left than at the best so far, or lower. */
function offer(s: Search, b: number, best: Found, pose: number, y: number): void {
  const bay = s.bays[b]!;
  const width = s.tables.width[pose]!;
  if (y < bay.y - s.touch || y + s.tables.height[pose]! > bay.y + bay.height + s.touch) return;
  const limit = Math.min(bay.x + bay.width, best.end) + s.touch - width;
  if (limit < bay.x) return;
  const x = slide(s, pose, b, 'x', y, bay.x, limit);
  if (x > limit || (x + width > best.end - s.touch && y >= best.y)) return;
  best.pose = pose;
  best.x = x;
  best.y = y;
  best.end = x + width;
}

/** A height level with shape j: above it, below it, its own, or in the middle of one of its openings. */
function levelWith(s: Search, pose: number, j: number): number {
  const height = s.tables.height[pose]!;
  const { openings } = s.tables.poses[s.pose[j]!]!;
  const pick = Math.floor(s.random() * (3 + openings.length));
  if (pick >= 3) return s.y[j]! + openings[pick - 3]!.y - height / 2;
  return pick === 0 ? s.top[j]! : pick === 1 ? s.y[j]! - height : s.y[j]!;
}

/** Offers a pose at the bay's edges and level with what lies there, no height twice. */
function offerAll(s: Search, b: number, best: Found, pose: number): void {
  const bay = s.bays[b]!;
  const room = bay.height - s.tables.height[pose]!;
  const many = s.filled[b]!;
  const levels = [bay.y, bay.y + room];
  for (let k = 0; k < TRIALS; k++) {
    // every other time one of the last few laid, next to which most places are
    const pick = k & 1 ? many - 1 - Math.floor(s.random() * Math.min(many, 12)) : Math.floor(s.random() * many);
    if (many > 0 && k % 8 !== 7) levels.push(levelWith(s, pose, s.members[b * s.count + pick]!));
    else levels.push(bay.y + s.random() * room);
  }
  levels.forEach((y, k) => {
    for (let i = 0; i < k; i++) if (Math.abs(levels[i]! - y) <= s.touch) return;
    offer(s, b, best, pose, y);
  });
}

/** Slides a found place down and left in turn. */
function settle(s: Search, b: number, best: Found): void {
  const { pose } = best;
  const bay = s.bays[b]!;
  for (let round = 0; round < 2; round++) {
    best.y = slideBack(s, b, pose, best, 'y', bay.y);
    best.x = slideBack(s, b, pose, best, 'x', bay.x);
  }
}

/** How far a shape slides back from a free place before it meets another: halving steps. */
function slideBack(s: Search, b: number, pose: number, at: Found, axis: 'x' | 'y', low: number): number {
  const across = axis === 'x' ? at.y : at.x;
  let free = at[axis];
  let step = (axis === 'x' ? s.tables.width[pose]! : s.tables.height[pose]!) / 2;
  for (let k = 0; k < 8; k++, step /= 2) {
    const from = Math.max(low, free - step);
    free = Math.min(free, slide(s, pose, b, axis, across, from, free));
  }
  return free;
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
