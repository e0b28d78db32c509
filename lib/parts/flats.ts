import { difference } from '../geometry/boolean.js';
import type { Region } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import { type Form, sliceAt } from './form.js';

/** Just over or under a break: far above rounding, far below any cut. */
const JUST: Mm = 1e-4;

function sectionAt(form: Form, height: Mm): Region[] {
  if (height <= form.breaks[0]! || height >= form.breaks.at(-1)!) return [];
  const { wood, cleared } = sliceAt(form, height);
  return cleared.length > 0 ? difference(wood, cleared) : [...wood];
}

/** A form's flat faces at one of its breaks (see Form), before it is turned and moved: those that look up (the wood is under them) or those
 * that look down. @throws GeometryFailure */
export function flatsAt(form: Form, height: Mm, looks: 'up' | 'down'): Region[] {
  const into = looks === 'up' ? -JUST : JUST;
  const wood = sectionAt(form, height + into);
  const over = wood.length > 0 ? sectionAt(form, height - into) : [];
  return over.length > 0 ? difference(wood, over) : wood;
}
