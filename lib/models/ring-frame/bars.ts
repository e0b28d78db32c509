import { type BarEnd, type BarNotch, notchSpan } from '../../joints/bar-notch.js';
import { spaced } from '../../joints/cross-lap.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Arc } from '../registration.js';
import type { FrameSizes } from './sizes.js';

/** A mullion in the frame: runs along `turn` from +x, its middle line `off` to the left of the ring's centre, so that a bar and its mirror
 * image are one part. */
export interface Bar {
  readonly way: 'upright' | 'level';
  readonly turn: Radians;
  readonly off: Mm;
}

const QUARTER = Math.PI / 2;

/** Every mullion, from the left and from below. */
export function bars({ mullions, inner }: FrameSizes): Bar[] {
  if (!mullions) return [];
  const upright = spaced(mullions.upright, inner).map(
    (x): Bar => ({ way: 'upright', turn: x > 0 ? -QUARTER : QUARTER, off: Math.abs(x) }),
  );
  const level = spaced(mullions.level, inner).map(
    (y): Bar => ({ way: 'level', turn: y < 0 ? Math.PI : 0, off: Math.abs(y) }),
  );
  return [...upright, ...level];
}

/** Middles of the bars that cross one, along it. */
export const crossedAt = ({ mullions, inner }: FrameSizes, { way }: Bar): Mm[] =>
  spaced(way === 'upright' ? (mullions?.level ?? 0) : (mullions?.upright ?? 0), inner);

/** The ring's notches for them. */
export const barNotch = (s: FrameSizes): BarNotch => ({
  inner: s.inner,
  hold: s.hold,
  width: (s.mullions?.width ?? 0) + s.fit.mullion,
});

/** Both ends of every bar. */
export const barEnds = (s: FrameSizes): BarEnd[] =>
  bars(s).flatMap(({ turn, off }) => [
    { turn, off },
    { turn: turn + Math.PI, off: -off },
  ]);

/** The stretches of the ring that notches take up. */
export const notchArcs = (s: FrameSizes): Arc[] => barEnds(s).map(end => notchSpan(barNotch(s), end));
