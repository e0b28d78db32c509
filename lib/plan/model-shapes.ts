import type * as z from 'zod/mini';
import type { ModelName, ModelOptions } from '../models/index.js';
import type { Unit } from '../units/length.js';
import { cableReelShape } from './cable-reel-schema.js';
import { cartWheelShape } from './cart-wheel-schema.js';
import type { keys } from './fields.js';
import { helmWheelShape } from './helm-wheel-schema.js';
import { prizeWheelShape } from './prize-wheel-schema.js';
import { ringFrameShape } from './ring-frame-schema.js';
import { standShape } from './stand-schema.js';
import { waterWheelShape } from './water-wheel-schema.js';

/** The keys of a plan that are its model's options, by model, for bare numbers in `unit`. */
export const modelShapes = {
  'helm-wheel': helmWheelShape,
  'cart-wheel': cartWheelShape,
  'cable-reel': cableReelShape,
  'water-wheel': waterWheelShape,
  'prize-wheel': prizeWheelShape,
  'ring-frame': ringFrameShape,
  stand: standShape,
} as const satisfies Readonly<Record<ModelName, (unit: Unit) => object>>;

type Shapes = { [N in ModelName]: ReturnType<(typeof modelShapes)[N]> };

/** What a model's keys are read to: its options but for the method, which every plan has. */
export type OptionsRead<N extends ModelName> = z.output<ReturnType<typeof keys<Shapes[N]>>>;

/** Compiles only while every model's keys are read to its options. */
export type KeysFitOptions = { [N in ModelName]: OptionsRead<N> } extends {
  [N in ModelName]: Omit<ModelOptions[N], 'method'>;
}
  ? true
  : never;
export const KEYS_FIT_OPTIONS: KeysFitOptions = true;

/** Names of the models, in the order they are told. */
export const MODELS = Object.keys(modelShapes) as [ModelName, ...ModelName[]];
