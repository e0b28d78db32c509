import { type Finding, type Outcome, stops } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { accentDrafts } from './accents.js';
import { cartPlaces } from './cart-wheel/accents.js';
import { capDrafts } from './cart-wheel/cap.js';
import { cartFigures, cartHardware, cartSettings } from './cart-wheel/guide.js';
import { cartLimits } from './cart-wheel/limits.js';
import { naveDrafts } from './cart-wheel/nave.js';
import { rimRing } from './cart-wheel/rim.js';
import { cartSizes } from './cart-wheel/sizes.js';
import { spokeDrafts } from './cart-wheel/spokes.js';
import { cartSteps } from './cart-wheel/steps.js';
import { requireUsable } from './cart-wheel/usable.js';
import type { CartWheelOptions } from './cart-wheel-options.js';
import { gather } from './drafts.js';
import type { Model } from './model.js';

/** A cart wheel without dish: a nave of discs with mortises, spokes with a tenon on the foot and a tongue in the rim, felloes, caps, the
 * measure of a tyre. The first spoke points up; the rim's back is z = 0. Sizes in mm and radians; see cart-wheel.md.
 * @param stock what the options' stock names stand for
 * @returns the wheel, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock or a bearing that is not known. */
export function cartWheel(
  options: CartWheelOptions,
  stock: readonly Stock[],
  title = 'Cart wheel',
): Outcome<Model | undefined> {
  requireUsable(options);
  const sizes = cartSizes(options, stock);
  const limits: Finding[] = cartLimits(sizes);
  if (stops(limits)) return { value: undefined, findings: limits };
  const rim = rimRing(sizes);
  const accents = accentDrafts(cartPlaces(sizes), options.accents, stock);
  const wheel: Model = {
    name: 'cart-wheel',
    title,
    ...gather([
      ...rim.value.drafts,
      ...spokeDrafts(sizes),
      ...naveDrafts(sizes),
      ...capDrafts(sizes),
      ...accents.value,
    ]),
    hardware: cartHardware(sizes, rim.value),
    settings: cartSettings(sizes, rim.value),
    figures: cartFigures(sizes, rim.value),
    steps: cartSteps(sizes, rim.value, options.accents),
    fits: { ...rim.value.fits, ...sizes.fit },
  };
  return { value: wheel, findings: [...limits, ...rim.findings, ...accents.findings] };
}
