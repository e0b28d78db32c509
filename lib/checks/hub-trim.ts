import type { Finding } from '../findings/finding.js';
import type { HelmWheel } from '../models/helm-wheel.js';

/** A hub disc and the trim on the same face do not overlap. */
export function hubTrim(wheel: HelmWheel): Finding[] {
  const { discs, trim, inner } = wheel.sizes;
  return discs
    .map(d => ({ d, most: trim?.faces.includes(d.face) ? trim.inner : inner }))
    .filter(({ d, most }) => d.radius > most)
    .map(({ d, most }) => ({
      level: 'stop',
      rule: 'hub-trim',
      where: 'hub.diameter',
      message: `the ${d.face} hub disc is ${(2 * d.radius).toFixed(2)} mm wide and reaches into the ${trim?.faces.includes(d.face) ? 'trim' : 'rim'}; at most ${(2 * most).toFixed(2)} mm`,
      value: 2 * d.radius,
      limit: 2 * most,
    }));
}
