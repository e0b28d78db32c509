import type { Finding, Outcome } from '../findings/finding.js';
import { stops } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { densityOf } from '../stock/weighed.js';
import { accentDrafts } from './accents.js';
import { gather } from './drafts.js';
import { gluesFor, stocksOf } from './glues.js';
import { type Mass, pieceMass } from './mass.js';
import type { Model } from './model.js';
import { stockNamed } from './named-stock.js';
import { footDrafts } from './stand/feet.js';
import { standSettings, standSteps } from './stand/guide.js';
import { standHardware } from './stand/hardware.js';
import { footMiddle } from './stand/layout.js';
import { standLimits } from './stand/limits.js';
import { type StandSizes, standSizes } from './stand/sizes.js';
import { type Footing, standing, tippingFigures, tippingFindings } from './stand/tipping.js';
import { uprightDrafts } from './stand/uprights.js';
import { requireUsable } from './stand/usable.js';
import type { StandOptions } from './stand-options.js';

const footing = (s: StandSizes): Footing => ({
  back: footMiddle(s) - s.foot.length / 2,
  front: footMiddle(s) + s.foot.length / 2,
  half: s.upright.base / 2,
  axle: s.height,
  top: s.height + s.wheel.radius,
  push: s.push,
});

/** What stands on the feet: every piece, and the wheel. */
function masses(s: StandSizes, { parts, pieces }: Pick<Model, 'parts' | 'pieces'>, stock: readonly Stock[]): Mass[] {
  const own = pieces.map(piece => {
    const part = parts.find(p => p.id === piece.part)!;
    return pieceMass(piece, part, densityOf(stockNamed(stock, 'stock', part.stock)));
  });
  return [...own, { weight: s.wheel.weight, x: 0, y: 0, z: 0 }];
}

/** A stand that carries a helm or a prize wheel on its shaft: two cheeks or a post, feet sized against tipping. Axle at the origin, the
 * floor below, the wheel's plane z = 0. Sizes in mm, weights in kg, forces in N; see stand.md.
 * @param stock what the options' stock names stand for
 * @returns the stand, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock or a bearing that is not known. */
export function stand(options: StandOptions, stock: readonly Stock[], title = 'Stand'): Outcome<Model | undefined> {
  requireUsable(options);
  const sizes = standSizes(options, stock);
  const at = (height: number): StandSizes => standSizes({ ...options, axle: { ...options.axle, height } }, stock);
  // a stand has no place for accents; that is said
  const found: Finding[] = [...standLimits(sizes, at), ...accentDrafts({}, options.accents, stock).findings];
  if (stops(found)) return { value: undefined, findings: found };
  const gathered = gather([...uprightDrafts(sizes), ...footDrafts(sizes)]);
  const weights = masses(sizes, gathered, stock);
  const given = sizes.ballast ?? (sizes.anchored ? 0 : undefined);
  const stood = standing(weights, footing(sizes), given);
  const needed = standing(weights, footing(sizes)).ballast;
  const model: Model = {
    name: 'stand',
    title,
    ...gathered,
    hardware: [...standHardware(sizes, stood.ballast), ...gluesFor(stocksOf(gathered.parts, stock))],
    settings: standSettings(sizes),
    figures: tippingFigures(stood),
    steps: standSteps(sizes, stood.ballast),
    fits: { slot: sizes.fit.slot },
    upright: true,
  };
  const tips = sizes.anchored ? [] : tippingFindings(stood, needed, sizes.ballast !== undefined);
  return { value: model, findings: [...found, ...tips] };
}
