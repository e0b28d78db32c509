import { footAt } from '../../parts/leg.js';
import type { Mm } from '../../units/length.js';
import { type FrameSizes, paneRadius } from './sizes.js';

/** A pane: all round, or with a round top of a radius over straight or open sides. Lengths mm. */
export interface Pane {
  readonly radius: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** How far below the centre the opening's ends lie, and how wide it is there, at a distance from the centre: chord and sagitta, Machinery's
 * Handbook, "segments of circles"; with legs, down them to their feet. */
function endsAt(s: FrameSizes, radius: Mm): { readonly y: Mm; readonly width: Mm } {
  const [sin, cos] = [Math.sin(s.sweep / 2), Math.cos(s.sweep / 2)];
  const down = s.legs > 0 ? footAt({ inner: s.inner, outer: s.outer, arch: s.sweep, height: s.legs }, radius) : 0;
  return { y: radius * cos - down * sin, width: 2 * (radius * sin + down * cos) };
}

/** What lies in a rebate; of a full ring 2 (inner + width) - fit wide and high. */
export function paneOf(s: FrameSizes): Pane {
  const radius = paneRadius(s);
  if (s.full) return { radius, width: 2 * radius, height: 2 * radius };
  const ends = endsAt(s, radius);
  const width = s.sweep >= Math.PI ? 2 * radius : Math.max(ends.width, 2 * radius * Math.sin(s.sweep / 2));
  return { radius, width, height: radius - ends.y };
}

/** The frame over all: what it takes of a wall or a door. */
export function overall(s: FrameSizes): { readonly width: Mm; readonly height: Mm } {
  if (s.full) return { width: 2 * s.outer, height: 2 * s.outer };
  const [out, inn] = [endsAt(s, s.outer), endsAt(s, s.inner)];
  const width = s.sweep >= Math.PI ? 2 * s.outer : Math.max(out.width, 2 * s.outer * Math.sin(s.sweep / 2));
  return { width, height: s.outer - Math.min(out.y, inn.y) };
}

/** The opening over all. */
export function opening(s: FrameSizes): { readonly width: Mm; readonly height: Mm } {
  if (s.full) return { width: 2 * s.inner, height: 2 * s.inner };
  const ends = endsAt(s, s.inner);
  const width = s.sweep >= Math.PI ? 2 * s.inner : Math.max(ends.width, 2 * s.inner * Math.sin(s.sweep / 2));
  return { width, height: s.inner - ends.y };
}
