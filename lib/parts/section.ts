import { difference } from '../geometry/boolean.js';
import { area } from '../geometry/measure.js';
import type { Region } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import { type Form, formOf, sliceAt } from './form.js';
import type { Part } from './part.js';

/** What is left of a lying part at a height over its back face, between two of its breaks. @throws GeometryFailure */
export function sectionAt(form: Form, height: Mm): Region[] {
  const { wood, cleared } = sliceAt(form, height);
  return cleared.length > 0 ? difference(wood, cleared) : [...wood];
}

/** Roots of the Legendre polynomial of degree 2, as shares of a slab: exact for areas that change with the square of the height.
 * Source: Gauss quadrature, Abramowitz and Stegun, 25.4.30. */
const GAUSS = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];
const EVEN = [0.5];

/** Volume of a part by its sections, mm³: of each slab between two breaks, its height times the mean of its sections. Exact where a part's
 * edges are square, and where the bevel meets lines only. @throws GeometryFailure */
export function volumeBySections(part: Part): number {
  const form = formOf(part, false);
  const shares = form.varies ? GAUSS : EVEN;
  const mean = (low: Mm, high: Mm): number =>
    shares.reduce((sum, share) => {
      const section = sectionAt(form, low + share * (high - low));
      return sum + section.reduce((total, r) => total + area(r), 0);
    }, 0) / shares.length;
  const { breaks } = form;
  return breaks.slice(1).reduce((sum, high, i) => sum + (high - breaks[i]!) * mean(breaks[i]!, high), 0);
}
