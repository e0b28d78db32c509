import type { Finding } from '../findings/finding.js';
import type { HelmWheel } from '../models/helm-wheel.js';
import type { Mm } from '../units/length.js';

/** Hub past the wedges' outer corners, so that glue and screws hold whole spokes; common practice, no source. */
const COVER: Mm = 6;

/** Every hub disc covers the wedges' outer corners, (w/2) / sin(180 deg / N) from the centre, and 6 mm more. */
export function hubCover(wheel: HelmWheel): Finding[] {
  const { width, spokes } = wheel.sizes;
  const least = 2 * (width / 2 / Math.sin(Math.PI / spokes) + COVER);
  return wheel.sizes.discs
    .filter(d => 2 * d.radius < least - 1e-9)
    .map(d => ({
      level: 'stop',
      rule: 'hub-cover',
      where: 'hub.diameter',
      message: `the ${d.face} hub disc is ${(2 * d.radius).toFixed(2)} mm wide and does not cover the wedges' outer corners by ${COVER} mm; at least ${least.toFixed(2)} mm`,
      value: 2 * d.radius,
      limit: least,
    }));
}
