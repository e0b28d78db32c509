import { clash } from './clash.js';
import type { Random } from './random.js';
import { overlapList, type Snapshot, restore, separate, snapshot, store, type Tools } from './separate.js';
import { put, type Search } from './search.js';
import { placer } from './place.js';

/** A layout on a strip: how long it is and where all lies. */
export interface StripBest {
  length: number;
  readonly at: Snapshot;
}

export interface StripControl {
  /** 0 to 1: how much of the effort is spent */
  readonly spent: () => number;
  readonly better?: (length: number) => void;
}

const EXPLORE = 0.8;

/** First layout: largest first, each as far left as it is found to go. */
export function fillStrip(s: Search): number {
  const { tables, posesFrom, kind } = s;
  const bay = s.bays[0]!;
  const order = Array.from(kind.keys()).sort((a, b) => hull(s, b) - hull(s, a) || a - b);
  bay.width = order.reduce((sum, i) => sum + Math.max(tables.width[posesFrom[kind[i]!]!]!, tables.height[posesFrom[kind[i]!]!]!), 1);
  let used = 0;
  for (const i of order) {
    let bx = Infinity;
    let by = 0;
    let bp = 0;
    for (let p = posesFrom[kind[i]!]!; p < posesFrom[kind[i]! + 1]!; p++) {
      const room = bay.height - tables.height[p]!;
      if (room < 0) continue;
      for (let k = 0; k < 300; k++) {
        const far = Math.min(bx + tables.width[bp]! - tables.width[p]!, used);
        if (far < 0) break;
        const x = k === 0 ? far : s.random() * far;
        const y = k === 0 ? 0 : s.random() < 0.2 ? (s.random() < 0.5 ? 0 : room) : s.random() * room;
        if (x + tables.width[p]! >= bx + tables.width[bp]! || clash(s, i, p, x, y, 0, 0) > 0) continue;
        bx = x;
        by = y;
        bp = p;
      }
    }
    if (bx === Infinity) {
      bp = posesFrom[kind[i]!]!;
      while (tables.height[bp]! > bay.height) bp++;
      bx = used;
      by = 0;
    }
    put(s, i, bp, bx, by, 0);
    used = Math.max(used, s.right[i]!);
  }
  bay.width = used;
  return used;
}

const hull = (s: Search, i: number): number => s.tables.poses[s.posesFrom[s.kind[i]!]!]!.hullArea;

/** Makes the strip shorter: what lies right of a line moves left by as much, and nothing sticks out. */
function shorten(s: Search, length: number, random: Random): void {
  const bay = s.bays[0]!;
  const by = bay.width - length;
  const line = random() * bay.width;
  bay.width = length;
  for (let i = 0; i < s.movable; i++) {
    const p = s.pose[i]!;
    const w = s.tables.width[p]!;
    const x = s.x[i]! + w / 2 > line ? s.x[i]! - by : s.x[i]!;
    put(s, i, p, Math.max(0, Math.min(x, length - w)), s.y[i]!, 0);
  }
}

function usedLength(s: Search): number {
  let used = 0;
  for (let i = 0; i < s.movable; i++) used = Math.max(used, s.right[i]!);
  return used;
}

/** Swaps two large shapes of different kinds. */
function swapLarge(s: Search, random: Random): void {
  const n = s.movable;
  const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => hull(s, b) - hull(s, a) || a - b);
  const total = order.reduce((sum, i) => sum + hull(s, i), 0);
  let sum = 0;
  const large = order.filter(i => { sum += hull(s, i); return sum - hull(s, i) < 0.75 * total; });
  const a = large[Math.floor(random() * large.length)]!;
  const others = large.filter(i => s.kind[i] !== s.kind[a]);
  const b = (others.length > 0 ? others : order.filter(i => i !== a))[Math.floor(random() * (others.length || n - 1))];
  if (b === undefined) return;
  const bay = s.bays[0]!;
  const center = (i: number): [number, number] => [(s.x[i]! + s.right[i]!) / 2, (s.y[i]! + s.top[i]!) / 2];
  const ca = center(a);
  const cb = center(b);
  const set = (i: number, [x, y]: [number, number]): void => {
    const from = s.posesFrom[s.kind[i]!]!;
    const p = from + Math.floor(random() * (s.posesFrom[s.kind[i]! + 1]! - from));
    const q = s.tables.height[p]! > bay.height || s.tables.width[p]! > bay.width ? s.pose[i]! : p;
    const w = s.tables.width[q]!;
    const h = s.tables.height[q]!;
    put(s, i, q, Math.max(0, Math.min(x - w / 2, bay.width - w)), Math.max(0, Math.min(y - h / 2, bay.height - h)), 0);
  };
  set(a, cb);
  set(b, ca);
}

/** Packs a strip: shortens, separates, and where that fails disturbs and tries again; at last presses together in ever smaller steps. */
export function packStrip(s: Search, control: StripControl): StripBest {
  const t: Tools = { overlaps: overlapList(s), placer: placer(), order: new Int32Array(s.count), best: snapshot(s) };
  const best: StripBest = { length: fillStrip(s), at: snapshot(s) };
  store(s, best.at, 0);
  control.better?.(best.length);
  const trials = { anywhere: 24, near: 16, corners: 16 };
  const explore = { trials, patience: 100, strikes: 3, going: () => control.spent() < EXPLORE };
  let step = 0.02;
  const pool: Snapshot[] = [];
  const take = (): void => {
    best.length = usedLength(s);
    s.bays[0]!.width = best.length;
    store(s, best.at, 0);
    control.better?.(best.length);
  };
  shorten(s, best.length * (1 - step), s.random);
  while (control.spent() < EXPLORE) {
    const target = s.bays[0]!.width;
    if (separate(s, t, explore)) {
      take();
      pool.length = 0;
      shorten(s, best.length * (1 - step), s.random);
      continue;
    }
    const kept = snapshot(s);
    store(s, kept, t.best.loss);
    if (step > 0.001) {
      step = Math.max(0.001, step / 2);
      restore(s, best.at);
      s.bays[0]!.width = best.length;
      shorten(s, best.length * (1 - step), s.random);
      pool.length = 0;
      continue;
    }
    pool.push(kept);
    pool.sort((a, b) => a.loss - b.loss);
    if (pool.length > 20) pool.pop();
    const r = Math.min(0.999, Math.abs(gauss(s.random)) * 0.25);
    restore(s, pool[Math.floor(r * pool.length)]!);
    s.bays[0]!.width = target;
    swapLarge(s, s.random);
  }
  const press = { trials, patience: 50, strikes: 2, going: () => control.spent() < 1 };
  while (control.spent() < 1) {
    const share = (control.spent() - EXPLORE) / (1 - EXPLORE);
    const step = 0.0005 * (1 - share) + 0.00001;
    restore(s, best.at);
    s.bays[0]!.width = best.length;
    shorten(s, best.length * (1 - step), s.random);
    if (separate(s, t, press)) take();
  }
  restore(s, best.at);
  s.bays[0]!.width = best.length;
  return best;
}

function gauss(random: Random): number {
  const u = Math.max(1e-12, random());
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random());
}
