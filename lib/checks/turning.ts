import type { Finding } from '../findings/finding.js';
import { coreSizes } from '../models/helm-wheel/core.js';
import type { HelmWheel } from '../models/helm-wheel.js';

/** How the wheel turns agrees with its bore: a shaft needs a hole, a wheel that turns on its own wants two bearings. */
export function turning(wheel: HelmWheel): Finding[] {
  const s = wheel.sizes;
  const bored = s.discs.filter(d => d.axis.kind !== 'none');
  if (s.turns !== 'fixed' && bored.length === 0)
    return [
      finding(
        'stop',
        'hub.bore',
        `hub.bore is none but turns is ${s.turns}; allowed: an axle or a bearing, or turns: fixed`,
        'none',
      ),
    ];
  if (s.turns === 'bearing') {
    const seats = s.discs.filter(d => d.axis.kind === 'bearing').length;
    if (seats === 0)
      return [
        finding(
          'warn',
          'hub.bore',
          'turns is bearing but the bore is a plain axle hole: it will wear; a bearing in each disc runs true',
          'axle',
        ),
      ];
    if (seats < 2)
      return [
        finding(
          'warn',
          'hub.faces',
          'turns is bearing with one seat: a wheel on a single bearing rocks; faces: both gives two',
          seats,
        ),
      ];
  }
  if (s.turns === 'shaft' && coreSizes(s).shaft > 0 && coreSizes(s).plug === undefined)
    return [
      finding(
        'note',
        'hub.bore',
        'the wedges leave no room for a core plug round the shaft: lock the hub discs to the shaft instead',
        2 * coreSizes(s).shaft,
      ),
    ];
  return [];
}

const finding = (level: Finding['level'], where: string, message: string, value: number | string): Finding => ({
  level,
  rule: 'turning',
  where,
  message,
  value,
});
