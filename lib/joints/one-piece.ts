import type { Region } from '../geometry/outline.js';

/** The region of a part that a joint must leave in one piece. @throws RangeError where it is none or several */
export function onlyPiece(id: string, regions: readonly Region[]): Region {
  const [only] = regions;
  if (!only || regions.length > 1) throw new RangeError(`${id} does not stay in one piece`);
  return only;
}
