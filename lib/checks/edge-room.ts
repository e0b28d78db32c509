import type { Finding } from '../findings/finding.js';
import { largestBit } from '../models/helm-wheel/layout.js';
import type { HelmWheel } from '../models/helm-wheel.js';

/** A warning where the stop marks of neighbouring spokes meet on the rim's inner edge: there is nothing left to rout between them. */
export function edgeRoom(wheel: HelmWheel): Finding[] {
  const { edges, inner, spokes, width } = wheel.sizes;
  if (!edges.rim) return [];
  const off = width / 2 + largestBit(wheel.sizes);
  const room = 2 * inner * (Math.PI / spokes - Math.asin(Math.min(1, off / inner)));
  if (room > 0) return [];
  return [
    {
      level: 'warn',
      rule: 'edge-room',
      where: 'edges.rim.radius',
      message: `the router stops of neighbouring spokes overlap by ${(-room).toFixed(2)} mm on the rim's inner edge: that edge stays square`,
      value: room,
      limit: 0,
    },
  ];
}
