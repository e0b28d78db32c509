import type { Finding } from '../findings/finding.js';
import { bounds } from '../geometry/measure.js';
import { requirePlain } from '../geometry/plain.js';
import type { Model } from '../models/model.js';
import { unlessFailed } from '../models/unless-failed.js';
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

/** What is left by its sections, mm³; nothing where openings cross each other or leave the outline, or pockets cannot be taken off. */
const sections = (part: Part): number | undefined =>
  unlessFailed(() => {
    if (part.region.openings.length > 0) requirePlain(part.region);
    return volumeBySections(part);
  });

function finding(part: Part, value: number | string, limit: number, because: string): Finding {
  return {
    level: 'warn',
    rule: 'wood-volume',
    where: part.id,
    message: `${part.name} (${part.id}) ${because}`,
    value,
    limit,
  };
}

function ofPart(part: Part): Finding[] {
  const blank = blankVolume(part);
  const whole = partVolume(part);
  const cut = sections(part);
  if (cut === undefined)
    return [finding(part, 'none', whole, 'has openings or pockets that cross each other or leave its outline')];
  const same = (part.bevel ? SAME_BEVELLED : SAME) * blank;
  if (Math.abs(whole - cut) <= same && cut > 0 && cut <= blank + same) return [];
  const because = `keeps ${cut.toFixed(3)} mm³ cut at every height, but its outline less its pockets and holes is ${whole.toFixed(3)} mm³: pockets or holes overlap or leave the outline`;
  return [finding(part, cut, whole, because)];
}

/** No wood is lost or made up: a part's volume by its sections is its outline times its thickness less pockets and holes, and no more than
 * its blank's. They differ where pockets overlap each other, run out of the part, or are deeper than it is thick. */
export const woodVolume = (model: Model): Finding[] => model.parts.flatMap(ofPart);
