import type { Mm } from '../units/length.js';
import type { Seamed, SeamPoint } from './seam-joint.js';

/** A run whose ends are nearer than this is closed, mm. */
const CLOSED: Mm = 1e-6;

function fromSegment(p: SeamPoint, a: SeamPoint, b: SeamPoint): Mm {
  const du = b.u - a.u;
  const dv = b.v - a.v;
  const length = du * du + dv * dv;
  const t = length > 0 ? Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.v - a.v) * dv) / length)) : 0;
  return Math.hypot(p.u - a.u - t * du, p.v - a.v - t * dv);
}

/** Whether a run is closed round a point, by its crossings of a ray. */
function within(line: readonly SeamPoint[], p: SeamPoint): boolean {
  const [first, last] = [line[0]!, line.at(-1)!];
  if (Math.hypot(first.u - last.u, first.v - last.v) > CLOSED) return false;
  const crossings = line.slice(1).filter((b, i) => {
    const a = line[i]!;
    return a.v > p.v !== b.v > p.v && p.u < a.u + ((p.v - a.v) / (b.v - a.v)) * (b.u - a.u);
  });
  return crossings.length % 2 === 1;
}

/** How far a point lies from the nearest edge of a seam's joint, mm; 0 inside a slot, a hole or a key. */
export const seamClear = ({ lines }: Pick<Seamed, 'lines'>, p: SeamPoint): Mm =>
  Math.min(
    ...lines.flatMap(line => (within(line, p) ? [0] : line.slice(1).map((b, i) => fromSegment(p, line[i]!, b)))),
  );

/** Whether a bore through the felloes stands clear of a seam's joint. @param p its middle   @param room from there to any edge, mm */
export const boreClear = (joined: Pick<Seamed, 'reach' | 'lines'>, p: SeamPoint, room: Mm): boolean =>
  Math.abs(p.v) > joined.reach + room || seamClear(joined, p) >= room;
