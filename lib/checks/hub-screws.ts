import type { Finding } from '../findings/finding.js';
import { screwCircle } from '../models/helm-wheel/core.js';
import type { HelmWheel } from '../models/helm-wheel.js';

/** A note where no screw finds room between the wedges' corners and the hub's edge: glue only. */
export function hubScrews(wheel: HelmWheel): Finding[] {
  if (wheel.sizes.discs.length === 0 || screwCircle(wheel.sizes)) return [];
  const smallest = Math.min(...wheel.sizes.discs.map(d => 2 * d.radius));
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
