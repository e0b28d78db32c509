import type { Finding } from '../findings/finding.js';
import { edgeFaces } from '../models/helm-wheel/sizes.js';
import type { HelmWheel } from '../models/helm-wheel.js';
import type { EdgeProfile } from '../models/helm-wheel-options.js';
import type { Mm } from '../units/length.js';

function tooDeep(part: 'rim' | 'trim' | 'hub', edge: EdgeProfile | undefined, thickness: Mm): Finding[] {
  if (!edge) return [];
  const most = edgeFaces(edge).length > 1 ? thickness / 2 : thickness;
  if (edge.radius <= most) return [];
  const where = `edges.${part}.radius`;
  return [
    {
      level: 'stop',
      rule: 'edge-radius',
      where,
      message: `${where} is ${edge.radius.toFixed(2)} mm on stock ${thickness.toFixed(2)} mm thick; at most ${most.toFixed(2)} mm`,
      value: edge.radius,
      limit: most,
    },
  ];
}

/** A routed edge is no deeper than the piece it is on: half of it where both faces are routed. */
export function edgeRadius(wheel: HelmWheel): Finding[] {
  const { edges, rim, trim, discs } = wheel.sizes;
  const thinnest = Math.min(...discs.map(d => d.thickness));
  return [
    ...tooDeep('rim', edges.rim, rim.thickness),
    ...(trim ? tooDeep('trim', edges.trim, trim.thickness) : []),
    ...(discs.length > 0 ? tooDeep('hub', edges.hub, thinnest) : []),
  ];
}
