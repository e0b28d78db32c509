import type { Finding } from '../findings/finding.js';
import { GeometryFailure } from '../geometry/failure.js';
import { bounds } from '../geometry/measure.js';
import type { Model } from '../models/model.js';
import type { Part } from '../parts/part.js';
import { volumeBySections } from '../parts/section.js';
import { partVolume } from '../parts/volume.js';

/** How far the two reckonings of a part's volume may differ, relative to its blank. */
const SAME = 1e-9;
/** The same for a bevelled part: where its outline has arcs the sections are integrated, not exact. */
const SAME_BEVELLED = 1e-4;

/** The blank it is cut from: the box round its outline, as thick as the part, mm³. */
function blankVolume({ region, thickness }: Part): number {
  const { minX, minY, maxX, maxY } = bounds(region.outer);
  return (maxX - minX) * (maxY - minY) * thickness;
}

function sections(part: Part): number {
  try {
    return volumeBySections(part);
  } catch (error) {
    if (error instanceof GeometryFailure) return Number.NaN;
    throw error;
  }
}

function ofPart(part: Part): Finding[] {
  const blank = blankVolume(part);
  const whole = partVolume(part);
  const cut = sections(part);
  const same = (part.bevel ? SAME_BEVELLED : SAME) * blank;
  if (Math.abs(whole - cut) <= same && cut > 0 && cut <= blank + same) return [];
  return [
    {
      level: 'warn',
      rule: 'wood-volume',
      where: part.id,
      message: `${part.name} (${part.id}) keeps ${cut.toFixed(3)} mm³ cut at every height, but its outline less its pockets and holes is ${whole.toFixed(3)} mm³: pockets or holes overlap or leave the outline`,
      value: cut,
      limit: whole,
    },
  ];
}

/** No wood is lost or made up: a part's volume by its sections is its outline times its thickness less pockets and holes, and no more than
 * its blank's. They differ where pockets overlap each other or run out of the part. */
export const woodVolume = (model: Model): Finding[] => model.parts.flatMap(ofPart);
