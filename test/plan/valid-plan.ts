import { expect } from 'vitest';
import { type Issue, Unusable } from '../../lib/findings/unusable.js';
import type { HelmWheelOptions } from '../../lib/models/helm-wheel-options.js';
import type { Plan } from '../../lib/plan/index.js';
import { readPlan } from '../../lib/plan/index.js';

/** A plan with every key of the format; tests change one line of it. */
export const PLAN = `rimwright: 1
title: Ferry helm
units: in
model: helm-wheel
rim:
  outside: 30
  band: 4-1/4
  felloes: 5
  layers: 1
  thickness: 3/4
  seam: { joint: biscuit, size: "20", at: between-spokes }
  stock: plank
spokes:
  count: 10
  width: 1-1/4
  overall: 41
  thickness: 3/4
  handle: { shape: turned, faces: 1 }
  stock: batten
hub:
  diameter: 8
  faces: both
  bore: { bearing: "6202", seat: shoulder }
  stock: ply
trim: { faces: front, band: 2, segments: 5, plugs: { diameter: 3/8, each: 4 }, stock: thin }
edges: { rim: { shape: round, radius: 1/4, faces: both } }
turns: shaft
method: router
cutter: { kind: router, diameter: 1/4, reach: 1, pass: 1/4 }
bed: { width: 48, length: 96 }
fit: { lap: 0.15mm, wedge: 0mm, bore: -0.05mm, plug: -0.02mm }
stock:
  plank: { kind: board, width: 7-1/4, thickness: 3/4, length: 96, count: 2, species: ponderosa pine, price: 14.20, true: 1/8 }
  batten: { kind: board, width: 3-1/2, thickness: 3/4, length: 96, count: 2, species: ponderosa pine, price: 5.80, true: 1/8 }
  ply: { kind: sheet, width: 48, length: 48, thickness: 3/4, count: 1, price: 34 }
  thin: { kind: sheet, width: 48, length: 48, thickness: 12mm, count: 1, price: 26 }
copies: 1
paper: [letter, a4]
`;

/** The plan with one piece of text replaced, which must be there once. */
export function changed(from: string, to: string): string {
  expect(PLAN.split(from).length).toBe(2);
  return PLAN.replace(from, () => to);
}

/** What is wrong with a plan; fails when it is usable. */
export function issuesOf(text: string): readonly Issue[] {
  try {
    readPlan(text);
  } catch (error) {
    if (error instanceof Unusable) return error.issues;
    throw error;
  }
  throw new Error('the plan was read without an issue');
}

/** The options of a plan that is a helm wheel's. */
export function wheelOf(plan: Plan): HelmWheelOptions {
  if (plan.model !== 'helm-wheel') throw new Error(`the plan is of a ${plan.model}`);
  return plan.options;
}
