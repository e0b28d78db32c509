import { locate } from '../geometry/locate.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { widthAt } from './bevel.js';
import type { Form } from './form.js';

/** A point or a vector in a prop or a form: x and y as seen from the front, z towards the viewer; mm. */
export interface SpacePoint extends Point {
  readonly z: Mm;
}

/** A part's (x, y, height over its back face) as its form has it, lying or stood up; and the way back. */
export const formPoint = ({ stands }: Form, { x, y, z }: SpacePoint): SpacePoint =>
  stands ? { x, y: -z, z: y } : { x, y, z };
const partPoint = ({ stands }: Form, { x, y, z }: SpacePoint): SpacePoint =>
  stands ? { x, y: z, z: -y } : { x, y, z };

/** Whether a point, as the form has it, lies in its wood; its surface does not count on top and below, elsewhere it may. */
export function isInside(form: Form, point: SpacePoint): boolean {
  const { part, cleared, box } = form;
  if (point.x < box.minX || point.x > box.maxX || point.y < box.minY || point.y > box.maxY) return false;
  const p = partPoint(form, point);
  if (!(p.z > 0 && p.z < part.thickness)) return false;
  const [from, to] = widthAt(part, p.z);
  if (p.x < from || p.x > to || locate(part.region, p) === 'outside') return false;
  return !cleared.some(c => c.low < p.z && p.z < c.high && locate(c.area, p) === 'inside');
}
