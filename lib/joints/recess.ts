import { difference, intersection } from '../geometry/boolean.js';
import { withoutMates } from '../geometry/mates.js';
import { area } from '../geometry/measure.js';
import type { Region } from '../geometry/outline.js';
import type { Part, Pocket } from '../parts/part.js';
import type { Mm } from '../units/length.js';

// Wood taken off a part's back: a pocket where it ends inside the part, a through cut where it does not. So one recess serves a rebate in
// a single board, and the layers of a built-up one that it takes whole.

/** Depths nearer than this are one: layers are stacked by multiplication, which rounds. */
const SAME: Mm = 1e-6;

/** What is taken off; in the part's frame. Lengths mm. */
export interface Recess {
  /** may reach past the part */
  readonly zone: Region;
  /** the same carried on past the part's open edges, as far as any cutter may need */
  readonly run: Region;
  /** from the back */
  readonly depth: Mm;
}

/** Whether a recess of a depth goes through wood of a thickness. */
export const isThrough = (depth: Mm, thickness: Mm): boolean => depth > thickness - SAME;

/** The largest of the pieces a cut leaves: what falls off at a corner is lost. */
const largest = (regions: readonly Region[]): Region =>
  regions.reduce((most, r) => (area(r) > area(most) ? r : most), regions[0]!);

function cutAway(part: Part, zone: Region): Part {
  const left = difference([part.region], [zone]);
  if (left.length === 0) throw new RangeError(`${part.id} is cut away whole`);
  return { ...part, region: largest(left) };
}

/** A part with a recess in its back, beside the pockets that are there already; where they meet, the one that was there stays.
 * @throws RangeError where nothing of the part is left */
export function recessed(part: Part, { zone, run, depth }: Recess): Part {
  if (depth < SAME) return part;
  if (isThrough(depth, part.thickness)) return cutAway(part, zone);
  const there = part.features.filter((f): f is Pocket => f.kind === 'pocket' && f.face === 'back');
  const wood = difference(
    [withoutMates(part.region)],
    there.map(p => withoutMates(p.area)),
  );
  const pockets = intersection([zone], wood).map((own): Pocket => {
    return { kind: 'pocket', face: 'back', depth, area: own, beyond: run };
  });
  return { ...part, features: [...part.features, ...pockets] };
}
