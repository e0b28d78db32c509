import { windingOfEdges } from '../geometry/locate.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { bevelSlope, widthAt } from './bevel.js';
import type { Form } from './form.js';
import type { Part } from './part.js';

/** A point or a vector in a prop or a form: x and y as seen from the front, z towards the viewer; mm. */
export interface SpacePoint extends Point {
  readonly z: Mm;
}

/** A part's (x, y, height over its back face) as its form has it, lying or stood up; and the way back. */
export const formPoint = ({ stands }: Form, { x, y, z }: SpacePoint): SpacePoint =>
  stands ? { x, y: -z, z: y } : { x, y, z };
const partPoint = ({ stands }: Form, { x, y, z }: SpacePoint): SpacePoint =>
  stands ? { x, y: z, z: -y } : { x, y, z };

/** Whether a part's long edges have come in past a point. */
function bevelled(part: Part, p: SpacePoint): boolean {
  if (bevelSlope(part) === 0) return false;
  const [from, to] = widthAt(part, p.z);
  return p.x < from || p.x > to;
}

/** Whether a point, as the form has it, lies in its wood and not on its surface; nearer to it than rounding either answer may come. */
export function isInside(form: Form, point: SpacePoint): boolean {
  const { part, cleared, box } = form;
  if (point.x < box.minX || point.x > box.maxX || point.y < box.minY || point.y > box.maxY) return false;
  const p = partPoint(form, point);
  if (!(p.z > 0 && p.z < part.thickness)) return false;
  if (bevelled(part, p) || windingOfEdges(form.edges, p) === 0) return false;
  return !cleared.some(c => c.low < p.z && p.z < c.high && windingOfEdges(c.edges, p) !== 0);
}
