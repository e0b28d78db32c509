import type { Outcome } from '../findings/finding.js';
import { stops } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { accentDrafts } from './accents.js';
import { gather } from './drafts.js';
import { gluesFor, stocksOf } from './glues.js';
import type { Model } from './model.js';
import { framePlaces } from './ring-frame/accents.js';
import { frameFelloes } from './ring-frame/felloes.js';
import { frameFigures, frameHardware, frameSettings, frameSteps } from './ring-frame/guide.js';
import { frameLimits } from './ring-frame/limits.js';
import { seamNotch } from './ring-frame/mullion-limits.js';
import { mullionDrafts } from './ring-frame/mullions.js';
import { frameSizes } from './ring-frame/sizes.js';
import { requireUsable } from './ring-frame/usable.js';
import type { RingFrameOptions } from './ring-frame-options.js';

/** A ring frame: a full ring or an arc of felloes (porthole, round window, mirror frame, arch), a rebate for a pane, mullions across a full
 * ring, legs under an arch. The arc is symmetric about straight up; the ring's back is z = 0. Sizes in mm and radians; see ring-frame.md.
 * @param stock what the options' stock names stand for
 * @returns the frame, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock that is not known. */
export function ringFrame(
  options: RingFrameOptions,
  stock: readonly Stock[],
  title = 'Ring frame',
): Outcome<Model | undefined> {
  requireUsable(options);
  const sizes = frameSizes(options, stock);
  const limits = frameLimits(sizes);
  if (stops(limits)) return { value: undefined, findings: limits };
  const { ring, drafts, findings } = frameFelloes(sizes);
  const accents = accentDrafts(framePlaces(sizes), options.accents, stock);
  const gathered = gather([...drafts, ...mullionDrafts(sizes), ...accents.value]);
  const frame: Model = {
    name: 'ring-frame',
    title,
    ...gathered,
    hardware: [...frameHardware(sizes, ring), ...gluesFor(stocksOf(gathered.parts, stock))],
    settings: frameSettings(sizes, ring),
    figures: frameFigures(sizes, ring),
    steps: frameSteps(sizes, ring, options.accents),
    fits: { ...ring.fits, lap: sizes.fit.lap, mullion: sizes.fit.mullion },
  };
  return { value: frame, findings: [...limits, ...seamNotch(sizes), ...findings, ...accents.findings] };
}
