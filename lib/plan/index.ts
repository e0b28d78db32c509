export type { Contradiction } from './contradiction.js';
export { contradictions } from './contradictions.js';
export type { Bed, Plan, Shop } from './plan.js';
export { planSchema } from './plan-schema.js';
export { readPlan, readVariants } from './read-plan.js';
export { starterPlan } from './starter.js';
