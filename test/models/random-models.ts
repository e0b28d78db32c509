import type { Method } from '../../lib/stock/stock.js';
import { randomCableReel } from './random-cable-reel.js';
import { randomCartWheel } from './random-cart-wheel.js';
import { randomPlan } from './random-plan.js';
import { randomPrizeWheel } from './random-prize-wheel.js';
import { randomRingFrame } from './random-ring-frame.js';
import { randomStand } from './random-stand.js';
import { randomWaterWheel } from './random-water-wheel.js';

/** Draws a plan of a model for a seed and a method, inside the inequalities its own file states; the same one every time. */
export type RandomModel = (seed: number, method: Method) => Readonly<Record<string, unknown>>;

/** Helm wheels are drawn with any method; of those that follow a seed, the first of the method asked for. */
function helmWheel(seed: number, method: Method): Readonly<Record<string, unknown>> {
  for (let next = seed; ; next += 1_000_003) {
    const plan = randomPlan(next);
    if (plan['method'] === method) return plan;
  }
}

/** Every model whose plans can be drawn, for the soak tests: `npm run soak -- models NAME COUNT SEED`. */
export const randomModels: Readonly<Record<string, RandomModel>> = {
  'helm-wheel': helmWheel,
  'cart-wheel': randomCartWheel,
  'water-wheel': randomWaterWheel,
  'cable-reel': randomCableReel,
  'prize-wheel': randomPrizeWheel,
  'ring-frame': randomRingFrame,
  stand: randomStand,
};
