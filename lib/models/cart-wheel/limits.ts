import type { Finding } from '../../findings/finding.js';
import type { Limit } from './limit.js';
import {
  bearingSeat,
  capFits,
  footCrowding,
  naveBored,
  naveInRim,
  tenonLength,
  tenonWidth,
  turning,
} from './nave-limits.js';
import {
  brittleTongue,
  felloeShare,
  tongueLength,
  tongueSeam,
  tongueThickness,
  tongueWidthFits,
  tyreWidth,
} from './rim-limits.js';
import type { CartSizes } from './sizes.js';
import { edgeRadius, naveDiscs, thicknesses } from './stock-limits.js';

/** Independent limits first; those that need the sizes of joints only where the first hold. */
export function cartLimits(s: CartSizes): Finding[] {
  const run = (rules: readonly Limit[]): Finding[] => rules.flatMap(rule => rule(s));
  const first = run([
    felloeShare,
    naveInRim,
    footCrowding,
    thicknesses,
    naveDiscs,
    naveBored,
    bearingSeat,
    turning,
    tenonWidth,
    tongueWidthFits,
    capFits,
    tyreWidth,
    edgeRadius,
  ]);
  return first.length > 0 ? first : run([tenonLength, tongueLength, tongueThickness, tongueSeam, brittleTongue]);
}
