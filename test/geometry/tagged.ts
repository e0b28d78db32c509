import { type Outline, pointOn, type Region, type Segment, segments } from '../../lib/geometry/index.js';

/** An edge as a set of points, with its tag. */
export interface Carrier {
  readonly segment: Segment;
  readonly mate: string | undefined;
}

const NAMES = [undefined, undefined, 'seam', 'lap'];

/** A region with about half its edges tagged, one of two tags. */
export const taggedAtRandom = (random: () => number, region: Region): Region => {
  const tagged = (o: Outline): Outline =>
    o.map(v => {
      const mate = NAMES[Math.floor(random() * NAMES.length)];
      return mate === undefined ? v : { ...v, mate };
    });
  return { outer: tagged(region.outer), openings: region.openings.map(tagged) };
};

/** All edges of a region. */
export const carriersOf = (region: Region): Carrier[] =>
  [region.outer, ...region.openings].flatMap(o => segments(o).map((segment, i) => ({ segment, mate: o[i]!.mate })));

/** How far a point lies off the line or circle of an edge moved to its right by `by`; on which side of it does not matter here. */
const off = ({ segment: s }: Carrier, x: number, y: number): number => {
  if (s.kind === 'arc') return Math.abs(Math.hypot(x - s.center.x, y - s.center.y) - s.radius);
  const dx = s.to.x - s.from.x;
  const dy = s.to.y - s.from.y;
  return Math.abs(dx * (y - s.from.y) - dy * (x - s.from.x)) / Math.hypot(dx, dy);
};

/** An edge moved to its right; of an arc that vanishes in doing so, nothing: its radius is no number. */
export function moved({ segment: s, mate }: Carrier, by: number): Carrier {
  if (s.kind === 'arc') {
    const radius = s.radius + Math.sign(s.sweep) * by;
    return { segment: { ...s, radius: radius > 0 ? radius : Number.NaN }, mate };
  }
  const length = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
  const x = ((s.to.y - s.from.y) * by) / length;
  const y = ((s.from.x - s.to.x) * by) / length;
  const at = (p: { readonly x: number; readonly y: number }) => ({ x: p.x + x, y: p.y + y });
  return { segment: { kind: 'line', from: at(s.from), to: at(s.to) }, mate };
}

/** Whether a point on the line or circle of an edge lies between its ends: by its box along a line, by the angle on a circle. */
function between({ segment: s }: Carrier, x: number, y: number): boolean {
  if (s.kind === 'arc') {
    const from = Math.atan2(y - s.center.y, x - s.center.x) - s.start;
    const turn = 2 * Math.PI;
    const along = (((s.sweep > 0 ? from : -from) % turn) + turn) % turn;
    return along <= Math.abs(s.sweep);
  }
  const dx = s.to.x - s.from.x;
  const dy = s.to.y - s.from.y;
  const along = (dx * (x - s.from.x) + dy * (y - s.from.y)) / (dx * dx + dy * dy);
  return along >= 0 && along <= 1;
}

const NEAR = 1e-6;
const SHARES = [0.3, 0.5, 0.7];

/** Edges whose tag is not that of an edge they lie on: a tagged one must lie on one of its tag, one without on none that has a tag. Edges too
 * short to tell are left out. */
export function strays(outlines: readonly Outline[], carriers: readonly Carrier[]): string[] {
  return outlines.flatMap(o =>
    segments(o).flatMap((s, i) => {
      if (Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) < 1e-3) return [];
      const mate = o[i]!.mate;
      const points = SHARES.map(share => pointOn(s, share));
      const under = carriers.filter(c => points.every(p => off(c, p.x, p.y) < NEAR && between(c, p.x, p.y)));
      const right =
        mate === undefined
          ? under.every(c => c.mate === undefined)
          : points.every(p => carriers.some(c => c.mate === mate && off(c, p.x, p.y) < NEAR));
      return right ? [] : [`${mate} from ${s.from.x} ${s.from.y} to ${s.to.x} ${s.to.y}`];
    }),
  );
}
