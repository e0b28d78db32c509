import { offset } from '../geometry/offset.js';
import type { Region } from '../geometry/outline.js';
import type { Mm, Radians } from '../units/length.js';
import type { FaceCuts } from './cut-part.js';
import { grainPasses } from './grain-passes.js';
import { CLEARING, type ClearingOptions, type Pass } from './pass.js';
import { ringPasses } from './ring-passes.js';
import { snugPasses } from './snug.js';

function passesIn(centres: readonly Region[], width: Mm, { stepover, run }: ClearingOptions, grain: Radians): Pass[] {
  switch (run) {
    case 'rings':
      return ringPasses(centres, stepover * width, width / 2);
    case 'grain':
      return grainPasses(centres, stepover * width, width / 2, grain);
    default:
      return run satisfies never;
  }
}

/** Passes of the tool's centre that clear an area: all of it but the corners a round cutter cannot get into, and nothing outside it.
 * @param width of the cutter, mm, above 0   @param grain direction of strokes, where these are asked for
 * @returns in the order they are cut; none where the cutter does not fit */
export function clearingPasses(area: Region, width: Mm, options: ClearingOptions, grain: Radians): Pass[] {
  const centres = offset([area], -width / 2);
  return [...snugPasses(area, centres, width / 2), ...passesIn(centres, width, options, grain)];
}

/** A face's cuts with the passes that clear its pockets. @param grain of the part, in its own frame; along x unless given */
export function withPasses(cuts: FaceCuts, width: Mm, options: Partial<ClearingOptions>, grain: Radians = 0): FaceCuts {
  const how = { ...CLEARING, ...options };
  const along = cuts.face === 'front' ? grain : -grain;
  return { ...cuts, pockets: cuts.pockets.map(p => ({ ...p, passes: clearingPasses(p.area, width, how, along) })) };
}
