import { arrange } from './arrangement/arrange.js';
import { SECOND, unpack } from './arrangement/winding.js';
import type { Region } from './outline.js';
import { sourceOf } from './source.js';

/** Everything in any of the regions, in one pass; they may overlap, touch and share edges.
 * @returns regions that do not overlap, anticlockwise outers, collinear and co-circular neighbours merged, in order of place
 * @throws GeometryFailure */
export const union = (regions: readonly Region[]): Region[] => arrange(sourceOf([regions], [1]).edges, w => w > 0);

/** Everything in `from` and not in `less`; the regions of either may overlap. @throws GeometryFailure */
export const difference = (from: readonly Region[], less: readonly Region[]): Region[] =>
  arrange(sourceOf([from, less], [1, SECOND]).edges, w => {
    const [first, second] = unpack(w);
    return first > 0 && second <= 0;
  });

/** Everything in both `a` and `b`; the regions of either may overlap. @throws GeometryFailure */
export const intersection = (a: readonly Region[], b: readonly Region[]): Region[] =>
  arrange(sourceOf([a, b], [1, SECOND]).edges, w => {
    const [first, second] = unpack(w);
    return first > 0 && second > 0;
  });
