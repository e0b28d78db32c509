import type { NestLayout } from '../../lib/nesting/job.js';

/** What a search has found so far, beside its bar. @param of what it is at work on, if there are several such */
export function soFar(best: NestLayout | undefined, of = ''): string {
  const name = of === '' ? '' : `${of}: `;
  if (!best) return `${name}first layout`;
  const { length } = best.pieces;
  return `${name}${length} ${length === 1 ? 'piece' : 'pieces'}, ${(100 * best.utilisation).toFixed(1)} % used`;
}
