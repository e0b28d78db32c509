import { difference } from '../geometry/boolean.js';
import { distanceToSegment, encloses, windingOfEdges } from '../geometry/locate.js';
import { area } from '../geometry/measure.js';
import { asCircle, type Region } from '../geometry/outline.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import type { Clearing } from './clearings.js';
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

/** Whether a round clearing lies in the part's wood all round, clear of every other clearing that shares a height with it. */
function liesFree(hole: Clearing, { edges, cleared }: Form): boolean {
  const circle = asCircle(hole.area.outer);
  if (!circle) return false;
  const { center, radius } = circle;
  const clearOf = (all: readonly Segment[]): boolean => all.every(s => distanceToSegment(s, center) >= radius);
  const beside = (c: Clearing): boolean =>
    c === hole ||
    c.low >= hole.high ||
    c.high <= hole.low ||
    (clearOf(segments(c.area.outer)) && !encloses(c.area.outer, center));
  return clearOf(edges) && windingOfEdges(edges, center) !== 0 && cleared.every(beside);
}

const total = (regions: readonly Region[]): number => regions.reduce((sum, r) => sum + area(r), 0);

/** Volume of a part by its sections, mm³: of each slab between two breaks, its height times the mean of its sections; holes with wood all
 * round them are taken off as cylinders. Exact where a part's edges are square, and where the bevel meets lines only.
 * @throws GeometryFailure */
export function volumeBySections(part: Part): number {
  const form = formOf(part, false);
  const free = form.varies ? [] : form.cleared.filter(c => liesFree(c, form));
  const rest: Form = { ...form, cleared: form.cleared.filter(c => !free.includes(c)) };
  const shares = form.varies ? GAUSS : EVEN;
  const mean = (low: Mm, high: Mm): number =>
    shares.reduce((sum, share) => sum + total(sectionAt(rest, low + share * (high - low))), 0) / shares.length;
  const { breaks } = form;
  const whole = breaks.slice(1).reduce((sum, high, i) => sum + (high - breaks[i]!) * mean(breaks[i]!, high), 0);
  return whole - free.reduce((sum, c) => sum + (c.high - c.low) * area(c.area), 0);
}
