import type { NestLayout } from '../../lib/nesting/job.js';

/** What a search has found so far, beside its bar. @param of what it is at work on, if there are several such */
export function soFar(best: NestLayout | undefined, of = ''): string {
  const name = of === '' ? '' : `${of}: `;
  return best
    ? `${name}${best.pieces.length} pieces, ${(100 * best.utilisation).toFixed(1)} % used`
    : `${name}first layout`;
}
