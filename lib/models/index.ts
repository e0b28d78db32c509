import type { Outcome } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import { cableReel } from './cable-reel.js';
import type { CableReelOptions } from './cable-reel-options.js';
import { cartWheel } from './cart-wheel.js';
import type { CartWheelOptions } from './cart-wheel-options.js';
import { helmWheel } from './helm-wheel.js';
import type { HelmWheelOptions } from './helm-wheel-options.js';
import type { Model } from './model.js';
import { prizeWheel } from './prize-wheel.js';
import type { PrizeWheelOptions } from './prize-wheel-options.js';
import { ringFrame } from './ring-frame.js';
import type { RingFrameOptions } from './ring-frame-options.js';
import { stand } from './stand.js';
import type { StandOptions } from './stand-options.js';
import { waterWheel } from './water-wheel.js';
import type { WaterWheelOptions } from './water-wheel-options.js';

/** What each model is made from. A new model is a row here, a row of `builders`, and its keys in lib/plan/model-shapes.ts. */
export interface ModelOptions {
  readonly 'helm-wheel': HelmWheelOptions;
  readonly 'cart-wheel': CartWheelOptions;
  readonly 'cable-reel': CableReelOptions;
  readonly 'water-wheel': WaterWheelOptions;
  readonly 'prize-wheel': PrizeWheelOptions;
  readonly 'ring-frame': RingFrameOptions;
  readonly stand: StandOptions;
}

export type ModelName = keyof ModelOptions;

/** Options in, model out: no value where a stop leaves the prop without a shape; findings of the building.
 * @param stock what the options' stock names stand for
 * @throws Unusable when a number is out of its range, or an option names a stock that is not known */
export type Builder<O> = (options: O, stock: readonly Stock[], title?: string) => Outcome<Model | undefined>;

const builders: { readonly [N in ModelName]: Builder<ModelOptions[N]> } = {
  'helm-wheel': helmWheel,
  'cart-wheel': cartWheel,
  'cable-reel': cableReel,
  'water-wheel': waterWheel,
  'prize-wheel': prizeWheel,
  'ring-frame': ringFrame,
  stand,
};

/** A model's name with its options. */
export type Prop<N extends ModelName = ModelName> = {
  [K in N]: { readonly model: K; readonly options: ModelOptions[K] };
}[N];

/** Builds a prop by its model's name. @throws Unusable */
export function buildProp<N extends ModelName>(
  { model, options }: Prop<N>,
  stock: readonly Stock[],
  title: string,
): Outcome<Model | undefined> {
  const builder: Builder<ModelOptions[N]> = builders[model];
  return builder(options, stock, title);
}
