import { encloses, locate } from '../geometry/locate.js';
import { circle, type Region, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import { volumeDownTo } from './bevel.js';
import type { Drill, Face, Part, Pocket } from './part.js';

const isPocket = (f: Part['features'][number]): f is Pocket => f.kind === 'pocket';
const isDrill = (f: Part['features'][number]): f is Drill => f.kind === 'drill';

/** A pocket's area less the part's openings in it: there is no wood over a bore in a seat. */
function overWood({ region }: Part, { area }: Pocket): Region {
  const open = region.openings.filter(o => locate(area, o[0]!) === 'inside');
  return { outer: area.outer, openings: [...area.openings, ...open] };
}

function pocketVolume(part: Part, pocket: Pocket): number {
  const { face, depth } = pocket;
  const wood = overWood(part, pocket);
  if (face === 'front') return volumeDownTo(part, wood, depth);
  return volumeDownTo(part, wood, part.thickness) - volumeDownTo(part, wood, part.thickness - depth);
}

/** What a hole takes away beyond the pockets it starts or ends in, mm³. */
function holeVolume(part: Part, drill: Drill, pockets: readonly Pocket[]): number {
  const over = (face: Face): Mm =>
    Math.max(0, ...pockets.filter(p => p.face === face && encloses(p.area.outer, drill.at)).map(p => p.depth));
  const { thickness } = part;
  const from = Math.max(over('front'), drill.from === 'back' ? thickness - drill.depth : 0);
  const to = Math.min(thickness - over('back'), drill.from === 'front' ? drill.depth : thickness);
  if (from >= to) return 0;
  const hole = solid(circle(drill.diameter / 2, drill.at));
  return volumeDownTo(part, hole, to) - volumeDownTo(part, hole, from);
}

/** Volume of a part less its pockets and holes, mm³. Pockets of one part do not overlap, nor do they cross an opening's
 * edge; a hole lies in a pocket or beside it. */
export function partVolume(part: Part): number {
  const pockets = part.features.filter(isPocket);
  const cleared = pockets.reduce((sum, p) => sum + pocketVolume(part, p), 0);
  const drilled = part.features.filter(isDrill).reduce((sum, d) => sum + holeVolume(part, d, pockets), 0);
  return volumeDownTo(part, part.region, part.thickness) - cleared - drilled;
}
