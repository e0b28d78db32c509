import type { Finding, Outcome } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { accentDrafts } from './accents.js';
import { reelPlaces } from './cable-reel/accents.js';
import { coreDrafts } from './cable-reel/core.js';
import { fixings } from './cable-reel/fixings.js';
import { flanges } from './cable-reel/flange.js';
import { reelFigures, reelHardware, reelSettings, reelSteps } from './cable-reel/guide.js';
import { buildFindings, reelLimits } from './cable-reel/limits.js';
import { reelSizes } from './cable-reel/sizes.js';
import { requireUsable } from './cable-reel/usable.js';
import type { CableReelOptions } from './cable-reel-options.js';
import { type Draft, gather } from './drafts.js';
import type { Model } from './model.js';

/** Screws through all battens of a reel. */
const screwsIn = (drafts: readonly Draft[]): number =>
  drafts.filter(d => d.part.kind === 'batten').reduce((sum, d) => sum + d.part.features.length, 0);

/** A cable reel: two round flanges of planks under battens or of segments, a core of bevelled staves between them, rods through it all.
 * The back flange's back is z = 0; battens lie behind it. Sizes in mm and radians; see cable-reel.md.
 * @param stock what the options' stock names stand for
 * @returns the reel, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock that is not known. */
export function cableReel(
  options: CableReelOptions,
  stock: readonly Stock[],
  title = 'Cable reel',
): Outcome<Model | undefined> {
  requireUsable(options);
  const sizes = reelSizes(options, stock);
  const found: Finding[] = [...buildFindings(options), ...reelLimits(sizes)];
  const fixed = found.some(f => f.level === 'stop') ? 'no rods' : fixings(sizes);
  if (typeof fixed === 'string') return { value: undefined, findings: found };
  const { drafts: rounds, ring, findings } = flanges(sizes, fixed);
  const accents = accentDrafts(reelPlaces(sizes, fixed), options.accents, stock);
  const drafts = [...rounds, ...coreDrafts(sizes), ...accents.value];
  const reel: Model = {
    name: 'cable-reel',
    title,
    ...gather(drafts),
    hardware: reelHardware(sizes, screwsIn(drafts), ring),
    settings: [...(ring?.settings ?? []), ...reelSettings(sizes, fixed)],
    figures: [...reelFigures(sizes), ...(ring?.figures ?? [])],
    steps: reelSteps(sizes, ring?.steps ?? [], options.accents),
    ...(ring && { fits: ring.fits }),
  };
  return { value: reel, findings: [...found, ...findings, ...accents.findings] };
}
