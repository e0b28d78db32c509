import type { Finding } from '../findings/finding.js';
import { edgeFaces } from '../models/helm-wheel/sizes.js';
import type { HelmWheel } from '../models/helm-wheel.js';

/** Trim leaves the rim's routed edge free: (band - trim band) / 2 is at least the edge's radius on every face that has both. */
export function rimReveal(wheel: HelmWheel): Finding[] {
  const { trim, edges, outer } = wheel.sizes;
  if (!trim || !edges.rim || !edgeFaces(edges.rim).some(face => trim.faces.includes(face))) return [];
  const reveal = outer - trim.outer;
  if (reveal >= edges.rim.radius - 1e-9) return [];
  return [
    {
      level: 'stop',
      rule: 'rim-reveal',
      where: 'trim.band',
      message: `trim leaves ${reveal.toFixed(2)} mm of the rim free on each side, the rim's routed edge needs ${edges.rim.radius.toFixed(2)} mm; a narrower trim band or a smaller edge radius`,
      value: reveal,
      limit: edges.rim.radius,
    },
  ];
}
