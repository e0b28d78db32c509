import type { Outcome } from '../../findings/finding.js';
import type { Stock } from '../../stock/stock.js';
import { type AccentPlaces, accentDrafts } from '../accents.js';
import type { AccentOptions } from '../accents-options.js';
import type { Draft } from '../drafts.js';
import { discBore } from './hub.js';
import { spokeFront } from './layers.js';
import { spokeAngles } from './layout.js';
import type { HelmSizes } from './sizes.js';

/** The flat of the trim where there is one on the front, else of the rim. */
function rimFlat(s: HelmSizes): Pick<AccentPlaces, 'inner' | 'outer' | 'front'> {
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

/** Accents on the wheel's front. @throws Unusable naming a stock that is not known */
export const helmAccents = (
  s: HelmSizes,
  options: AccentOptions | undefined,
  stock: readonly Stock[],
): Outcome<readonly Draft[]> =>
  accentDrafts({ ...rimFlat(s), ...hubFlat(s), crossings: spokeAngles(s) }, options, stock);
