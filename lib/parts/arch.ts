import type { Mm, Radians } from '../units/length.js';
import { footAt } from './leg.js';

/** A full ring, or an arch symmetric about straight up, with or without legs. Lengths mm. */
export interface Arch {
  readonly inner: Mm;
  readonly outer: Mm;
  /** 2 pi for a full ring */
  readonly sweep: Radians;
  /** height of the legs along the middle of the band; 0 for none */
  readonly legs: Mm;
}

const ROUNDING: Radians = 1e-9;

/** Where a line at a distance from the centre ends: height over the centre, and how far its two ends are apart; down the legs to their feet. */
export function archEnds({ inner, outer, sweep, legs }: Arch, radius: Mm): { readonly height: Mm; readonly apart: Mm } {
  const [sin, cos] = [Math.sin(sweep / 2), Math.cos(sweep / 2)];
  const down = legs > 0 ? footAt({ inner, outer, arch: sweep, height: legs }, radius) : 0;
  return { height: radius * cos - down * sin, apart: 2 * (radius * sin + down * cos) };
}

/** Width and height over all of what lies within a distance from the centre: of a pane, an opening. Chord 2 r sin(sweep / 2) and height
 * r - r cos(sweep / 2). Source: Machinery's Handbook, "segments of circles". */
export function archSize(arch: Arch, radius: Mm): { readonly width: Mm; readonly height: Mm } {
  if (arch.sweep > 2 * Math.PI - ROUNDING) return { width: 2 * radius, height: 2 * radius };
  const { height, apart } = archEnds(arch, radius);
  const chord = 2 * radius * Math.sin(arch.sweep / 2);
  const width = arch.sweep >= Math.PI ? 2 * radius : Math.max(chord, apart);
  return { width, height: radius - height };
}

/** The arch's own width and height: the lower of its edges' ends counts. */
export function archOverall(arch: Arch): { readonly width: Mm; readonly height: Mm } {
  const { width, height } = archSize(arch, arch.outer);
  if (arch.sweep > 2 * Math.PI - ROUNDING) return { width, height };
  return { width, height: Math.max(height, arch.outer - archEnds(arch, arch.inner).height) };
}
