import type { Part, PartKind } from '../parts/part.js';
import type { Mm } from '../units/length.js';

/** Parts that a ring is made of as many of as one likes. */
const PIECES: Partial<Record<PartKind, string>> = {
  felloe: 'felloes',
  'trim-segment': 'trim segments',
  'face-segment': 'face segments',
};

const MOST = 24;

/** How many more of a ring's pieces it takes until one is small enough, in words; undefined for other parts, or where no number helps. A sector of
 * 360°/n is 2 R sin(180°/n) long and R - r cos(180°/n) high; joints at its ends come on top.
 * @param part the piece, the ring's centre at its frame's origin   @param fits whether a box of a length and a height does */
export function shorterPieces(part: Part, fits: (length: Mm, height: Mm) => boolean): string | undefined {
  const name = PIECES[part.kind];
  if (name === undefined) return undefined;
  const corners = part.region.outer;
  const radii = corners.map(v => Math.hypot(v.x, v.y));
  const [inner, outer] = [Math.min(...radii), Math.max(...radii)];
  const turns = corners.map(v => Math.atan2(v.x, v.y));
  const now = Math.round((2 * Math.PI) / (Math.max(...turns) - Math.min(...turns)));
  for (let n = Math.max(3, now + 1); n <= MOST; n += 1) {
    const half = Math.PI / n;
    if (fits(2 * outer * Math.sin(half), outer - inner * Math.cos(half))) return `${n} ${name} to the ring`;
  }
  return undefined;
}
