import type { Finding } from '../findings/finding.js';
import type { HelmWheel } from '../models/helm-wheel.js';

const round = (mm: number): number => Math.round(mm * 100) / 100;

/** Where rim and spokes differ in thickness: fronts are flush, so the backs are not. Says which stands out and by how much, and
 * refuses a back disc that would lie on both at once. (Back trim lies on the rim's back alone, between the spokes' shoulders.) */
export function backFlat(wheel: HelmWheel): Finding[] {
  const s = wheel.sizes;
  if (s.lap === 'bridle') return betweenRings(wheel);
  const step = s.spoke.thickness - s.rim.thickness;
  if (Math.abs(step) < 1e-6) return [];
  const proud = step > 0 ? 'the spokes stand' : 'the rim stands';
  const note: Finding = {
    level: 'note',
    rule: 'back-step',
    where: 'spokes.thickness',
    message: `spokes are ${round(s.spoke.thickness)} mm thick, the rim ${round(s.rim.thickness)} mm: fronts are flush, at the back ${proud} ${round(Math.abs(step))} mm proud`,
    value: s.spoke.thickness,
    limit: s.rim.thickness,
  };
  const over = s.discs.filter(d => d.face === 'back' && d.radius > s.inner - Math.max(0, s.fit.lap / 2));
  return [
    note,
    ...over.map(
      (d): Finding => ({
        level: 'stop',
        rule: 'back-flat',
        where: 'hub.diameter',
        message: `the back hub disc, ${round(2 * d.radius)} mm, reaches over spokes and rim, whose backs differ by ${round(Math.abs(step))} mm, and would not lie flat; at most ${round(2 * s.inner)} mm`,
        value: 2 * d.radius,
        limit: 2 * s.inner,
      }),
    ),
  ];
}

/** Bridled spokes lie under the rim's faces: the discs on them have to fit inside the rim. */
function betweenRings({ sizes: s }: HelmWheel): Finding[] {
  return s.discs
    .filter(d => d.radius > s.inner)
    .map(d => ({
      level: 'stop',
      rule: 'back-flat',
      where: 'hub.diameter',
      message: `the ${d.face} hub disc, ${round(2 * d.radius)} mm, reaches over the rim, between whose layers the spokes pass, and would not lie flat; at most ${round(2 * s.inner)} mm`,
      value: 2 * d.radius,
      limit: 2 * s.inner,
    }));
}
