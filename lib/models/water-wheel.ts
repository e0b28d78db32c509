import type { Finding, Outcome } from '../findings/finding.js';
import { stops } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { accentDrafts } from './accents.js';
import { type Draft, gather } from './drafts.js';
import type { Model } from './model.js';
import { waterPlaces } from './water-wheel/accents.js';
import { waterFigures, waterHardware, waterSettings, waterSteps } from './water-wheel/guide.js';
import { hubCircle, hubDrafts } from './water-wheel/hub.js';
import { paddlePlaces, paddleTabs, rimSeams } from './water-wheel/layout.js';
import { slotFindings, waterLimits } from './water-wheel/limits.js';
import { paddleDrafts } from './water-wheel/paddles.js';
import { rims } from './water-wheel/rim.js';
import { type WaterSizes, waterSizes } from './water-wheel/sizes.js';
import { spokeDrafts } from './water-wheel/spokes.js';
import { requireUsable } from './water-wheel/usable.js';
import type { WaterWheelOptions } from './water-wheel-options.js';

/** Screws from spokes into rims: every hole of a spoke but the hub's. */
const rimScrews = (s: WaterSizes, spokes: readonly Draft[]): number =>
  spokes.reduce((sum, d) => sum + d.part.features.length - (hubCircle(s) ? 1 : 0), 0);

/** A water wheel: two rims of felloes, paddles with tabs through slots in both, spokes on the rims' outer faces wedged together in the
 * middle, hub discs either side of the wedges. The first spoke points up; the back rim's back is z = 0. Sizes in mm and radians; see
 * water-wheel.md.
 * @param stock what the options' stock names stand for
 * @returns the wheel, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock that is not known. */
export function waterWheel(
  options: WaterWheelOptions,
  stock: readonly Stock[],
  title = 'Water wheel',
): Outcome<Model | undefined> {
  requireUsable(options);
  const sizes = waterSizes(options, stock);
  const limits = waterLimits(sizes);
  const tabs = paddleTabs(sizes);
  if (stops(limits) || !tabs) return { value: undefined, findings: limits };
  const seams = rimSeams(sizes);
  const places = paddlePlaces(sizes, tabs, seams, sizes.paddles.count);
  const found: Finding[] = [...limits, ...slotFindings(sizes, seams, places)];
  if (stops(found)) return { value: undefined, findings: found };
  const { drafts, ring, findings } = rims(sizes, tabs, seams, places);
  const spokes = spokeDrafts(sizes, tabs, seams, places);
  const accents = accentDrafts(waterPlaces(sizes), options.accents, stock);
  const wheel: Model = {
    name: 'water-wheel',
    title,
    ...gather([...drafts, ...spokes, ...hubDrafts(sizes), ...paddleDrafts(sizes, tabs, places), ...accents.value]),
    hardware: waterHardware(sizes, ring, rimScrews(sizes, spokes)),
    settings: waterSettings(sizes, ring, places),
    figures: waterFigures(sizes, ring),
    steps: waterSteps(sizes, ring, places, options.accents),
    fits: { ...ring.fits, slot: sizes.fit.slot, wedge: sizes.fit.wedge },
  };
  return { value: wheel, findings: [...found, ...findings, ...accents.findings] };
}
