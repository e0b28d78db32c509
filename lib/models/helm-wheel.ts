import type { Finding, Outcome } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { accentDrafts, accentSteps } from './accents.js';
import { type Draft, gather } from './drafts.js';
import { helmPlaces } from './helm-wheel/accents.js';
import { helmSafety, helmSettings, helmSteps } from './helm-wheel/guide.js';
import { helmHardware } from './helm-wheel/hardware.js';
import { hubDrafts } from './helm-wheel/hub.js';
import { helmLimits } from './helm-wheel/limits.js';
import { pinRoom } from './helm-wheel/pin-limits.js';
import { helmPins } from './helm-wheel/pins.js';
import { rimRing } from './helm-wheel/rim.js';
import { type HelmSizes, helmSizes, sizeNotes } from './helm-wheel/sizes.js';
import { spokeDrafts } from './helm-wheel/spokes.js';
import { trimDrafts } from './helm-wheel/trim.js';
import { requireUsable } from './helm-wheel/usable.js';
import type { HelmWheelOptions } from './helm-wheel-options.js';
import type { Model } from './model.js';

/** A helm wheel with the sizes it was built from, for the checks. */
export interface HelmWheel extends Model {
  readonly sizes: HelmSizes;
}

/** Whether a model is a helm wheel, with its sizes. */
export const isHelmWheel = (model: Model): model is HelmWheel => 'sizes' in model && model.name === 'helm-wheel';

/** A ship's steering wheel: rim of felloes, spokes lapped into it and wedged together in the middle, hub discs, trim.
 * The first spoke points up. Sizes in mm and radians; see helm-wheel.md.
 * @param stock what the options' stock names stand for
 * @returns the wheel, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock or a bearing that is not known. */
export function helmWheel(
  options: HelmWheelOptions,
  stock: readonly Stock[],
  title = 'Helm wheel',
): Outcome<HelmWheel | undefined> {
  requireUsable(options);
  const sizes = helmSizes(options, stock);
  const found: Finding[] = [...sizeNotes(options), ...helmLimits(sizes)];
  if (found.some(f => f.level === 'stop')) return { value: undefined, findings: found };
  const pins = helmPins(sizes);
  const rim = rimRing(sizes, pins);
  const trim = trimDrafts(sizes);
  const accents = accentDrafts(helmPlaces(sizes), options.accents, stock);
  const drafts: Draft[] = [
    ...rim.value.drafts,
    ...spokeDrafts(sizes, pins),
    ...hubDrafts(sizes),
    ...trim.drafts,
    ...accents.value,
  ];
  const wheel: HelmWheel = {
    name: 'helm-wheel',
    title,
    ...gather(drafts),
    hardware: helmHardware(sizes, rim.value, pins),
    settings: helmSettings(sizes, rim.value),
    figures: rim.value.figures,
    steps: [...helmSteps(sizes, rim.value), ...accentSteps(options.accents), helmSafety(sizes)],
    fits: { ...rim.value.fits, lap: sizes.fit.lap, wedge: sizes.fit.wedge },
    sizes,
  };
  return {
    value: wheel,
    findings: [...found, ...rim.findings, ...pinRoom(sizes, pins), ...trim.findings, ...accents.findings],
  };
}
