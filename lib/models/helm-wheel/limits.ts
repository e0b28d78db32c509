import type { Finding } from '../../findings/finding.js';
import type { Limit } from './limit.js';
import { bearingSeat, hubBore, trimFits, underSpokes } from './ring-limits.js';
import type { HelmSizes } from './sizes.js';
import { crowding, handleLength, handleWidth, wedgeFlank, wedgeReach } from './spoke-limits.js';
import { lapLayers, stockThickness } from './stock-limits.js';

/** Independent limits first; those that need a buildable wheel only where the first hold. */
export function helmLimits(s: HelmSizes): Finding[] {
  const run = (rules: readonly Limit[]): Finding[] => rules.flatMap(rule => rule(s));
  const first = run([
    underSpokes,
    crowding,
    wedgeReach,
    wedgeFlank,
    lapLayers,
    stockThickness,
    bearingSeat,
    hubBore,
    handleLength,
    trimFits,
  ]);
  return first.length > 0 ? first : run([handleWidth]);
}
