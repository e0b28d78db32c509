import type { Finding } from '../findings/finding.js';
import { takesScrews } from '../models/glues.js';
import { screwCircle } from '../models/helm-wheel/core.js';
import type { HelmWheel } from '../models/helm-wheel.js';

/** A note where no screw finds room between the wedges' corners and the hub's edge: glue only. Nothing where screws would not hold. */
export function hubScrews({ sizes }: HelmWheel): Finding[] {
  const { discs, spoke } = sizes;
  if (discs.length === 0 || screwCircle(sizes) || !takesScrews(spoke.stock, ...discs.map(d => d.stock))) return [];
  const smallest = Math.min(...discs.map(d => 2 * d.radius));
  return [
    {
      level: 'note',
      rule: 'hub-screws',
      where: 'hub.diameter',
      message: `hub.diameter is ${smallest.toFixed(2)} mm: no room for screws beyond the wedges, the discs are held by glue only`,
      value: smallest,
    },
  ];
}
