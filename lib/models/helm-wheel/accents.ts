import type { AccentPlaces } from '../accents.js';
import { onRim } from '../accents.js';
import { discBore } from './hub.js';
import { spokeFront } from './layers.js';
import { spokeAngles } from './layout.js';
import type { HelmSizes } from './sizes.js';

/** The flat of the trim where there is one on the front, else of the rim. */
function rimFlat(s: HelmSizes): NonNullable<AccentPlaces['rim']> {
  const { trim } = s;
  const on = trim?.faces.includes('front') ? trim : undefined;
  const edge = (on ? s.edges.trim : s.edges.rim)?.radius ?? 0;
  const { inner, outer } = on ?? s;
  return { inner: inner + edge, outer: outer - edge, front: s.rim.thickness + (on?.thickness ?? 0) };
}

function hubFlat(s: HelmSizes): Pick<AccentPlaces, 'hub'> {
  const disc = s.discs.find(d => d.face === 'front');
  if (!disc) return {};
  const bore = discBore(s, disc);
  const hole = bore.kind === 'none' ? 0 : bore.diameter / 2;
  return { hub: { radius: disc.radius - (s.edges.hub?.radius ?? 0), hole, front: spokeFront(s) + disc.thickness } };
}

/** Accents go on the trim or the rim, and on the front hub disc. */
export const helmPlaces = (s: HelmSizes): AccentPlaces => ({ ...onRim(rimFlat(s), spokeAngles(s)), ...hubFlat(s) });
