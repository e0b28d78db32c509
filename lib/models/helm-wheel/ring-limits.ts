import type { Finding } from '../../findings/finding.js';
import type { Mm } from '../../units/length.js';
import { seatsBearing } from './hub.js';
import { stated, stop } from './limit.js';
import type { HelmSizes } from './sizes.js';
import { plugDepth, UNDER_PLUG } from './trim.js';

/** Wood left behind a bearing's seat; common practice, no source. */
const SHOULDER: Mm = 3;

/** Shallowest counterbore that holds a plug; common practice, no source. */
const LEAST_PLUG: Mm = 1;

export function underSpokes(s: HelmSizes): Finding[] {
  if (s.seam.at !== 'under-spokes' || s.spokes % s.felloes === 0) return [];
  const allowed = Array.from({ length: 22 }, (_, i) => i + 3).filter(f => s.spokes % f === 0);
  return [
    {
      level: 'stop',
      rule: 'seam-place',
      where: 'rim.felloes',
      message: `rim.felloes is ${s.felloes}: seams under-spokes need a number that divides the ${s.spokes} spokes; allowed: ${allowed.join(', ') || 'none'}, or seams between-spokes`,
      value: s.felloes,
      limit: allowed.join(', '),
    },
  ];
}

export function bearingSeat(s: HelmSizes): Finding[] {
  return s.discs.flatMap(d => {
    const { axis } = d;
    if (axis.kind !== 'bearing' || axis.seat !== 'shoulder' || !seatsBearing(s, d)) return [];
    const least = axis.bearing.width + SHOULDER;
    if (d.thickness >= least) return [];
    return [
      stop(
        'bearing-seat',
        'hub.thickness',
        d.thickness,
        least,
        `a shoulder seat for bearing ${axis.bearing.name} (${axis.bearing.width} mm wide) needs a ${d.face} disc of at least ${stated(least)} mm; allowed: thicker stock, or seat: through`,
      ),
    ];
  });
}

export function hubBore(s: HelmSizes): Finding[] {
  return s.discs.flatMap(d => {
    const wide =
      d.axis.kind === 'bearing' ? d.axis.bearing.outside / 2 : d.axis.kind === 'axle' ? d.axis.diameter / 2 : 0;
    if (d.radius - wide >= 6) return [];
    return [
      stop(
        'hub-bore',
        'hub.diameter',
        2 * d.radius,
        2 * (wide + 6),
        `the ${d.face} disc keeps under 6 mm round its bore; allowed: at least ${stated(2 * (wide + 6))} mm`,
      ),
    ];
  });
}

export function trimFits(s: HelmSizes): Finding[] {
  const { trim } = s;
  if (!trim) return [];
  const band = trim.outer - trim.inner;
  const wide =
    band > s.outer - s.inner + 1e-9
      ? [
          stop(
            'trim-band',
            'trim.band',
            band,
            s.outer - s.inner,
            `wider than the rim's band; allowed: at most ${stated(s.outer - s.inner)} mm`,
          ),
        ]
      : [];
  const shallow =
    trim.plugs && plugDepth(trim) < LEAST_PLUG
      ? [
          stop(
            'plug-depth',
            'trim.thickness',
            trim.thickness,
            UNDER_PLUG + LEAST_PLUG,
            `a counterbore leaves ${UNDER_PLUG} mm of wood under it and needs ${LEAST_PLUG} mm itself; allowed: at least ${UNDER_PLUG + LEAST_PLUG} mm, or no plugs`,
          ),
        ]
      : [];
  return [...wide, ...shallow];
}
